import { InputError, type LongWork, type Rng } from '@thrum/model/ground'
import type { CountModel, FittedCountModel } from '../count-model/model.ts'
import type { Interval } from '../interval.ts'
import { type RefitFailure, refitter } from './refit.ts'
import { countSimulator } from './simulate-counts.ts'

/** Refits to counts drawn from a fit. `stopped` where the work was called off: what was done by then. */
export interface Bootstrap {
  readonly kind: 'finished' | 'stopped'
  readonly asked: number
  readonly done: number
  /** For each sum of coefficients that was asked: its value in every refit that came to an end. */
  readonly sums: readonly Float64Array[]
  readonly failed: { readonly [reason in RefitFailure]: number }
}

/** Replicates between two breaths. */
const chunk = 25

/**
 * Parametric bootstrap: counts are drawn from the fit, random effects anew, and fitted as the counts were.
 *
 * Replicate r has a stream of its own, so that neither chunks nor threads change a number.
 *
 * @param fit of this very model
 * @param sums weights, one for each column of the design as it came
 * @source Efron B., Tibshirani R. (1993) An Introduction to the Bootstrap, chapter 6 (from memory)
 */
export async function bootstrapCountModel(
  model: CountModel,
  fit: FittedCountModel,
  sums: readonly ArrayLike<number>[],
  asked: number,
  rng: Rng,
  work: LongWork,
): Promise<Bootstrap> {
  for (const weights of sums)
    if (weights.length !== model.design.columns)
      throw new InputError(
        'ground/input/lengths-differ',
        `${weights.length} weights; expected ${model.design.columns}, one per column`,
      )
  const simulator = countSimulator(model, fit)
  const refit = refitter(model, fit)
  const values: number[][] = sums.map(() => [])
  const failed = { 'all-zero': 0, 'all-trials': 0, separated: 0, 'not-converged': 0 }
  const told = (kind: Bootstrap['kind'], done: number): Bootstrap => ({
    kind,
    asked,
    done,
    sums: values.map((own) => Float64Array.from(own)),
    failed,
  })
  for (let r = 0; r < asked; r++) {
    if (work.signal.aborted) return told('stopped', r)
    const again = refit(simulator.draw(rng.fork(`replicate/${r}`), 'anew'))
    if (again.kind === 'fitted')
      sums.forEach((weights, s) => {
        let sum = 0
        for (let j = 0; j < again.coefficients.length; j++) sum += (weights[j] as number) * (again.coefficients[j] as number)
        values[s]?.push(sum)
      })
    else failed[again.kind]++
    if ((r + 1) % chunk !== 0) continue
    work.onProgress?.({ done: r + 1, total: asked, unit: 'replicate' })
    await work.breathe()
  }
  return told('finished', asked)
}

/** Fewer values than this have no tails to speak of. */
const fewestValues = 40

/**
 * Percentile interval of bootstrap values: the outer (1 - level) / 2 of them cut off on each side.
 *
 * @returns null of fewer than 40 values
 */
export function percentileInterval(values: Float64Array, level = 0.95): Interval | null {
  if (values.length < fewestValues) return null
  const sorted = values.toSorted()
  const at = (part: number): number => {
    const place = part * (sorted.length + 1) - 1
    const below = Math.min(Math.max(Math.floor(place), 0), sorted.length - 1)
    const above = Math.min(below + 1, sorted.length - 1)
    const rest = Math.min(Math.max(place - below, 0), 1)
    return (sorted[below] as number) * (1 - rest) + (sorted[above] as number) * rest
  }
  return { lower: at((1 - level) / 2), upper: at((1 + level) / 2) }
}

/** The basic interval: the percentile interval turned over at the estimate. */
export function basicInterval(values: Float64Array, estimate: number, level = 0.95): Interval | null {
  const own = percentileInterval(values, level)
  return own === null ? null : { lower: 2 * estimate - own.upper, upper: 2 * estimate - own.lower }
}

export interface BootstrapTest {
  readonly kind: 'finished' | 'stopped'
  readonly statistic: number
  /** (1 + replicates at or above the statistic) / (replicates + 1); a failed refit counts as above. */
  readonly p: number
  readonly done: number
  readonly failed: number
}

/** Refits end some 1e-7 short of the top: statistics nearer than this are equal, such as those of a variance that comes out as zero. */
const asGoodAsEqual = 1e-6

type Reached = { readonly logLikelihood: number }
const statisticOf = (larger: Reached, smaller: Reached): number => Math.max(0, 2 * (larger.logLikelihood - smaller.logLikelihood))

/**
 * Likelihood ratio test by parametric bootstrap: counts are drawn from the smaller model, and both are fitted to them.
 *
 * @source Davison A.C., Hinkley D.V. (1997) Bootstrap Methods and their Application, 4.4 (from memory)
 */
export async function bootstrapLikelihoodRatio(
  larger: { readonly model: CountModel; readonly fit: FittedCountModel },
  smaller: { readonly model: CountModel; readonly fit: FittedCountModel },
  asked: number,
  rng: Rng,
  work: LongWork,
): Promise<BootstrapTest> {
  const statistic = statisticOf(larger.fit, smaller.fit)
  const simulator = countSimulator(smaller.model, smaller.fit)
  const refitLarger = refitter(larger.model, larger.fit)
  const refitSmaller = refitter(smaller.model, smaller.fit)
  let above = 0
  let failed = 0
  const told = (kind: BootstrapTest['kind'], done: number): BootstrapTest => ({
    kind,
    statistic,
    p: (1 + above) / (done + 1),
    done,
    failed,
  })
  for (let r = 0; r < asked; r++) {
    if (work.signal.aborted) return told('stopped', r)
    const counts = simulator.draw(rng.fork(`replicate/${r}`), 'anew')
    const one = refitLarger(counts)
    const other = refitSmaller(counts)
    const isKnown = one.kind === 'fitted' && other.kind === 'fitted'
    if (!isKnown) failed++
    if (!isKnown || statisticOf(one, other) >= statistic - asGoodAsEqual) above++
    if ((r + 1) % chunk !== 0) continue
    work.onProgress?.({ done: r + 1, total: asked, unit: 'replicate' })
    await work.breathe()
  }
  return told('finished', asked)
}
