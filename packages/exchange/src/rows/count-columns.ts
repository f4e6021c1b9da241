import type { NamedColumn } from '@thrum/model'
import { declarationOf } from '@thrum/model'
import { nothingWritten, type Reading, valueOfReading } from '../cell/reading.ts'
import { countingUnitOf } from '../mapping/counting-unit.ts'
import type { AsideWriter } from './aside-writer.ts'
import type { CellSource } from './cell-source.ts'
import type { RowGroups } from './group-rows.ts'
import { numberColumnOf, type ShownWriter } from './number-cells.ts'
import { type TextSource, textColumnOf } from './text-cells.ts'
import type { Effort, WatchColumn } from './watch-cells.ts'

export interface CountTable {
  readonly columns: readonly NamedColumn[]
  /** Columns of text that differ between the rows of one watch: the first stands. */
  readonly differing: readonly string[]
}

interface Watches {
  /** First row of each watch. */
  readonly first: Int32Array
  /** All rows of each watch; null where each row is a watch. */
  readonly groups: RowGroups | null
  readonly lineOf: (row: number) => number
}

/** In a long table the rows of a watch must agree on its numbers; where they do not, the number waits. */
function agreed({ first, groups }: Watches, source: CellSource): Pick<CellSource, 'header' | 'at'> {
  if (groups === null) return source
  const { rows, offsets } = groups
  const watchOf = new Map<number, number>()
  first.forEach((row, watch) => {
    watchOf.set(row, watch)
  })
  return {
    header: source.header,
    at: (row) => {
      const watch = watchOf.get(row) ?? 0
      let found: Reading = nothingWritten
      for (let k = offsets[watch] as number; k < (offsets[watch + 1] as number); k++) {
        const reading = source.at(rows[k] as number)
        if (reading.kind === 'not-looked-for' || reading === found) continue
        if (found.kind === 'not-looked-for') found = reading
        else if (!Object.is(valueOfReading(found), valueOfReading(reading))) {
          const written = `${found.written.trim()} / ${reading.written.trim()}`
          return { kind: 'waiting', written, because: 'exchange/watch/rows-differ' }
        }
      }
      return found
    },
  }
}

function agreedText({ first, groups }: Watches, source: TextSource): { readonly rows: Int32Array; readonly differs: boolean } {
  if (groups === null) return { rows: first, differs: false }
  let differs = false
  const rows = first.map((row, watch) => {
    let found = row
    for (let k = groups.offsets[watch] as number; k < (groups.offsets[watch + 1] as number); k++) {
      const other = groups.rows[k] as number
      if (source.codeAt(found) < 0) found = other
      else if (source.codeAt(other) >= 0 && source.codeAt(other) !== source.codeAt(found)) differs = true
    }
    return found
  })
  return { rows, differs }
}

/** Columns of the table `count`, a row a watch. */
export function countColumns(
  watches: Watches,
  texts: readonly TextSource[],
  numbers: readonly WatchColumn[],
  effort: Pick<CellSource, 'header' | 'at'> | null,
  zeros: string,
  aside: AsideWriter,
  shown: ShownWriter,
): CountTable {
  const { first, lineOf } = watches
  const columns: NamedColumn[] = []
  const differing: string[] = []
  for (const source of texts) {
    const { rows, differs } = agreedText(watches, source)
    if (differs) differing.push(source.header)
    const column = textColumnOf(source, rows)
    columns.push({
      name: source.column,
      column:
        source.column === 'unit'
          ? { ...column, dictionary: column.dictionary.map((word) => countingUnitOf(word) ?? word) }
          : column,
    })
  }
  columns.push({ name: 'zeros', column: { type: 'text', codes: new Int32Array(first.length), dictionary: [zeros] } })
  const place = (column: string) => ({ table: 'count' as const, column, lineOf })
  const withUnit = (name: string, column: NamedColumn['column'], said?: string): NamedColumn => {
    const unit = said ?? declarationOf('count', name)?.unit
    return unit === undefined ? { name, column } : { name, unit, column }
  }
  for (const { column, source, unit } of numbers) {
    columns.push(withUnit(column, numberColumnOf(first, agreed(watches, source), place(column), aside, shown), unit))
  }
  if (effort !== null) columns.push(withUnit('minutes', numberColumnOf(first, effort, place('minutes'), aside, shown)))
  const lines = Float64Array.from(first, (row) => lineOf(row))
  columns.push({ name: 'line', unit: '1', column: { type: 'number', values: lines, marks: null } })
  return { columns, differing }
}

/** Effort of each watch: agreed between its rows, and not claimed where a constant would be given to a row without any count. */
export function effortOf(
  watches: Watches,
  effort: Effort | null,
  counted: (row: number) => boolean,
): Pick<CellSource, 'header' | 'at'> | null {
  if (effort === null) return null
  const same = agreed(watches, effort.source)
  if (!effort.constant) return same
  return { header: same.header, at: (row) => (counted(row) ? same.at(row) : nothingWritten) }
}

export type { Watches }
