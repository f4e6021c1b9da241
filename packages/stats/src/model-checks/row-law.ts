import { type FamilyName, meanOf } from '../count-model/family/family.ts'
import { inverseLogit } from '../distribution/beta.ts'
import { binomialPmf, binomialTails } from '../distribution/binomial.ts'
import { logFactorial, logGamma } from '../distribution/log-gamma.ts'
import { negativeBinomialPmf, negativeBinomialTails } from '../distribution/negative-binomial.ts'
import { poissonPmf, poissonTails } from '../distribution/poisson.ts'
import { exp } from '../elementary.ts'

/** What a model says of one row before it was counted, random effects held where they are. */
export interface RowLaw {
  /** Chance of fewer than what was counted, and of just that. */
  readonly below: number
  readonly at: number
  readonly chanceOfZero: number
  readonly mean: number
  readonly variance: number
}

/** A row as a model sees it. */
export interface RowSeen {
  readonly count: number
  /** Out of how many, for shares. */
  readonly trials: number
  readonly predictor: number
  /** 1 / theta of NB2, phi of NB1, 1 / (a + b) of the beta-binomial; 0 without one. */
  readonly dispersion: number
  /** Of a zero of another origin. */
  readonly chance: number
}

/** Between these a mean has tails that can be worked out; no count of insects lies beyond. */
const leastMean = 1e-100
const mostMean = 1e12

interface PlainLaw {
  /** Chance of at most so many. */
  readonly upTo: (count: number) => number
  readonly of: (count: number) => number
  readonly mean: number
  readonly variance: number
}

/**
 * The law of a row.
 *
 * @check Poisson, predictor log 2, counted 3: below 0.676676, at 0.180447 (R 4.2.2, ppois and dpois)
 */
export function rowLaw(family: FamilyName, { count, trials, predictor, dispersion, chance }: RowSeen): RowLaw {
  const { upTo, of, mean, variance } = plainLaw(family, trials, predictor, dispersion)
  const rest = 1 - chance
  return {
    below: count === 0 ? 0 : chance + rest * upTo(count - 1),
    at: (count === 0 ? chance : 0) + rest * of(count),
    chanceOfZero: chance + rest * of(0),
    mean: rest * mean,
    variance: rest * (variance + chance * mean * mean),
  }
}

function plainLaw(family: FamilyName, trials: number, predictor: number, dispersion: number): PlainLaw {
  if (family === 'binomial' || family === 'beta-binomial') {
    const share = inverseLogit(predictor)
    return family === 'binomial' || dispersion === 0 ? binomialLaw(trials, share) : betaBinomialLaw(trials, share, dispersion)
  }
  const mean = Math.min(Math.max(meanOf(predictor), leastMean), mostMean)
  if (family === 'poisson' || dispersion === 0)
    return { upTo: (k) => poissonTails(k, mean).lower, of: (k) => poissonPmf(k, mean), mean, variance: mean }
  // NB1: variance mu (1 + phi) is that of NB2 with theta = mu / phi.
  const theta = family === 'nb2' ? 1 / dispersion : mean / dispersion
  return {
    upTo: (k) => negativeBinomialTails(k, mean, theta).lower,
    of: (k) => negativeBinomialPmf(k, mean, theta),
    mean,
    variance: mean + (mean * mean) / theta,
  }
}

const binomialLaw = (trials: number, share: number): PlainLaw => ({
  upTo: (k) => binomialTails(k, trials, share).lower,
  of: (k) => binomialPmf(k, trials, share),
  mean: trials * share,
  variance: trials * share * (1 - share),
})

/** Shares that scatter as Beta(a, b), a = share / dispersion: tails are sums. */
function betaBinomialLaw(trials: number, share: number, dispersion: number): PlainLaw {
  const a = Math.max(share / dispersion, leastMean)
  const b = Math.max((1 - share) / dispersion, leastMean)
  const logBeta = (x: number, y: number): number => logGamma(x) + logGamma(y) - logGamma(x + y)
  const whole = logFactorial(trials) - logBeta(a, b)
  const of = (k: number): number => exp(whole - logFactorial(k) - logFactorial(trials - k) + logBeta(k + a, trials - k + b))
  const upTo = (k: number): number => {
    let sum = 0
    for (let j = 0; j <= k; j++) sum += of(j)
    return Math.min(1, sum)
  }
  return { upTo, of, mean: trials * share, variance: trials * share * (1 - share) * (1 + (trials - 1) / (1 + 1 / dispersion)) }
}
