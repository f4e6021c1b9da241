import { inverseLogit } from '../distribution/beta.ts'
import { binomialPmf, binomialTails } from '../distribution/binomial.ts'
import { solveMonotone } from '../distribution/solve-monotone.ts'
import { exp, log } from '../elementary.ts'
import { plainRateRatio, type RateRatio, requireTwoCounts, type TwoCounts } from './rate-ratio.ts'

/** Chance of a count beyond the observed one on the named side, and half of its own. */
function midTail(successes: number, trials: number, chance: number, side: 'lower' | 'upper'): number {
  const beyond =
    side === 'upper'
      ? binomialTails(successes, trials, chance).upper
      : successes === 0
        ? 0
        : binomialTails(successes - 1, trials, chance).lower
  return beyond + 0.5 * binomialPmf(successes, trials, chance)
}

/** Log odds of the chance that leaves `beyond` in the mid-p tail. The upper tail grows with the chance, the lower one falls. */
function solveMidP(successes: number, trials: number, beyond: number, side: 'lower' | 'upper'): number {
  const target = log(beyond)
  const at = (logOdds: number) => {
    const chance = inverseLogit(logOdds)
    const other = inverseLogit(-logOdds)
    const mass = midTail(successes, trials, chance, side)
    const direction = side === 'upper' ? 1 : -1
    if (mass === 0) return { value: Number.NEGATIVE_INFINITY, slope: direction }
    // Per unit of log odds: d pmf = pmf (x - n p), and the strict tail moves by the kernel at its edge.
    const here = binomialPmf(successes, trials, chance)
    const edge = side === 'upper' ? here * (trials - successes) * chance : here * successes * other
    const slope = direction * edge + 0.5 * here * (successes - trials * chance)
    return { value: log(mass) - target, slope: slope / mass }
  }
  return solveMonotone({ at, start: log((successes + 0.5) / (trials - successes + 0.5)), reach: 0.5 })
}

/**
 * The same ratio with mid-p limits and mid-p value: shorter, no longer guaranteed to cover. Never mixed with the exact ones.
 *
 * @returns as `rateRatioExact`; p is twice the smaller mid-p tail, at most 1
 * @throws InputError ground/input/out-of-range
 * @source Lancaster H.O. (1961) J. Am. Stat. Assoc. 56, 223-234.
 * @check 41 in 28,010 against 15 in 19,017 gives 1.041075 to 3.449423 (R 4.2.2 uniroot on pbinom and dbinom)
 */
export function rateRatioMidP(counts: TwoCounts): RateRatio {
  const level = requireTwoCounts(counts)
  const { count1, effort1, count2, effort2 } = counts
  const total = count1 + count2
  if (total === 0) return { kind: 'nothing-counted' }
  const beyond = (1 - level) / 2
  const logSwap = log(effort2 / effort1)
  // The lower limit leaves `beyond` at and above the count, the upper one at and below it.
  const limit = (tail: 'lower' | 'upper'): number => exp(solveMidP(count1, total, beyond, tail) + logSwap)
  const null1 = effort1 / (effort1 + effort2)
  const p = Math.min(1, 2 * Math.min(midTail(count1, total, null1, 'upper'), midTail(count1, total, null1, 'lower')))
  return {
    kind: 'ratio',
    ratio: plainRateRatio(counts),
    limits: {
      lower: count1 === 0 ? 0 : limit('upper'),
      upper: count2 === 0 ? Number.POSITIVE_INFINITY : limit('lower'),
    },
    p,
  }
}
