import { plainName } from '../cell/plain-name.ts'
import { valueOfReading } from '../cell/reading.ts'
import type { Mapping } from '../mapping/shape.ts'
import type { AsideWriter } from './aside-writer.ts'
import { type CellSource, countSource, type NumberHabits } from './cell-source.ts'
import type { MappedColumns } from './mapped-columns.ts'
import type { ShownWriter } from './number-cells.ts'
import { sumReadings } from './sum-readings.ts'
import { createTallyWriter, type TallyGroup, type TallyWriter } from './tally-writer.ts'

export interface TallySource {
  readonly group: TallyGroup
  readonly parts: readonly CellSource[]
}

/** The kinds of a wide table, each with the columns that sum to it. */
export function wideTallySources(columns: MappedColumns, mapping: Mapping, habits: NumberHabits): readonly TallySource[] {
  const byGroup = new Map<string, { group: TallyGroup; parts: CellSource[] }>()
  for (const column of columns.every('tally')) {
    const { kind, caste, behaviour } = column.mapped
    const group: TallyGroup = { kind: plainName(kind ?? column.header), caste, behaviour }
    const key = JSON.stringify([group.kind, caste ?? null, behaviour ?? null])
    const known = byGroup.get(key) ?? { group, parts: [] }
    known.parts.push(countSource(column, mapping, habits))
    byGroup.set(key, known)
  }
  return [...byGroup.values()]
}

/** A tally for each count and kind, zeros included: a wide table holds them. */
export function wideTallies(
  sources: readonly TallySource[],
  rowOfCount: Int32Array,
  lineOf: (row: number) => number,
  unit: string,
  aside: AsideWriter,
  shown: ShownWriter,
): TallyWriter {
  const groups = sources.map(({ group }) => group)
  const writer = createTallyWriter(groups, unit, aside, rowOfCount.length * groups.length)
  for (let count = 0; count < rowOfCount.length; count++) {
    const row = rowOfCount[count] as number
    for (let g = 0; g < sources.length; g++) {
      const { parts } = sources[g] as TallySource
      const first = parts[0] as CellSource
      const line = lineOf(row)
      if (parts.length === 1) {
        const reading = first.at(row)
        shown.see(first.header, reading)
        writer.put(g, count, reading, { header: first.header, line, ownLine: false })
        continue
      }
      const readings = parts.map((part) => part.at(row))
      readings.forEach((reading, k) => {
        shown.see(parts[k]?.header ?? '', reading)
      })
      const reading = sumReadings(readings)
      const at = readings.indexOf(reading)
      const others = readings.reduce((sum, part, k) => (k === at || !('value' in part) ? sum : sum + valueOfReading(part)), 0)
      const header = at < 0 ? parts.map((part) => part.header).join(' + ') : (parts[at]?.header ?? '')
      writer.put(g, count, reading, at < 0 ? { header, line, ownLine: false } : { header, line, ownLine: false, others })
    }
  }
  return writer
}
