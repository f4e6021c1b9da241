import { mark, type NamedColumn, numberColumn, type TextColumn } from '@thrum/model'
import { markOfReading, needsAnswer, type Reading, valueOfReading } from '../cell/reading.ts'
import type { AsideWriter } from './aside-writer.ts'
import type { KindTotal } from './counts-read.ts'

/** Who is counted in one column, or in the rows of a long table that say so. */
export interface TallyGroup {
  readonly kind: string
  readonly caste?: string | undefined
  readonly behaviour?: string | undefined
}

/** Fills the table `tally`, one row a count and group. */
export interface TallyWriter {
  /** `line` is given in long tables, where a tally has a line of its own. */
  put(
    group: number,
    count: number,
    reading: Reading,
    where: { readonly header: string; readonly line: number; readonly ownLine: boolean; readonly others?: number },
  ): void
  readonly rows: () => number
  columns(): readonly NamedColumn[]
  totals(): readonly KindTotal[]
}

function grown<A extends Float64Array | Int32Array | Uint8Array>(array: A, make: (length: number) => A): A {
  const wider = make(array.length * 2)
  wider.set(array)
  return wider
}

const wordsOf = (
  groups: readonly TallyGroup[],
  of: (group: TallyGroup) => string | undefined,
): { words: string[]; codes: number[] } => {
  const words = [...new Set(groups.flatMap((group) => of(group) ?? []))]
  return { words, codes: groups.map((group) => words.indexOf(of(group) ?? '')) }
}

export function createTallyWriter(groups: readonly TallyGroup[], unit: string, aside: AsideWriter, size = 1024): TallyWriter {
  let rows = 0
  let capacity = Math.max(16, size)
  let groupOf = new Int32Array(capacity)
  let counts = new Float64Array(capacity)
  let values = new Float64Array(capacity)
  let marks = new Uint8Array(capacity)
  let lines: Float64Array | null = null
  const totals = groups.map(({ kind }) => ({ kind, total: 0, clean: 0, marked: 0, waiting: 0, missing: 0 }))

  const text = (name: string, of: (group: TallyGroup) => string | undefined): NamedColumn[] => {
    const { words, codes } = wordsOf(groups, of)
    if (words.length === 0) return []
    const column: TextColumn = {
      type: 'text',
      codes: groupOf.slice(0, rows).map((group) => codes[group] ?? -1),
      dictionary: words,
    }
    return [{ name, column }]
  }
  return {
    put: (group, count, reading, { header, line, ownLine, others }) => {
      if (rows === capacity) {
        capacity *= 2
        groupOf = grown(groupOf, (length) => new Int32Array(length))
        counts = grown(counts, (length) => new Float64Array(length))
        values = grown(values, (length) => new Float64Array(length))
        marks = grown(marks, (length) => new Uint8Array(length))
        if (lines !== null) lines = grown(lines, (length) => new Float64Array(length).fill(Number.NaN))
      }
      groupOf[rows] = group
      counts[rows] = count
      const value = valueOfReading(reading)
      values[rows] = value
      marks[rows] = markOfReading[reading.kind]
      if (ownLine) {
        lines ??= new Float64Array(capacity).fill(Number.NaN)
        lines[rows] = line
      }
      const total = totals[group]
      if (total !== undefined) {
        if (needsAnswer(reading)) total.waiting++
        else if (reading.kind === 'number') total.clean++
        else if (reading.kind === 'approximate') total.marked++
        else total.missing++
        if (reading.kind === 'number' || reading.kind === 'approximate') total.total += value
      }
      if (needsAnswer(reading)) {
        aside.put({
          state: 'waiting',
          table: 'tally',
          column: 'number',
          written: reading.written,
          because: 'because' in reading ? (reading.because ?? '') : '',
          row: rows,
          line,
          header,
          ...('proposed' in reading && reading.proposed !== undefined ? { proposed: reading.proposed } : {}),
          ...(others === undefined ? {} : { others }),
        })
      }
      rows++
    },
    rows: () => rows,
    columns: () => {
      const marked = marks.subarray(0, rows).some((code) => code !== mark.asWritten)
      return [
        ...text('kind', (group) => group.kind),
        ...text('caste', (group) => group.caste),
        ...text('behaviour', (group) => group.behaviour),
        { name: 'count', unit: '1', column: { type: 'number', values: counts.slice(0, rows), marks: null } },
        {
          name: 'number',
          unit,
          column: { type: 'number', values: values.slice(0, rows), marks: marked ? marks.slice(0, rows) : null },
        },
        ...(lines === null
          ? []
          : [
              {
                name: 'line',
                unit: '1',
                column: numberColumn(Array.from(lines.subarray(0, rows), (line) => (Number.isNaN(line) ? null : line))),
              },
            ]),
      ]
    },
    totals: () => {
      const byKind = new Map<string, KindTotal>()
      for (const one of totals) {
        const known = byKind.get(one.kind)
        byKind.set(
          one.kind,
          known === undefined
            ? { ...one }
            : {
                kind: one.kind,
                total: known.total + one.total,
                clean: known.clean + one.clean,
                marked: known.marked + one.marked,
                waiting: known.waiting + one.waiting,
                missing: known.missing + one.missing,
              },
        )
      }
      return [...byKind.values()]
    },
  }
}
