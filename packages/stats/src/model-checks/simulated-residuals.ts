import { InputError, type LongWork, type Rng, requireCount, unwatched } from '@thrum/model/ground'
import type { CountModel, FittedCountModel } from '../count-model/model.ts'
import { countSimulator } from '../count-model-inference/simulate-counts.ts'

/** Residuals of counts against whole sets of counts drawn from the fit. */
export interface SimulatedResiduals {
  readonly kind: 'finished' | 'stopped'
  /** Sets that were asked for, and drawn; fewer where rows times sets would fill the memory, or the work was called off. */
  readonly asked: number
  readonly draws: number
  /** Length n, between 0 and 1: against draws with random effects drawn anew in each set. Rows of one level are not independent. */
  readonly anew: Float64Array
  /** Length n: against draws with random effects at their modes. */
  readonly atModes: Float64Array
  /** Rows by draws, row major: the sets with effects anew; a count beyond 2^32 - 1 is held there. */
  readonly drawn: Uint32Array
}

/** Rows times draws held in memory: 80 MB. */
export const mostDrawn = 2e7
/** With fewer draws a residual says little of a tail. */
const fewestDraws = 20
/** Draws between two breaths. */
const chunk = 25

export interface SimulationAsked {
  readonly draws?: number
  readonly rng: Rng
}

/**
 * Randomised quantile residuals by simulation: the share of draws below a count, and a uniform part of those equal to it.
 *
 * Set k has streams of its own; the uniform parts come from another, one a row in the order of the rows.
 *
 * @param fit of this very model
 * @throws InputError on more rows than can be held with 20 draws each
 * @source Dunn P.K., Smyth G.K. (1996) J. Comput. Graph. Stat. 5, 236-244 (residuals)
 */
export async function simulatedResiduals(
  model: CountModel,
  fit: FittedCountModel,
  { draws: asked = 500, rng }: SimulationAsked,
  work: LongWork = unwatched,
): Promise<SimulatedResiduals> {
  requireCount('draws', asked, { min: fewestDraws })
  const n = model.design.rows
  const draws = Math.min(asked, Math.floor(mostDrawn / Math.max(n, 1)))
  if (draws < fewestDraws)
    throw new InputError('ground/input/out-of-range', `${n} rows; at most ${mostDrawn / fewestDraws} can be drawn often enough`)
  const simulator = countSimulator(model, fit)
  const drawn = new Uint32Array(n * draws)
  const anew = standingAmong(model.counts)
  const atModes = standingAmong(model.counts)
  const told = (kind: SimulatedResiduals['kind'], done: number): SimulatedResiduals => {
    const ties = rng.fork('ties')
    const ends = { asked, draws: done, anew: anew.residuals(done, ties), atModes: atModes.residuals(done, ties) }
    return { kind, ...ends, drawn: done === draws ? drawn : firstDraws(drawn, n, draws, done) }
  }
  for (let k = 0; k < draws; k++) {
    if (work.signal.aborted) return told('stopped', k)
    const set = simulator.draw(rng.fork(`anew/${k}`), 'anew')
    for (let i = 0; i < n; i++) drawn[i * draws + k] = Math.min(set[i] as number, 4294967295)
    anew.take(set)
    atModes.take(simulator.draw(rng.fork(`at-modes/${k}`), 'at-modes'))
    if ((k + 1) % chunk !== 0) continue
    work.onProgress?.({ done: k + 1, total: draws, unit: 'draw' })
    await work.breathe()
  }
  return told('finished', draws)
}

function firstDraws(drawn: Uint32Array, n: number, draws: number, done: number): Uint32Array {
  const out = new Uint32Array(n * done)
  for (let i = 0; i < n; i++) out.set(drawn.subarray(i * draws, i * draws + done), i * done)
  return out
}

interface StandingAmong {
  take(set: Float64Array): void
  residuals(draws: number, ties: Rng): Float64Array
}

/** Counts, for each row, the draws below what was counted, and those equal to it. */
function standingAmong(counts: ArrayLike<number>): StandingAmong {
  const below = new Uint32Array(counts.length)
  const equal = new Uint32Array(counts.length)
  return {
    take: (set) => {
      for (let i = 0; i < set.length; i++) {
        const drawn = set[i] as number
        const count = counts[i] as number
        if (drawn < count) below[i] = (below[i] as number) + 1
        else if (drawn === count) equal[i] = (equal[i] as number) + 1
      }
    },
    // What was counted is one set among the draws: so a residual is never 0 nor 1, and uniform for any number of draws.
    residuals: (draws, ties) =>
      Float64Array.from(below, (lower, i) => (lower + ties.uniform() * ((equal[i] as number) + 1)) / (draws + 1)),
  }
}
