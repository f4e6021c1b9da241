import { readFileSync } from 'node:fs'
import { type ThrumError, unwatched } from '@thrum/model/ground'
import { type FitOutcome, type FitTable, type FitWords, fitTable, type TableFit, type TableFitted } from '@thrum/questions'

/** A table from lines of cells parted by commas; a blank cell is missing. The header stands on line 1. */
export function tableOf(text: string): FitTable {
  const [head = [], ...rows] = text
    .trim()
    .split('\n')
    .map((line) => line.split(',').map((cell) => cell.trim()))
  return {
    columns: head.map((name, k) => {
      const texts = rows.map((row) => row[k] || null)
      return { name, texts, numbers: Float64Array.from(texts, (cell) => (cell === null ? Number.NaN : Number(cell))) }
    }),
    lines: rows.map((_, row) => row + 2),
    aside: [],
    refused: [],
  }
}

/** An open extract that stands beside the tests of the models. */
export const extract = (name: string): FitTable =>
  tableOf(readFileSync(new URL(`../../../stats/test/reference/${name}.csv`, import.meta.url), 'utf8'))

/** Ten invented fields, every other one sown, each watched twice in two periods by one of three persons. Nothing is drawn. */
export const watches = tableOf(
  [
    'field,period,observer,strip,stage,minutes,bees,seen,weight,year,wet and dry',
    ...Array.from({ length: 40 }, (_, i) => {
      const field = Math.floor(i / 4)
      const strip = field % 2 === 0 ? 'none' : 'sown'
      const stage = 62 + ((i * 5 + field) % 7)
      const bees = (strip === 'sown' ? 9 : 4) + ((i * 11 + field * 3) % 6) - ((field * 5) % 4)
      const weight = 40 + ((i * 13) % 17) / 4 + ((field * 7) % 5)
      const period = i % 4 < 2 ? 'early' : 'late'
      return [
        `F${field + 1}`,
        period,
        `o${(i + field) % 3}`,
        strip,
        stage,
        10 + 5 * (i % 2),
        bees,
        20,
        weight,
        2031 + (i % 2),
        period,
      ].join()
    }),
  ].join('\n'),
)

export const ask = (table: FitTable, words: FitWords): Promise<FitOutcome> => fitTable(table, words, 'thrum', unwatched)

export async function fitted(table: FitTable, words: FitWords): Promise<TableFitted> {
  const { told } = await ask(table, words)
  if (told.kind !== 'fitted') throw new Error(`refused: ${told.reason}`)
  return told
}

export async function refused(table: FitTable, words: FitWords): Promise<Extract<TableFit, { kind: 'refused' }>> {
  const { told, receipt } = await ask(table, words)
  if (told.kind !== 'refused') throw new Error('it was fitted')
  if (receipt !== null) throw new Error('a refusal has no receipt')
  return told
}

/** The code of what asking so throws, or that nothing was thrown. */
export async function codeOf(table: FitTable, words: FitWords): Promise<string> {
  try {
    return (await ask(table, words)).told.kind
  } catch (error) {
    return (error as ThrumError).code.replace('questions/fit/', '')
  }
}

/** What was thrown, by its values. */
export async function thrown(table: FitTable, words: FitWords): Promise<ThrumError['values']> {
  try {
    await ask(table, words)
  } catch (error) {
    return (error as ThrumError).values
  }
  throw new Error('nothing was thrown')
}
