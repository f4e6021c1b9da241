import { InputError, type Rng } from '@thrum/model/ground'
import { type ModelAtHand, modelAtHand } from '../count-model/at-hand.ts'
import type { Loads, Slot } from '../count-model/effects/effects.ts'
import { meanOf } from '../count-model/family/family.ts'
import type { CountModel, FittedCountModel } from '../count-model/model.ts'
import { requireModel } from '../count-model/require-model.ts'
import { rowModelOf } from '../count-model/row-model.ts'
import { inverseLogit } from '../distribution/beta.ts'
import { drawBinomial } from '../random/binomial.ts'
import { drawGamma } from '../random/gamma.ts'
import { drawNegativeBinomial } from '../random/negative-binomial.ts'
import { drawNormal } from '../random/normal.ts'
import { drawPoisson } from '../random/poisson.ts'

/** Random effects drawn anew for each set of counts, or held at their modes. */
export type EffectsOfDraw = 'anew' | 'at-modes'

/** Draws whole sets of counts from a fitted model. */
export interface CountSimulator {
  /** Length n; a row whose mean is beyond all counting throws. */
  draw(rng: Rng, effects: EffectsOfDraw): Float64Array
}

/** @param fit of this very model */
export function countSimulator(model: CountModel, fit: FittedCountModel): CountSimulator {
  const { response, offset } = requireModel(model)
  const atHand = modelAtHand(model, response, offset)
  const { problem, places } = atHand
  const n = offset.length
  const rowModel = rowModelOf(problem)
  rowModel.takeIn(fit.history.end)
  const { slots, total } = problem.effects
  const chance = chancesOfZero(atHand, fit.history.end, n)
  const root = places.root === null ? 0 : (fit.history.end[places.root] as number)
  const draw = rowDraw(model.family, root * root)
  const effects = new Float64Array(total)
  return {
    draw: (rng, kind) => {
      let eta = fit.predictor
      if (kind === 'anew') {
        for (let j = 0; j < total; j++) effects[j] = drawNormal(rng)
        eta = rowModel.fixed.slice()
        slots.forEach(({ of, start }: Slot, s) => {
          const load = rowModel.loads[s] as Loads[number]
          for (let i = 0; i < n; i++)
            eta[i] =
              (eta[i] as number) +
              (typeof load === 'number' ? load : (load[i] as number)) * (effects[start + (of[i] as number)] as number)
        })
      }
      return Float64Array.from({ length: n }, (_, i) => {
        if (chance !== null && rng.uniform() < (chance[i] as number)) return 0
        return draw(rng, eta[i] as number, response.trials?.[i] ?? 1)
      })
    },
  }
}

/** The chance of a zero of another origin in each row, by parameters on the scale of the search; null where there is none. */
export function chancesOfZero({ problem: { zeros }, places }: ModelAtHand, at: Float64Array, n: number): Float64Array | null {
  if (zeros.length === 0) return null
  return Float64Array.from({ length: n }, (_, i) => {
    let zeta = 0
    zeros.forEach((column, j) => {
      zeta += (at[places.zeros + j] as number) * (column[i] as number)
    })
    return inverseLogit(zeta)
  })
}

/** Beyond this mean a count is no count of insects, and a draw would take for ever. */
const mostMean = 1e9

function rowDraw(family: CountModel['family'], dispersion: number): (rng: Rng, eta: number, trials: number) => number {
  const mean = (eta: number): number => {
    const mu = meanOf(eta)
    if (mu > mostMean) throw new InputError('ground/input/out-of-range', `a row's mean is ${mu}; no counts can be drawn from it`)
    return mu
  }
  if (family === 'binomial') return (rng, eta, trials) => drawBinomial(rng, trials, inverseLogit(eta))
  if (family === 'beta-binomial')
    return (rng, eta, trials) => {
      const p = inverseLogit(eta)
      if (dispersion === 0 || p === 0 || p === 1) return drawBinomial(rng, trials, p)
      const seen = drawGamma(rng, p / dispersion)
      const missed = drawGamma(rng, (1 - p) / dispersion)
      return drawBinomial(rng, trials, seen + missed > 0 ? seen / (seen + missed) : p)
    }
  if (family === 'poisson' || dispersion === 0) return (rng, eta) => drawPoisson(rng, mean(eta))
  if (family === 'nb2') return (rng, eta) => drawNegativeBinomial(rng, mean(eta), 1 / dispersion)
  // NB1: variance mu (1 + phi) is that of NB2 with theta = mu / phi.
  return (rng, eta) => {
    const mu = mean(eta)
    return mu === 0 ? 0 : drawNegativeBinomial(rng, mu, mu / dispersion)
  }
}
