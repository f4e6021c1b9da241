import { type FamilyName, meanOf } from '../count-model/family/family.ts'
import { inverseLogit } from '../distribution/beta.ts'
import { binomialPmf, binomialTails } from '../distribution/binomial.ts'
import { logFactorial, logGamma } from '../distribution/log-gamma.ts'
import { negativeBinomialPmf, negativeBinomialTails } from '../distribution/negative-binomial.ts'
import { poissonPmf, poissonTails } from '../distribution/poisson.ts'
import { exp, log1p } from '../elementary.ts'

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

/** The law of a count without zeros of another origin. */
interface PlainLaw {
  readonly mean: number
  readonly variance: number
  readonly chanceOfZero: number
  /** Chance of k + 1 beside that of k. */
  readonly step: (k: number) => number
  /** By tails, where a sum from zero is long or begins below all numbers. */
  readonly far: (count: number) => { readonly below: number; readonly at: number }
}

/** Sums from zero up to here are quicker than tails, and as good: all terms are positive. */
const mostSummed = 400
const leastFirst = 1e-290

/**
 * The law of a row.
 *
 * @check Poisson, predictor log 2, counted 3: below 0.676676, at 0.180447 (R 4.2.2, ppois and dpois)
 */
export function rowLaw(family: FamilyName, { count, trials, predictor, dispersion, chance }: RowSeen): RowLaw {
  const plain = plainLaw(family, trials, predictor, dispersion)
  const { mean, variance, chanceOfZero } = plain
  const { below, at } = count > mostSummed || chanceOfZero < leastFirst ? plain.far(count) : summed(plain, count)
  const rest = 1 - chance
  return {
    below: count === 0 ? 0 : chance + rest * below,
    at: (count === 0 ? chance : 0) + rest * at,
    chanceOfZero: chance + rest * chanceOfZero,
    mean: rest * mean,
    variance: rest * (variance + chance * mean * mean),
  }
}

function summed({ chanceOfZero, step }: PlainLaw, count: number): { readonly below: number; readonly at: number } {
  let below = 0
  let at = chanceOfZero
  for (let k = 0; k < count; k++) {
    below += at
    at *= step(k)
  }
  return { below: Math.min(1, below), at }
}

function plainLaw(family: FamilyName, trials: number, predictor: number, dispersion: number): PlainLaw {
  if (family === 'binomial' || family === 'beta-binomial') {
    const share = inverseLogit(predictor)
    return family === 'binomial' || dispersion === 0 ? binomialLaw(trials, share) : betaBinomialLaw(trials, share, dispersion)
  }
  const mean = Math.min(Math.max(meanOf(predictor), leastMean), mostMean)
  if (family === 'poisson' || dispersion === 0) return poissonLaw(mean)
  // NB1: variance mu (1 + phi) is that of NB2 with theta = mu / phi.
  return negativeBinomialLaw(mean, family === 'nb2' ? 1 / dispersion : mean / dispersion)
}

const poissonLaw = (mean: number): PlainLaw => ({
  mean,
  variance: mean,
  chanceOfZero: exp(-mean),
  step: (k) => mean / (k + 1),
  far: (count) => ({
    below: count === 0 ? 0 : poissonTails(count - 1, mean).lower,
    at: poissonPmf(count, mean),
  }),
})

const negativeBinomialLaw = (mean: number, theta: number): PlainLaw => ({
  mean,
  variance: mean + (mean * mean) / theta,
  chanceOfZero: exp(-theta * log1p(mean / theta)),
  step: (k) => ((k + theta) / (k + 1)) * (mean / (mean + theta)),
  far: (count) => ({
    below: count === 0 ? 0 : negativeBinomialTails(count - 1, mean, theta).lower,
    at: negativeBinomialPmf(count, mean, theta),
  }),
})

function binomialLaw(trials: number, share: number): PlainLaw {
  return {
    mean: trials * share,
    variance: trials * share * (1 - share),
    chanceOfZero: binomialPmf(0, trials, share),
    step: (k) => ((trials - k) / (k + 1)) * (share / (1 - share)),
    far: (count) => ({
      below: count === 0 ? 0 : binomialTails(count - 1, trials, share).lower,
      at: binomialPmf(count, trials, share),
    }),
  }
}

/** Shares that scatter as Beta(a, b), a = share / dispersion: its tails are sums of their own. */
function betaBinomialLaw(trials: number, share: number, dispersion: number): PlainLaw {
  const a = Math.max(share / dispersion, leastMean)
  const b = Math.max((1 - share) / dispersion, leastMean)
  const logBeta = (x: number, y: number): number => logGamma(x) + logGamma(y) - logGamma(x + y)
  const whole = logFactorial(trials) - logBeta(a, b)
  const of = (k: number): number => exp(whole - logFactorial(k) - logFactorial(trials - k) + logBeta(k + a, trials - k + b))
  return {
    mean: trials * share,
    variance: trials * share * (1 - share) * (1 + (trials - 1) / (1 + 1 / dispersion)),
    chanceOfZero: of(0),
    step: (k) => ((trials - k) / (k + 1)) * ((a + k) / (b + trials - k - 1)),
    far: (count) => {
      let below = 0
      for (let k = 0; k < count; k++) below += of(k)
      return { below: Math.min(1, below), at: of(count) }
    },
  }
}
