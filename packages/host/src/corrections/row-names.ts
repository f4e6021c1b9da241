import { type BroughtSheet, countOfTally, numberIn, placeOf, textIn, versionsOf } from './brought-rows.ts'
import { fileNameOf } from './file-versions.ts'

/** For each file the latest version that stands and mends it, itself where none does. */
export function latestVersions(sheets: readonly BroughtSheet[]): ReadonlyMap<string, BroughtSheet> {
  const mended = new Set(sheets.filter(({ stands }) => stands).map(({ mends }) => mends))
  const latest = new Map<string, BroughtSheet>()
  for (const sheet of sheets) {
    if (!sheet.stands || mended.has(sheet.sheet)) continue
    for (const version of versionsOf(sheet, sheets)) latest.set(version.sheet, sheet)
  }
  return latest
}

/** Lines of a mended file by the rows that hold them. */
function heldLines(sheet: BroughtSheet): ReadonlyMap<string, number> {
  const lines = new Map<string, number>()
  for (const batch of sheet.batches.filter(({ table }) => table === 'heldLine')) {
    for (let row = 0; row < batch.rows; row++) {
      const line = numberIn(batch, 'line', row)
      if (line !== null) lines.set(`${textIn(batch, 'source', row)}#${numberIn(batch, 'row', row)}`, line)
    }
  }
  return lines
}

/**
 * Names rows as a person can type them: `FILE:LINE` in the latest version of the file. A tally without a line of its own has
 * the name of its count; a row that no line tells has its address.
 */
export function createRowNames(sheets: readonly BroughtSheet[]): (address: string) => string {
  const latest = latestVersions(sheets)
  const held = new Map<string, ReadonlyMap<string, number>>()
  const heldIn = (sheet: BroughtSheet): ReadonlyMap<string, number> => {
    const known = held.get(sheet.sheet) ?? heldLines(sheet)
    held.set(sheet.sheet, known)
    return known
  }
  const nameOf = (address: string): string => {
    const place = placeOf(sheets, address)
    if (place === null) return address
    const own = numberIn(place.batch, 'line', place.row)
    const newest = latest.get(place.sheet.sheet) ?? place.sheet
    const line = newest === place.sheet ? own : heldIn(newest).get(address)
    if (line != null) return `${fileNameOf(newest, sheets)}:${line}`
    const count = place.batch.table === 'tally' ? countOfTally(place) : null
    if (own === null && count !== null) return nameOf(count)
    return own === null ? address : `${fileNameOf(place.sheet, sheets)}:${own}`
  }
  return nameOf
}
