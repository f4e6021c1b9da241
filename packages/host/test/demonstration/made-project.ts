import { type Author, createLogicalClock, type Fact, foldFacts, type Snapshot, textAt } from '@thrum/model'
import { demonstrationFacts } from '../../src/demonstration/demonstration-facts.ts'

/** Somebody who writes before the first season, on a clock that a test owns. */
export function authorAt(start = Date.UTC(2030, 0, 15), device = 'desk'): Author {
  let now = start
  const clock = { now: () => (now += 1), monotonic: () => now, zone: () => 'UTC' }
  return { by: 'planner', device, clock: createLogicalClock(clock, device) }
}

export const factsOf = (seed: string): readonly Fact[] => demonstrationFacts({ seed, author: authorAt() })

export const projectOf = (seed: string): Snapshot => foldFacts(factsOf(seed))

/** One count as text and numbers, with how many of each kind. */
export interface CountRow {
  readonly field: string
  readonly crop: string
  readonly season: string
  readonly visit: string
  readonly position: string
  readonly observer: string
  readonly half: 'morning' | 'afternoon'
  readonly date: number
  readonly start: number
  readonly stage: number
  readonly flowers: number
  readonly temperature: number
  readonly strip: boolean
  readonly kinds: ReadonlyMap<string, number>
}

export function countRows(snapshot: Snapshot): readonly CountRow[] {
  const { columns, rows } = snapshot.tables.count
  const strip = new Set(snapshot.treatments.filter(({ level }) => level === 'strip').map(({ field }) => field))
  const kinds = Array.from({ length: rows }, () => new Map<string, number>())
  snapshot.tallyCount.forEach((count, tally) => {
    const kind = snapshot.kinds[snapshot.tallyKind[tally] ?? -1]?.name ?? ''
    kinds[count]?.set(kind, snapshot.tables.tally.columns.number.values[tally] ?? Number.NaN)
  })
  const text = (column: keyof typeof columns, row: number): string => {
    const found = columns[column]
    return found.type === 'text' ? (textAt(found, row) ?? '') : ''
  }
  return Array.from({ length: rows }, (_, row) => ({
    field: text('field', row),
    crop: text('crop', row),
    season: text('season', row),
    visit: text('visit', row),
    position: text('position', row),
    observer: text('observer', row),
    half: (columns.start.values[row] ?? 0) < 720 ? 'morning' : 'afternoon',
    date: columns.date.values[row] ?? Number.NaN,
    start: columns.start.values[row] ?? Number.NaN,
    stage: columns.stage.values[row] ?? Number.NaN,
    flowers: columns.flowers.values[row] ?? Number.NaN,
    temperature: columns.temperature.values[row] ?? Number.NaN,
    strip: strip.has(text('field', row)),
    kinds: kinds[row] ?? new Map(),
  }))
}

/** Number of rows in which a condition holds. */
export const howMany = <R>(rows: readonly R[], holds: (row: R) => boolean): number => rows.filter(holds).length
