import { exp, log } from '../elementary.ts'
import type { Slot } from './effects/effects.ts'
import type { RowProblem } from './row-model.ts'
import { cholesky, solveCholesky } from './symmetric.ts'

/** The search goes on from here: no more is asked of the coefficients than to be near. */
const mostRounds = 8
const nearEnough = 1e-2
const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value))

/**
 * Where the search begins: coefficients of the model without random intercepts, and variances by moments. No variance begins at
 * zero, which is a stationary point by symmetry.
 */
export function startingValues({ family, response, columns, offset, effects, zeros }: RowProblem): Float64Array {
  const { counts, trials } = response
  const n = counts.length
  const p = columns.length
  const K = effects.parameters.length
  const isShare = family.link === 'logit'
  const start = new Float64Array(p + K + (family.isDispersed ? 1 : 0) + zeros.length)
  const mu = new Float64Array(n)
  let seen = 0
  let effort = 0
  for (let i = 0; i < n; i++) {
    seen += counts[i] as number
    effort += isShare ? (trials?.[i] ?? 1) : exp(offset[i] as number)
  }
  const level = isShare ? log((seen + 0.5) / (effort - seen + 0.5)) : log((seen + 0.5) / effort)
  // Only a leading constant column can carry the level; else the steps below find their way from 0.
  const first = columns[0]
  const constant = first?.[0] ?? 0
  if (first !== undefined && constant !== 0 && first.every((value) => value === constant)) start[0] = level / constant

  const matrix = new Float64Array(p * p)
  const step = new Float64Array(p)
  for (let round = 0; round < mostRounds; round++) {
    matrix.fill(0)
    step.fill(0)
    for (let i = 0; i < n; i++) {
      let eta = offset[i] as number
      for (let j = 0; j < p; j++) eta += (start[j] as number) * ((columns[j] as Float64Array)[i] as number)
      const most = trials?.[i] ?? 1
      const share = isShare ? 1 / (1 + exp(-eta)) : 0
      const expected = isShare ? most * share : exp(Math.min(eta, 30))
      mu[i] = expected
      const weight = isShare ? most * share * (1 - share) : expected
      for (let j = 0; j < p; j++) {
        const x = (columns[j] as Float64Array)[i] as number
        step[j] = (step[j] as number) + x * ((counts[i] as number) - expected)
        for (let k = 0; k <= j; k++)
          matrix[j * p + k] = (matrix[j * p + k] as number) + weight * x * ((columns[k] as Float64Array)[i] as number)
      }
    }
    for (let j = 0; j < p; j++) matrix[j * p + j] = (matrix[j * p + j] as number) * (1 + 1e-8) + 1e-8
    if (!cholesky(matrix, p)) break
    solveCholesky(matrix, p, step)
    let longest = 0
    for (let j = 0; j < p; j++) {
      const own = clamp(step[j] as number, -2, 2)
      start[j] = (start[j] as number) + own
      longest = Math.max(longest, Math.abs(own))
    }
    if (longest < nearEnough) break
  }

  for (const [k, parameter] of effects.parameters.entries()) {
    const { of, levels } = effects.slots[parameter.slot] as Slot
    if (parameter.basis !== null) {
      // A slope begins at a modest spread over the covariate, with nothing in common with its intercept.
      start[p + k] = parameter.isDeviation ? 0.3 : 0
      continue
    }
    const found = new Float64Array(levels)
    const expected = new Float64Array(levels)
    for (let i = 0; i < n; i++) {
      const at = of[i] as number
      found[at] = (found[at] as number) + (counts[i] as number)
      expected[at] = (expected[at] as number) + (mu[i] as number)
    }
    let over = 0
    let square = 0
    for (let j = 0; j < levels; j++) {
      over += ((found[j] as number) - (expected[j] as number)) ** 2 - (expected[j] as number)
      square += (expected[j] as number) ** 2
    }
    start[p + k] = Math.sqrt(clamp((0.8 * over) / square, 0.05, 1.5))
  }
  if (family.isDispersed) {
    let over = 0
    let scale = 0
    for (let i = 0; i < n; i++) {
      const m = mu[i] as number
      over += ((counts[i] as number) - m) ** 2 - m
      scale += family.name === 'nb2' ? m * m : m
    }
    start[p + K] = Math.sqrt(clamp((0.6 * over) / scale, 0.05, 5))
  }
  // One zero in ten of another origin, until the counts say how many.
  const constantZero = zeros[0]?.[0] ?? 0
  if (constantZero !== 0 && zeros[0]?.every((value) => value === constantZero))
    start[start.length - zeros.length] = log(1 / 9) / constantZero
  return start
}
