import { asCorrection, missingWords, retoldReason } from '@thrum/exchange'
import { type Column, cellSettled, isContested, makeFact, mark, rowAddress, type Table } from '@thrum/model'
import { type Saying, ThrumError } from '@thrum/model/ground'
import { type Project, requireWritable } from '../project/project.ts'
import { type BroughtSheet, countOfTally, numberIn, placeOf, textIn } from './brought-rows.ts'
import { type CorrectionMade, namedCell, shown, toldCorrection, typedCell } from './correct.ts'
import { type CorrectedProject, historyOf, knowledgeOf, readCorrected } from './corrected-project.ts'
import { findRow } from './find-row.ts'
import { type NamedCell, standingCell, talliesOfCount, toldCount } from './row-cells.ts'

/** A cell that waits for a person, as it can be named and settled. */
export interface WaitingCell {
  readonly of: string
  /** `FILE:LINE`, to be typed. */
  readonly row: string
  /** Column or kind, to be typed. */
  readonly column: string
  readonly told: string
  readonly written: string
  /** Why it waits; null where nothing says so. */
  readonly because: Saying | null
  readonly proposed: string | null
}

/** A row that waits as a whole: which of two it is was asked when its file was read, and is decided in the mapping. */
export interface WaitingRow {
  readonly row: string
  readonly because: Saying
}

/** A cell about which two people said different things, without knowing of each other. */
export interface ContestedCell {
  readonly of: string
  readonly row: string
  readonly column: string
  readonly told: string
  readonly choices: readonly { readonly fact: string; readonly to: string | Saying; readonly by: string; readonly at: string }[]
}

export interface ToSettle {
  readonly cells: readonly WaitingCell[]
  readonly rows: readonly WaitingRow[]
  readonly contested: readonly ContestedCell[]
}

/** Marks of numbers that stay out of every estimate until a person says more. */
const waits: ReadonlySet<number> = new Set([mark.waiting, mark.atLeast, mark.atMost])

interface Aside {
  readonly written: string
  readonly because: Saying
  readonly proposed: string | null
}

/** What was set aside of one file: cells by table, column and row, and whole rows. */
function asidesOf(sheet: BroughtSheet): {
  readonly cells: ReadonlyMap<string, Aside>
  readonly rows: readonly (Aside & { readonly line: number })[]
} {
  const cells = new Map<string, Aside>()
  const rows: (Aside & { readonly line: number })[] = []
  for (const batch of sheet.batches.filter(({ table }) => table === 'setAside')) {
    for (let at = 0; at < batch.rows; at++) {
      const written = (textIn(batch, 'written', at) ?? '').trim()
      const proposed = textIn(batch, 'proposed', at)
      const line = numberIn(batch, 'line', at) ?? 0
      const kept = { proposed: proposed ?? '', line, written, column: textIn(batch, 'header', at) ?? '' }
      const aside = { written, proposed, because: retoldReason(textIn(batch, 'because', at) ?? '', kept) }
      const row = numberIn(batch, 'row', at)
      if (row !== null) cells.set(`${textIn(batch, 'table', at)}/${textIn(batch, 'column', at)}/${row}`, aside)
      else if (textIn(batch, 'state', at) === 'waiting') rows.push({ ...aside, line })
    }
  }
  return { cells, rows }
}

const numberColumns = (table: Table): readonly (readonly [string, Column])[] =>
  [...Object.entries(table.columns as { readonly [name: string]: Column }), ...table.factors].filter(
    ([, column]) => column.type === 'number' && column.marks !== null,
  )

function* waitingCells(corrected: CorrectedProject): Generator<NamedCell> {
  for (const table of [corrected.snapshot.tables.count, corrected.snapshot.tables.tally] as readonly Table[]) {
    const columns = numberColumns(table)
    for (let row = 0; row < table.rows; row++) {
      for (const [name, column] of columns) {
        if (column.type !== 'number' || !waits.has(column.marks?.[row] ?? 0)) continue
        yield { of: rowAddress(table, row), table: table.name, column: name, name, isNumber: true }
      }
    }
  }
}

/** A cell as a person names it: for a tally the name of its count, and who was counted. */
function nameCell(
  corrected: CorrectedProject,
  { of, table, column }: Pick<NamedCell, 'of' | 'table' | 'column'>,
): Pick<WaitingCell, 'row' | 'column' | 'told'> {
  const place = table === 'tally' ? placeOf(corrected.sheets, of) : null
  const count = table === 'tally' ? (place === null ? null : countOfTally(place)) : of
  const label =
    table === 'tally' && count !== null ? talliesOfCount(corrected, count).find(({ address }) => address === of)?.label : column
  return { row: corrected.nameOf(of), column: label ?? column, told: count === null ? '' : toldCount(corrected, count) }
}

function tableOf({ sheets }: CorrectedProject, of: string): NamedCell['table'] {
  return placeOf(sheets, of)?.batch.table === 'tally' ? 'tally' : 'count'
}

/** Everything in a project that waits for a person: cells, whole rows, and corrections that contradict each other. */
export async function whatWaits(project: Project): Promise<ToSettle> {
  const corrected = await readCorrected(project)
  const asides = new Map(corrected.sheets.map((sheet) => [sheet.sheet, asidesOf(sheet)]))
  const cells = [...waitingCells(corrected)].map((cell): WaitingCell => {
    const place = placeOf(corrected.sheets, cell.of)
    const key = `${cell.table}/${cell.column}/${(place?.batch.first ?? 0) + (place?.row ?? 0)}`
    const aside = place === null ? undefined : asides.get(place.sheet.sheet)?.cells.get(key)
    const step = historyOf(corrected, cell.of, cell.column)?.standing
    const said = step == null ? undefined : String(step.to ?? '')
    return {
      of: cell.of,
      ...nameCell(corrected, cell),
      written: said ?? aside?.written ?? '',
      because: said === undefined ? (aside?.because ?? null) : null,
      proposed: said === undefined ? (aside?.proposed ?? null) : null,
    }
  })
  const rows = corrected.sheets
    .filter(({ stands }) => stands)
    .flatMap((sheet) =>
      (asides.get(sheet.sheet)?.rows ?? []).map(({ line, because }) => ({ row: `${sheet.file}:${line}`, because })),
    )
  const contested = corrected.histories.filter(isContested).map(({ of, column, open }): ContestedCell => {
    const table = tableOf(corrected, of)
    return {
      of,
      ...nameCell(corrected, { of, table, column }),
      choices: open.map(({ fact, to, mark: code }) => ({
        fact: fact.id,
        to: shown({ table, column }, { value: to, mark: code, ...(typeof to === 'string' ? { written: to } : {}) }),
        by: fact.by,
        at: fact.at,
      })),
    }
  })
  return { cells, rows, contested }
}

/**
 * Settles a cell that waits (or about which two corrections disagree): a number, `missing`, or `not-looked-for`.
 *
 * @throws ThrumError host/settle/not-waiting, host/settle/no-number, and what finding a cell throws
 */
export async function settleCell(
  project: Project,
  asked: { readonly row: string; readonly column: string; readonly value: string },
): Promise<CorrectionMade> {
  requireWritable(project)
  const corrected = await readCorrected(project)
  const found = await findRow(corrected, asked.row)
  const cell = namedCell(corrected, found, asked.column)
  const row = corrected.nameOf(cell.of)
  const from = standingCell(corrected, cell)
  if (from === null) throw new ThrumError('host/row/withdrawn', { row })
  const history = historyOf(corrected, cell.of, cell.column)
  const decides = history !== null && isContested(history)
  if (!waits.has(from.mark) && !decides) {
    throw new ThrumError('host/settle/not-waiting', { row, column: cell.name, value: shown(cell, from) })
  }
  const to = typedCell(cell, asked.value)
  if (waits.has(to.mark)) {
    throw new ThrumError('host/settle/no-number', { written: asked.value, words: missingWords.join(', ') })
  }
  const body = { of: cell.of, column: cell.column, ...knowledgeOf(history), ...asCorrection(to) }
  const fact = makeFact(cellSettled, body, project.author, { subject: cell.of })
  await project.log.append([fact])
  return toldCorrection(corrected, cell, fact, { from, to, decides })
}
