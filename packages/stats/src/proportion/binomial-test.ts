import { requireCount, requireOpenUnit } from '@thrum/model/ground'
import { binomialLogPmf, binomialTails } from '../distribution/binomial.ts'

/** Two probabilities count as equal when they differ by less than this, relatively: rounding must not split a tie. Common practice. */
export const probabilityTie = 1e-7

/**
 * Two-sided p of a binomial count by the rule of least likelihood: adds the probabilities no larger than the observed one.
 *
 * @param chance chance of a success when nothing is going on, above 0 and below 1
 * @throws InputError ground/input/out-of-range
 * @source Sterne T.E. (1954) Biometrika 41, 275-278, as a test.
 * @check 34 of 49 at 0.5 gives 0.009399 (R 4.2.2 binom.test)
 */
export function binomialTwoSidedP(successes: number, trials: number, chance: number): number {
  requireCount('trials', trials)
  requireCount('successes', successes, { max: trials })
  requireOpenUnit('chance', chance)
  const ceiling = binomialLogPmf(successes, trials, chance) + probabilityTie
  const mean = trials * chance
  const isRare = (k: number): boolean => binomialLogPmf(k, trials, chance) <= ceiling
  const upTo = (k: number): number => (k < 0 ? 0 : binomialTails(k, trials, chance).lower)
  const from = (k: number): number => (k <= 0 ? 1 : k > trials ? 0 : binomialTails(k - 1, trials, chance).upper)
  const mode = Math.min(trials, Math.floor((trials + 1) * chance))
  if (isRare(mode)) return 1
  // Left and right of the mode probabilities fall away, so each side has one edge, found by halving.
  if (successes > mean) return Math.min(1, from(successes) + upTo(lastRareBelow(mode, isRare)))
  return Math.min(1, upTo(successes) + from(firstRareAbove(mode, trials, isRare)))
}

/** Greatest k below the mode that is rare, -1 if none. */
function lastRareBelow(mode: number, isRare: (k: number) => boolean): number {
  let rare = -1
  let common = mode
  while (common - rare > 1) {
    const middle = Math.floor((rare + common) / 2)
    if (isRare(middle)) rare = middle
    else common = middle
  }
  return rare
}

/** Least k above the mode that is rare, trials + 1 if none. */
function firstRareAbove(mode: number, trials: number, isRare: (k: number) => boolean): number {
  let common = mode
  let rare = trials + 1
  while (rare - common > 1) {
    const middle = Math.floor((rare + common) / 2)
    if (isRare(middle)) rare = middle
    else common = middle
  }
  return rare
}
