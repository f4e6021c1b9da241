import { mark, type Snapshot } from '@thrum/model'
import { kindsByFrequency } from '../tell-project.ts'
import type { GridColumn } from './grid.ts'

interface Counted {
  readonly numbers: Float64Array
  readonly marks: Uint8Array
}

/** For each kind how many in each count. Several tallies of a kind in one count (castes, behaviours) are added up. */
function countedByKind({ kinds, tables, tallyKind, tallyCount }: Snapshot): readonly Counted[] {
  const rows = tables.count.rows
  const { values, marks } = tables.tally.columns.number
  const all = kinds.map(() => ({
    numbers: new Float64Array(rows).fill(Number.NaN),
    marks: new Uint8Array(rows).fill(mark.notLookedFor),
    seen: new Uint8Array(rows),
  }))
  for (let tally = 0; tally < tallyKind.length; tally++) {
    const own = all[tallyKind[tally] as number]
    const row = tallyCount[tally] as number
    if (own === undefined || row < 0) continue
    const value = values[tally] as number
    const code = marks?.[tally] ?? mark.asWritten
    if (own.seen[row] === 0) {
      own.seen[row] = 1
      own.numbers[row] = value
      own.marks[row] = code
      continue
    }
    const before = own.numbers[row] as number
    own.numbers[row] = Number.isNaN(before) ? value : Number.isNaN(value) ? before : before + value
    // What is not simply as written is not lost in the sum.
    if (own.marks[row] === mark.asWritten) own.marks[row] = code
  }
  return all
}

/** What the numbers count, where all counts count one thing; null where they do not. */
function countingUnit({ tables }: Snapshot): string | null {
  const { codes, dictionary } = tables.count.columns.unit
  const found = new Set(codes)
  const [only] = found
  return found.size === 1 && only !== undefined ? (dictionary[only] ?? null) : null
}

/** One column a kind, the most counted first. A kind that has the name of a column is told apart from it. */
export function tallyColumns(snapshot: Snapshot, taken: ReadonlySet<string>): readonly GridColumn[] {
  const counted = countedByKind(snapshot)
  const unit = countingUnit(snapshot)
  return kindsByFrequency(snapshot).flatMap(({ kind }): readonly GridColumn[] => {
    const title = snapshot.kinds[kind]?.name ?? ''
    const own = counted[kind]
    if (own === undefined) return []
    const { numbers, marks } = own
    return [
      {
        name: taken.has(title) ? `tally/${title}` : title,
        title,
        type: 'tally',
        unit,
        cell: (row) => {
          const value = numbers[row] ?? Number.NaN
          return Number.isNaN(value) ? null : value
        },
        markOf: (row) => marks[row] ?? mark.asWritten,
        numbers,
        words: null,
      },
    ]
  })
}
