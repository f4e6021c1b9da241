import type { Grouping } from '../count-model/effects/grouping.ts'

/**
 * One grouping's part of Z: its levels have one random effect (intercept) or two (intercept, slope), side by side.
 *
 * A block of d by d numbers (row major), the same for all levels, turns standardised effects into effects in units of the residual.
 */
export interface Term {
  readonly name: string
  /** Where the grouping stood in the model. */
  readonly place: number
  readonly of: Int32Array
  readonly levels: number
  /** d. */
  readonly width: 1 | 2
  /** Length n, mean square 1, and centred where slope and intercept may go together; null without a slope. */
  readonly slope: Float64Array | null
  readonly isCorrelated: boolean
  /** The covariate as it came is centre + unit * slope. */
  readonly centre: number
  readonly unit: number
}

function scaledSlope(slope: ArrayLike<number>, isCorrelated: boolean): Pick<Term, 'slope' | 'centre' | 'unit'> {
  const own = Float64Array.from(slope)
  const n = own.length
  const centre = isCorrelated ? own.reduce((sum, value) => sum + value / n, 0) : 0
  const greatest = own.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const square = own.reduce((sum, value) => sum + (value - centre) ** 2, 0)
  const unit = Math.sqrt(square / n)
  // A slope on a covariate that does not vary: its column is zeros, and is found not to be identifiable.
  if (!(unit > 1e-12 * greatest)) return { slope: new Float64Array(n), centre, unit: 1 }
  return { slope: own.map((value) => (value - centre) / unit), centre, unit }
}

/** The groupings of a model, the one with most effects first. */
export function termsOf(groupings: readonly Grouping[]): readonly Term[] {
  const terms = groupings.map(({ name, of, levels, slope }, place): Term => {
    const isCorrelated = slope !== undefined && slope.isCorrelated !== false
    const none = { slope: null, centre: 0, unit: 1 }
    return {
      ...{ name, place, of, levels, isCorrelated, width: slope === undefined ? 1 : 2 },
      ...(slope === undefined ? none : scaledSlope(slope.values, isCorrelated)),
    }
  })
  return terms.toSorted((one, other) => other.levels * other.width - one.levels * one.width)
}

/** Effects of a term: levels times d. */
export const effectsOf = ({ levels, width }: Term): number => levels * width

/** What a row gives to effect a of its level. */
export const entryOf = ({ slope }: Term, a: number, row: number): number => (a === 0 ? 1 : (slope?.[row] ?? 0))

/** Z_k'x, from `from` on in `into`. */
export function fillProduct(term: Term, x: Float64Array, into: Float64Array, from: number): void {
  const { of, width } = term
  into.fill(0, from, from + effectsOf(term))
  for (let a = 0; a < width; a++)
    for (let i = 0; i < x.length; i++) {
      const at = from + (of[i] as number) * width + a
      into[at] = (into[at] as number) + entryOf(term, a, i) * (x[i] as number)
    }
}

/** Takes Z_k v off x, in place; v from `from` on in `effects`. */
export function takeOffEffects(term: Term, effects: Float64Array, from: number, x: Float64Array): void {
  const { of, width } = term
  for (let a = 0; a < width; a++)
    for (let i = 0; i < x.length; i++)
      x[i] = (x[i] as number) - entryOf(term, a, i) * (effects[from + (of[i] as number) * width + a] as number)
}

/** Each level's effects times the block: L v, or, with `across`, L'v. Both from `from` on; `into` may be `vector`. */
export function multiplyLevels(
  { levels, width }: Pick<Term, 'levels' | 'width'>,
  block: Float64Array,
  way: 'along' | 'across',
  vector: Float64Array,
  into: Float64Array,
  from: number,
): void {
  if (width === 1) {
    const scale = block[0] as number
    for (let j = from; j < from + levels; j++) into[j] = scale * (vector[j] as number)
    return
  }
  const [a = 0, b = 0, c = 0, d = 0] = block
  const [upper, lower] = way === 'along' ? [b, c] : [c, b]
  for (let j = 0; j < levels; j++) {
    const at = from + 2 * j
    const first = vector[at] as number
    const second = vector[at + 1] as number
    into[at] = a * first + upper * second
    into[at + 1] = lower * first + d * second
  }
}
