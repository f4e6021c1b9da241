import { proposeMapping, readSheet } from '@thrum/exchange'
import { bringCounts, offerCounts, type Project } from '@thrum/host'
import { sha256Hex, unwatched } from '@thrum/model/ground'

/** A small table whose content follows from its name: what it must count for, whoever reads it. */
export interface TrialTable {
  readonly file: string
  readonly bytes: Uint8Array
  readonly counts: number
  readonly insects: number
}

export function tableOf(file: string): TrialTable {
  const digest = sha256Hex(file)
  const counts = 3 + (Number.parseInt(digest.slice(0, 4), 16) % 400)
  let insects = 0
  const rows = Array.from({ length: counts }, (_, row) => {
    const seen = Number.parseInt(digest.slice(row % 60, (row % 60) + 2), 16)
    insects += seen
    return `${file} ${row % 7},plot ${row},2031-05-${String(1 + (row % 28)).padStart(2, '0')},09:10,10,${seen},lots`
  })
  const text = `field,plot,date,start,minutes,honey bee,hover fly\n${rows.join('\n')}\n`
  return { file, bytes: new TextEncoder().encode(text), counts, insects }
}

/** Brings a table as a person would; acknowledged when it returns. */
export async function bringTable(project: Project, { file, bytes }: TrialTable): Promise<void> {
  const { mapping } = proposeMapping(readSheet(bytes))
  await bringCounts(project, file, bytes, await offerCounts(bytes, mapping, unwatched), unwatched)
}

/** Tables that count in a project: which there are, and which are not whole. */
export async function lookAtTables(project: Project): Promise<{ readonly counted: ReadonlySet<string>; readonly torn: number }> {
  const { sheets, tables, tallyCount } = await project.snapshot()
  const { dictionary, codes } = tables.count.columns.field
  const counts = new Map<string, number>()
  const insects = new Map<string, number>()
  // The name of the table stands in every field of its rows, before the last blank.
  const fileOf = (row: number): string => (dictionary[codes[row] ?? -1] ?? '').replace(/ \d+$/u, '')
  for (let row = 0; row < tables.count.rows; row++) counts.set(fileOf(row), (counts.get(fileOf(row)) ?? 0) + 1)
  tallyCount.forEach((row, tally) => {
    const seen = tables.tally.columns.number.values[tally] ?? Number.NaN
    if (!Number.isNaN(seen)) insects.set(fileOf(row), (insects.get(fileOf(row)) ?? 0) + seen)
  })
  const torn = sheets.filter(({ file }) => {
    const table = tableOf(file)
    return counts.get(file) !== table.counts || insects.get(file) !== table.insects
  })
  return { counted: new Set(sheets.map(({ file }) => file)), torn: torn.length }
}
