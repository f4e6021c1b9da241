import { isoDate, mark, type NumberColumn } from '@thrum/model'
import { markOfReading, needsAnswer, type Reading, valueOfReading } from '../cell/reading.ts'
import type { AsideWriter } from './aside-writer.ts'
import type { CellSource } from './cell-source.ts'
import type { ShownReading } from './counts-read.ts'

/** Counts readings that are more than their own digits, so that each is shown once with how often it stands. */
export interface ShownWriter {
  see(header: string, reading: Reading, column?: string): void
  list(): readonly ShownReading[]
}

/** A value as a person reads it: a day as a date, a time as a clock shows it. */
function printedAs(column: string, value: number): string {
  if (column === 'date') return isoDate(value)
  if (column !== 'start' && column !== 'end') return String(value)
  const seconds = Math.round(value * 60)
  const parts = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, ...(seconds % 60 === 0 ? [] : [seconds % 60])]
  return parts.map((part) => String(part).padStart(2, '0')).join(':')
}

export function createShownWriter(): ShownWriter {
  const seen = new Map<Reading, { header: string; cells: number; column: string }>()
  return {
    see: (header, reading, column = '') => {
      if (!('because' in reading) || reading.because === undefined || !('value' in reading)) return
      const known = seen.get(reading)
      if (known === undefined) seen.set(reading, { header, cells: 1, column })
      else known.cells++
    },
    list: () => {
      const merged = new Map<string, ShownReading>()
      for (const [reading, { header, cells, column }] of seen) {
        if (!('value' in reading)) continue
        const written = reading.written.trim()
        const key = JSON.stringify([header, written, reading.value])
        const known = merged.get(key)
        merged.set(key, {
          column: header,
          written,
          value: reading.value,
          printed: printedAs(column, reading.value),
          because: reading.because ?? '',
          cells: cells + (known?.cells ?? 0),
        })
      }
      return [...merged.values()]
    },
  }
}

/** One number column of a table: the readings of chosen rows, with marks; what needs an answer is set aside. */
export function numberColumnOf(
  rows: Int32Array,
  source: Pick<CellSource, 'header' | 'at'>,
  place: { readonly table: 'count' | 'tally'; readonly column: string; readonly lineOf: (row: number) => number },
  aside: AsideWriter,
  shown: ShownWriter,
): NumberColumn {
  const values = new Float64Array(rows.length)
  const marks = new Uint8Array(rows.length)
  let marked = false
  for (let k = 0; k < rows.length; k++) {
    const row = rows[k] as number
    const reading = source.at(row)
    values[k] = valueOfReading(reading)
    const code = markOfReading[reading.kind]
    if (code !== mark.asWritten) {
      marks[k] = code
      marked = true
    }
    shown.see(source.header, reading, place.column)
    if (needsAnswer(reading)) {
      const { table, column, lineOf } = place
      aside.put({
        state: 'waiting',
        table,
        column,
        written: reading.written,
        because: 'because' in reading ? (reading.because ?? '') : '',
        row: k,
        line: lineOf(row),
        header: source.header,
        ...('proposed' in reading && reading.proposed !== undefined ? { proposed: reading.proposed } : {}),
      })
    }
  }
  return { type: 'number', values, marks: marked ? marks : null }
}
