import { retoldReason } from '@thrum/exchange'
import { addressOf, type Fact, parseAddress } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { type BroughtSheet, countOfTally, numberIn, placeOf, type RowPlace, textIn, versionsOf } from './brought-rows.ts'
import type { CorrectedProject } from './corrected-project.ts'
import { fileNameOf, findFile, parseFileName } from './file-versions.ts'

/** What a person meant: a count (with the tally whose own line was named), another row, a fact, or a whole file. */
export type Found =
  | {
      readonly kind: 'count'
      readonly address: string
      /** As the person can name it again. */
      readonly name: string
      /** The tally that has the named line for itself, in a long table; else null. */
      readonly tally: string | null
    }
  | { readonly kind: 'row'; readonly address: string; readonly table: string }
  | { readonly kind: 'fact'; readonly fact: Fact }
  | { readonly kind: 'file'; readonly sheet: BroughtSheet; readonly name: string }

/** The row of a table that has this line in one file, among the rows that this file itself brought. */
function rowWithLine(sheet: BroughtSheet, table: string, line: number): RowPlace | null {
  for (const batch of sheet.batches) {
    const lines = batch.table === table ? batch.columns.get('line') : undefined
    const row = lines?.type === 'number' ? lines.values.indexOf(line) : -1
    if (row >= 0) return { sheet, batch, row }
  }
  return null
}

/** A line of a mended file that an earlier version brought. */
function heldElsewhere(latest: BroughtSheet, line: number, sheets: readonly BroughtSheet[]): RowPlace | null {
  const place = rowWithLine(latest, 'heldLine', line)
  const source = place === null ? null : textIn(place.batch, 'source', place.row)
  const row = place === null ? null : numberIn(place.batch, 'row', place.row)
  return source === null || row === null ? null : placeOf(sheets, addressOf(source, row))
}

function placeOfLine(sheet: BroughtSheet, line: number, sheets: readonly BroughtSheet[]): RowPlace | null {
  return rowWithLine(sheet, 'count', line) ?? rowWithLine(sheet, 'tally', line) ?? heldElsewhere(sheet, line, sheets)
}

/** Why a line that was read is no row of a table; null where it was never read as one. */
function requireNotAside(sheet: BroughtSheet, line: number, name: string): void {
  for (const batch of sheet.batches) {
    const lines = batch.table === 'setAside' ? batch.columns.get('line') : undefined
    if (lines?.type !== 'number') continue
    for (let row = 0; row < batch.rows; row++) {
      if (lines.values[row] !== line || numberIn(batch, 'row', row) !== null) continue
      const state = textIn(batch, 'state', row) ?? 'waiting'
      const kept = { line, proposed: '', written: textIn(batch, 'written', row) ?? '', column: '' }
      throw new ThrumError('host/row/set-aside', {
        file: name,
        line,
        state,
        because: retoldReason(textIn(batch, 'because', row) ?? '', kept),
      })
    }
  }
}

function linesOf(sheet: BroughtSheet): readonly number[] {
  const found = sheet.batches
    .filter(({ table }) => table === 'count' || table === 'tally' || table === 'heldLine')
    .flatMap(({ columns }) => {
      const lines = columns.get('line')
      return lines?.type === 'number' ? Array.from(lines.values).filter((line) => !Number.isNaN(line)) : []
    })
  return [...new Set(found)].sort((a, b) => a - b)
}

function byLine({ sheets, forgotten }: CorrectedProject, sheet: BroughtSheet, line: number): Found {
  const name = fileNameOf(sheet, sheets)
  const place = placeOfLine(sheet, line, sheets)
  if (place !== null) {
    const own = addressOf(place.batch.id, place.row)
    if (forgotten.has(own)) throw new ThrumError('host/row/forgotten', { file: name, line })
    if (place.batch.table === 'count') return { kind: 'count', address: own, name: `${name}:${line}`, tally: null }
    const count = countOfTally(place)
    if (count !== null) return { kind: 'count', address: count, name: `${name}:${line}`, tally: own }
  }
  for (const version of versionsOf(sheet, sheets)) requireNotAside(version, line, name)
  const lines = linesOf(sheet)
  const near = lines.toSorted((a, b) => Math.abs(a - line) - Math.abs(b - line)).slice(0, 3)
  throw new ThrumError('host/row/no-such-line', { file: name, line, near: near.sort((a, b) => a - b).join(', ') })
}

async function byAddress({ project, sheets, nameOf }: CorrectedProject, text: string): Promise<Found | null> {
  const { fact: id, row } = parseAddress(text)
  if (row >= 0) {
    const place = placeOf(sheets, text)
    if (place === null) return null
    if (place.batch.table === 'count') return { kind: 'count', address: text, name: nameOf(text), tally: null }
    return { kind: 'row', address: text, table: place.batch.table }
  }
  const fact = await project.log.factById(id)
  return fact === null ? null : { kind: 'fact', fact }
}

/**
 * Finds what a person names: `FILE:LINE`, the address of a row, the id of a fact, or a file.
 *
 * @throws ThrumError host/row/unknown, no-such-line (with the nearest), forgotten, set-aside (with the reason), host/file/which
 */
export async function findRow(corrected: CorrectedProject, text: string): Promise<Found> {
  const line = /^(.+):(\d{1,9})$/u.exec(text)
  const ofLine = line === null ? null : findFile(parseFileName(line[1] ?? ''), corrected.sheets)
  if (line !== null && ofLine !== null) return byLine(corrected, ofLine, Number(line[2]))
  const file = findFile(parseFileName(text), corrected.sheets)
  if (file !== null) return { kind: 'file', sheet: file, name: fileNameOf(file, corrected.sheets) }
  const found = await byAddress(corrected, text)
  if (found !== null) return found
  const files = [...new Set(corrected.sheets.map((sheet) => fileNameOf(sheet, corrected.sheets)))]
  throw new ThrumError('host/row/unknown', { found: text, files: files.slice(0, 8).join(', '), count: files.length })
}
