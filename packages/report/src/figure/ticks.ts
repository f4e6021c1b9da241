/** Steps of a decade that are easily read. */
const steps = [1, 2, 5] as const

/** A sum of steps without the dust of floating point. */
const clean = (value: number): number => Number.parseFloat(value.toPrecision(12))

/**
 * Multiples of a round step from the last below a range to the first above it, one list a step, the densest first.
 *
 * @param finest no step is smaller than this
 */
export function linearTicks(low: number, high: number, finest = 0): readonly (readonly number[])[] {
  const span = high - low
  const top = Math.floor(Math.log10(span))
  return [top - 1, top, top + 1]
    .flatMap((power) => steps.map((step) => clean(step * 10 ** power)))
    .filter((step) => step >= finest)
    .map((step) => {
      const first = Math.floor(clean(low / step))
      const last = Math.ceil(clean(high / step))
      return Array.from({ length: last - first + 1 }, (_, k) => clean((first + k) * step))
    })
}

/** Values inside a range, and the next beyond each end. */
function around(low: number, high: number, values: readonly number[]): readonly number[] {
  const below = values.filter((value) => value <= low)
  const above = values.filter((value) => value >= high)
  return values.filter((value) => value >= (below.at(-1) ?? low) && value <= (above[0] ?? high))
}

const powers = (base: number, low: number, high: number): readonly number[] => {
  const first = Math.floor(Math.log(low) / Math.log(base))
  const last = Math.ceil(Math.log(high) / Math.log(base))
  return Array.from({ length: last - first + 1 }, (_, k) => clean(base ** (first + k)))
}

/** Pairs that mirror each other about 1, as ratios do. */
const near = [0.5, 2 / 3, 0.8, 0.9, 1, 1 / 0.9, 1.25, 1.5, 2]

/**
 * Ticks of a logarithmic axis from the last below a range to the first above it, the densest list first. About 1, as for
 * ratios: pairs of reciprocals, then doublings. Else, and over wider ranges: parts of decades.
 *
 * @param low above 0
 */
export function logTicks(low: number, high: number): readonly (readonly number[])[] {
  const isAboutOne = low < 1 && high > 1
  const fold = high / low
  const decades = powers(10, low, high)
  const parted = (of: readonly number[]): readonly number[] => decades.flatMap((decade) => of.map((step) => clean(step * decade)))
  const lists = [
    ...(isAboutOne && fold <= 2.2 ? [near] : []),
    ...(isAboutOne && fold <= 6
      ? [
          [0.5, 2 / 3, 0.8, 1, 1.25, 1.5, 2],
          [0.5, 2 / 3, 1, 1.5, 2],
        ]
      : []),
    ...(isAboutOne && fold <= 40 ? [powers(2, low, high)] : []),
    ...(fold <= 5000 ? [parted([1, 2, 5]), parted([1, 3])] : []),
    decades,
    ...[100, 10_000, 1e6, 1e12].map((base) => powers(base, low, high)),
  ]
  return lists.map((list) => around(low, high, list)).filter((list) => list.length > 1)
}

/** Round numbers that lie evenly enough on a square-root axis from 0, to the first that is not below the highest value. */
export function rootTicks(high: number): readonly (readonly number[])[] {
  const top = Math.ceil(Math.log10(high))
  const list = (of: readonly number[], decades: number): readonly number[] => [
    0,
    ...around(
      10 ** (top - decades),
      high,
      Array.from({ length: decades + 1 }, (_, k) => top - decades + 1 + k).flatMap((power) =>
        of.map((step) => clean(step * 10 ** power)),
      ),
    ),
  ]
  return [list([1, 2, 5], 4), list([1, 2, 5], 3), list([1, 4], 3), list([1], 3), list([1], 2), [0, clean(high)]]
}

const day = 86_400_000
const stepsOfDays = [1, 2, 5, 7, 14]
const stepsOfMonths = [1, 2, 3, 6, 12, 24, 60, 120]
const mostTicks = 120

const inside = (low: number, high: number, values: readonly number[]): readonly number[] =>
  values.filter((value) => value >= low && value <= high)

/** First days of every so many months, as days since 1970. */
function monthStarts(low: number, high: number, step: number): readonly number[] {
  const first = new Date(low * day)
  const start = Math.floor((first.getUTCFullYear() * 12 + first.getUTCMonth()) / step) * step
  const count = Math.ceil((high - low) / (28 * step)) + 2
  return inside(
    low,
    high,
    Array.from({ length: count }, (_, k) => Date.UTC(Math.floor((start + k * step) / 12), (start + k * step) % 12) / day),
  )
}

/**
 * Ticks of an axis of dates, the densest list first: so many days apart, or the first days of months.
 *
 * @param low, high days since 1970 [d]
 */
export function dateTicks(low: number, high: number): readonly (readonly number[])[] {
  const span = high - low
  const first = Math.ceil(low)
  const days = stepsOfDays
    .filter((step) => span / step < mostTicks)
    .map((step) => Array.from({ length: Math.floor((high - first) / step) + 1 }, (_, k) => first + k * step))
  const months = stepsOfMonths.filter((step) => span / (step * 30) < mostTicks).map((step) => monthStarts(low, high, step))
  return [...days, ...months].filter((list) => list.length > 1)
}
