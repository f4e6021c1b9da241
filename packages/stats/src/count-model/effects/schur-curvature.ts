import { log } from '../../elementary.ts'
import { cholesky, solveCholesky } from '../symmetric.ts'
import type { Curvature } from './curvature.ts'
import type { Effects, Loads, Slot } from './effects.ts'

/** For each level of the slot taken out: which effects of the others meet it in a row. */
interface Meetings {
  /** Level j meets entries `first[j]` to `first[j + 1]` - 1. */
  readonly first: Int32Array
  /** Place of the other effect in the dense part. */
  readonly other: Int32Array
  /** For each slot and row: the entry; unused for the slot taken out. */
  readonly entryOf: readonly Int32Array[]
}

function meetingsOf(out: Slot, slots: readonly Slot[], placeOf: readonly Int32Array[], dense: number): Meetings {
  const n = out.of.length
  const seen = new Map<number, number>()
  const keys: number[] = []
  for (let s = 0; s < slots.length; s++) {
    if (slots[s] === out) continue
    for (let i = 0; i < n; i++) {
      const key = (out.of[i] as number) * dense + ((placeOf[s] as Int32Array)[i] as number)
      if (!seen.has(key)) {
        seen.set(key, 0)
        keys.push(key)
      }
    }
  }
  keys.sort((a, b) => a - b)
  const first = new Int32Array(out.levels + 1)
  const other = new Int32Array(keys.length)
  for (const [at, key] of keys.entries()) {
    seen.set(key, at)
    other[at] = key % dense
    const level = Math.floor(key / dense)
    first[level + 1] = (first[level + 1] as number) + 1
  }
  for (let j = 0; j < out.levels; j++) first[j + 1] = (first[j + 1] as number) + (first[j] as number)
  const entryOf = slots.map((slot, s) =>
    slot === out
      ? new Int32Array(0)
      : Int32Array.from(
          { length: n },
          (_, i) => seen.get((out.of[i] as number) * dense + ((placeOf[s] as Int32Array)[i] as number)) ?? 0,
        ),
  )
  return { first, other, entryOf }
}

const entry = (load: number | Float64Array, i: number): number => (typeof load === 'number' ? load : (load[i] as number))

/** The slot taken out: the one with the most levels. */
function slotTakenOut({ slots }: Effects): number {
  let best = 0
  for (const [s, { levels }] of slots.entries()) if (levels > (slots[best]?.levels ?? 0)) best = s
  return best
}

/**
 * H = [A B; B' D] with A diagonal: A is eliminated, S = D - B'A^-1 B gets a dense Cholesky factor, and of B only the entries that rows
 * fill are kept. For crossed and for nested groupings.
 *
 * @source Bates D. et al. (2015) J. Stat. Softw. 67(1), section 3 (the block order; from memory)
 */
export function schurCurvature(effects: Effects): Curvature {
  const { slots } = effects
  const o = slotTakenOut(effects)
  const out = slots[o] as Slot
  const n = out.of.length
  const placeOf: Int32Array[] = []
  let q = 0
  const startOf: number[] = []
  for (const [s, { of, levels }] of slots.entries()) {
    startOf.push(q)
    const shift = q
    placeOf.push(s === o ? of : of.map((level) => level + shift))
    if (s !== o) q += levels
  }
  const others = slots.map((_, s) => s).filter((s) => s !== o)
  const { first, other, entryOf } = meetingsOf(out, slots, placeOf, q)
  /** For each row the place of the levels of two slots in the dense part's lower triangle. */
  const densePlaces = new Map<number, Int32Array>()
  for (const s of others)
    for (const r of others)
      if (r <= s)
        densePlaces.set(
          s * slots.length + r,
          (placeOf[s] as Int32Array).map((place, i) => place * q + ((placeOf[r] as Int32Array)[i] as number)),
        )
  const denseOf = (s: number, r: number): Int32Array => densePlaces.get(s * slots.length + r) as Int32Array
  const a = new Float64Array(out.levels)
  const b = new Float64Array(other.length)
  /** A^-1 B, and that times S^-1, at the entries of B. */
  const t = new Float64Array(other.length)
  const u = new Float64Array(other.length)
  const outInverse = new Float64Array(out.levels)
  const factor = new Float64Array(q * q)
  const inverse = new Float64Array(q * q)
  const unit = new Float64Array(q)
  const part = new Float64Array(q)

  /** Products of weights and two loads, into the places of two slots; plain sums of weights where loads are the same in all rows. */
  function addTo(into: Float64Array, places: Int32Array, one: Loads[number], two: Loads[number], weight: Float64Array): void {
    if (typeof one === 'number' && typeof two === 'number') {
      const scale = one * two
      for (let i = 0; i < n; i++) {
        const at = places[i] as number
        into[at] = (into[at] as number) + scale * (weight[i] as number)
      }
      return
    }
    for (let i = 0; i < n; i++) {
      const at = places[i] as number
      into[at] = (into[at] as number) + (weight[i] as number) * entry(one, i) * entry(two, i)
    }
  }

  function assemble(loads: Loads, weight: Float64Array): boolean {
    a.fill(1)
    b.fill(0)
    factor.fill(0)
    const loadOut = loads[o] as Loads[number]
    addTo(a, out.of, loadOut, loadOut, weight)
    for (const s of others) {
      const load = loads[s] as Loads[number]
      addTo(b, entryOf[s] as Int32Array, load, loadOut, weight)
      for (const r of others) if (r <= s) addTo(factor, denseOf(s, r), load, loads[r] as Loads[number], weight)
    }
    for (let d = 0; d < q; d++) factor[d * (q + 1)] = (factor[d * (q + 1)] as number) + 1
    for (let j = 0; j < out.levels; j++) {
      const pivot = a[j] as number
      if (!(pivot > 0)) return false
      const end = first[j + 1] as number
      for (let x = first[j] as number; x < end; x++) {
        const ratio = (b[x] as number) / pivot
        t[x] = ratio
        const row = (other[x] as number) * q
        // Places of one level ascend, so that y <= x fills the lower triangle.
        for (let y = first[j] as number; y <= x; y++) {
          const at = row + (other[y] as number)
          factor[at] = (factor[at] as number) - ratio * (b[y] as number)
        }
      }
    }
    return cholesky(factor, q)
  }

  /** Place in v of the dense part's entry: slots keep their own places there. */
  function gather(from: Float64Array): void {
    for (const s of others) {
      const { start, levels } = slots[s] as Slot
      for (let j = 0; j < levels; j++) part[(startOf[s] as number) + j] = from[start + j] as number
    }
  }
  function scatter(to: Float64Array): void {
    for (const s of others) {
      const { start, levels } = slots[s] as Slot
      for (let j = 0; j < levels; j++) to[start + j] = part[(startOf[s] as number) + j] as number
    }
  }

  function solve(x: Float64Array): void {
    gather(x)
    for (let j = 0; j < out.levels; j++) {
      const own = x[out.start + j] as number
      for (let e = first[j] as number; e < (first[j + 1] as number); e++) {
        const d = other[e] as number
        part[d] = (part[d] as number) - (t[e] as number) * own
      }
    }
    solveCholesky(factor, q, part)
    for (let j = 0; j < out.levels; j++) {
      let own = (x[out.start + j] as number) / (a[j] as number)
      for (let e = first[j] as number; e < (first[j + 1] as number); e++)
        own -= (t[e] as number) * (part[other[e] as number] as number)
      x[out.start + j] = own
    }
    scatter(x)
  }

  function invert(): void {
    for (let d = 0; d < q; d++) {
      unit.fill(0)
      unit[d] = 1
      solveCholesky(factor, q, unit)
      inverse.set(unit, d * q)
    }
    for (let j = 0; j < out.levels; j++) {
      let sum = 1 / (a[j] as number)
      const from = first[j] as number
      const end = first[j + 1] as number
      for (let x = from; x < end; x++) {
        const row = (other[x] as number) * q
        let along = 0
        for (let y = from; y < end; y++) along += (t[y] as number) * (inverse[row + (other[y] as number)] as number)
        u[x] = along
        sum += (t[x] as number) * along
      }
      outInverse[j] = sum
    }
  }

  /** into[i] += sign load_i values[places_i]. */
  function gatherInto(into: Float64Array, sign: number, load: Loads[number], values: Float64Array, places: Int32Array): void {
    if (typeof load === 'number') {
      const scale = sign * load
      for (let i = 0; i < n; i++) into[i] = (into[i] as number) + scale * (values[places[i] as number] as number)
      return
    }
    for (let i = 0; i < n; i++)
      into[i] = (into[i] as number) + sign * (load[i] as number) * (values[places[i] as number] as number)
  }

  function fillAlong(loads: Loads, into: readonly Float64Array[]): void {
    invert()
    for (const own of into) own.fill(0)
    const loadOut = loads[o] as Loads[number]
    const intoOut = into[o] as Float64Array
    gatherInto(intoOut, 1, loadOut, outInverse, out.of)
    for (const s of others) {
      const load = loads[s] as Loads[number]
      gatherInto(intoOut, -1, load, u, entryOf[s] as Int32Array)
      gatherInto(into[s] as Float64Array, -1, loadOut, u, entryOf[s] as Int32Array)
      for (const r of others) {
        const places = r <= s ? denseOf(s, r) : denseOf(r, s)
        gatherInto(into[s] as Float64Array, 1, loads[r] as Loads[number], inverse, places)
      }
    }
  }

  return {
    assemble,
    solve,
    logDeterminant: () => {
      let sum = 0
      for (let j = 0; j < out.levels; j++) sum += log(a[j] as number)
      for (let d = 0; d < q; d++) sum += 2 * log(factor[d * (q + 1)] as number)
      return sum
    },
    fillAlong,
  }
}
