import { type Snapshot, textAt } from '@thrum/model'
import { allKinds, type KindSet, kindSet, talliesOf } from '../selection/kind-set.ts'
import { type FieldShare, fieldShares, type RelativeCount, relativeCount } from './field-shares.ts'

/** True where the file of some count does not say whether an absent kind was looked for. */
export function areSightingsOnly(snapshot: Snapshot, rows: ArrayLike<number>): boolean {
  const { zeros } = snapshot.tables.count.columns
  for (let k = 0; k < rows.length; k++) if (textAt(zeros, rows[k] as number) === 'not-known') return true
  return false
}

/**
 * Tallies that shares are made of: counts in which each kind of the set was looked for. Among sightings, where an absent row
 * says nothing, an absent kind adds nothing.
 */
export function shareTallies(snapshot: Snapshot, kind: KindSet, sightingsOnly: boolean): Float64Array {
  if (!sightingsOnly) return talliesOf(snapshot, kind)
  const each = kind.kinds.map((own) => talliesOf(snapshot, { kinds: [own] }))
  return Float64Array.from({ length: snapshot.tables.count.rows }, (_, row) =>
    each.reduce((sum, tallies) => sum + (Number.isNaN(tallies[row] as number) ? 0 : (tallies[row] as number)), 0),
  )
}

/** Counts that shares rest on, and how they are summed over them: field by field. */
export interface SharedCounts {
  /** Counts of a known field in which every kind of the project was looked for. */
  readonly rows: readonly number[]
  /** A kind's visitors in each field. */
  readonly totalsOf: (kind: KindSet) => readonly number[]
  /** All visitors of each field, kinds that were not asked about among them. */
  readonly wholes: readonly number[]
}

/** The counts among these that shares of kinds can be made of. */
export function sharedCounts(snapshot: Snapshot, rows: ArrayLike<number>, sightingsOnly: boolean): SharedCounts {
  const all = kindSet(snapshot, allKinds)
  const whole = shareTallies(snapshot, all, sightingsOnly)
  const place = new Map<number, number>()
  const counted: number[] = []
  for (let k = 0; k < rows.length; k++) {
    const row = rows[k] as number
    const field = snapshot.countField[row] ?? -1
    if (field < 0 || Number.isNaN(whole[row] as number)) continue
    counted.push(row)
    if (!place.has(field)) place.set(field, place.size)
  }
  const sums = (tallies: Float64Array): readonly number[] => {
    const found = Array.from(place, () => 0)
    for (const row of counted) {
      const at = place.get(snapshot.countField[row] as number) as number
      found[at] = (found[at] as number) + (tallies[row] as number)
    }
    return found
  }
  return {
    rows: counted,
    totalsOf: (kind) => sums(shareTallies(snapshot, kind, sightingsOnly)),
    wholes: sums(whole),
  }
}

/** Shares of kinds among all visitors of these counts (methods 2.9). */
export function sharesOf({ totalsOf, wholes }: SharedCounts, kinds: readonly KindSet[]): readonly FieldShare[] {
  return fieldShares(kinds.map((kind) => ({ kind: kind.label, parts: totalsOf(kind), wholes })))
}

/** One kind against all other visitors of these counts (methods 2.9a). */
export function againstTheRest({ totalsOf, wholes }: SharedCounts, kind: KindSet): RelativeCount | null {
  const own = totalsOf(kind)
  return relativeCount(
    own,
    wholes.map((whole, field) => whole - (own[field] as number)),
  )
}
