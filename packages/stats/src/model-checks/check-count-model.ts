import { type LongWork, type Rng, requireCount, requireSameLength, unwatched } from '@thrum/model/ground'
import { type ModelAtHand, modelAtHand } from '../count-model/at-hand.ts'
import type { CountModel, FittedCountModel } from '../count-model/model.ts'
import { requireModel } from '../count-model/require-model.ts'
import { refitter } from '../count-model-inference/refit.ts'
import { countSimulator } from '../count-model-inference/simulate-counts.ts'
import { holm } from '../multiplicity/holm.ts'
import { binsOfLevels, binsOfValues } from './bins.ts'
import { type Check, type CheckMade, checkBy, type LookSeen, type Points } from './check.ts'
import type { CheckSubject, Found, Look, NotLooked } from './look.ts'
import { autocorrelationLook } from './looks/autocorrelation.ts'
import { dispersionLook } from './looks/dispersion.ts'
import { outliersSeen } from './looks/outliers.ts'
import { overBinsLook } from './looks/over-bins.ts'
import { uniformityLook } from './looks/uniformity.ts'
import { zerosLook } from './looks/zeros.ts'
import { type SimulatedResiduals, simulatedResiduals } from './simulated-residuals.ts'
import { type Standing, standingOf } from './standing.ts'

/** Something recorded of each row, in the model or not, along which residuals are looked at. */
export type Covariate =
  /** Length n; not finite where it is not known. */
  | { readonly kind: 'numbers'; readonly name: string; readonly values: ArrayLike<number> }
  /** Length n, the place of each row's level; -1 where it is not known. */
  | { readonly kind: 'levels'; readonly name: string; readonly of: ArrayLike<number>; readonly levels: readonly string[] }

export interface ChecksAsked {
  readonly rng: Rng
  readonly covariates?: readonly Covariate[]
  /** Of each row [days]; not finite where it is not known. */
  readonly dates?: ArrayLike<number>
  /** Place of each row's field; -1 where it is not known. */
  readonly fields?: ArrayLike<number>
  /** Sets of counts that outliers are held against. */
  readonly draws?: number
  /** Sets of counts that are drawn and fitted anew, for the law of the other checks. */
  readonly refits?: number
}

export interface ModelChecks {
  readonly kind: 'finished' | 'stopped'
  /** One for each subject, in the order in which they are told. */
  readonly checks: readonly Check[]
  /** How many were made: with so many, one below 0.05 now and then is no surprise. */
  readonly looked: number
  /** Drawn sets: asked for, meant to be fitted (fewer where rows are many), fitted, and those that could not be. */
  readonly refits: { readonly asked: number; readonly meant: number; readonly fitted: number; readonly failed: number }
  readonly residuals: SimulatedResiduals
}

/** Fewer rows say nothing of a distribution. Common practice, no source. */
const fewestRows = 10
/** Rows times refits; beyond it refits are fewer, but never fewer than can make a two-sided p below 0.01. */
const mostRefitRows = 5e5
const fewestRefits = 249
/** Refits between two breaths. */
const chunk = 10

/**
 * Checks of a fitted count model: residuals even between 0 and 1, scatter, zeros, outliers, each covariate, time, and visits that follow one
 * another.
 *
 * The law of each statistic comes from counts drawn from the fit, random effects anew, that are fitted as the counts were: so what was
 * estimated, and rows that share a field, are allowed for. Outliers are held against plain draws. Set r has streams of its own: neither chunks
 * nor threads change a number.
 *
 * @param fit of this very model
 * @throws InputError on lengths that differ from the rows
 * @source Dunn P.K., Smyth G.K. (1996) J. Comput. Graph. Stat. 5, 236-244 (residuals); Davison A.C., Hinkley D.V. (1997) Bootstrap Methods
 *   and their Application, chapter 4 (p values by simulation; from memory)
 */
export async function checkCountModel(
  model: CountModel,
  fit: FittedCountModel,
  asked: ChecksAsked,
  work: LongWork = unwatched,
): Promise<ModelChecks> {
  const { rng, draws = 500, refits = 499 } = asked
  const { response, offset } = requireModel(model)
  const rows = offset.length
  requireOf(asked, rows)
  const atHand = modelAtHand(model, response, offset)
  const residuals = await simulatedResiduals(model, fit, { draws, rng: rng.fork('residuals') }, work)
  const place = { predictor: fit.predictor, end: fit.history.end }
  const observed = standingOf(model.family, response, place, atHand, rng.fork('ties'))
  const readied = readyLooks(asked, observed, rows)
  const looks = readied.flatMap(({ look }) => (look === null ? [] : [look]))

  const meant = Math.min(refits, Math.max(fewestRefits, Math.floor(mostRefitRows / Math.max(rows, 1))))
  const sets = looks.length === 0 ? noSets : await drawnSets({ model, fit, atHand, looks, meant, rng }, work)
  const made = readied.map(({ subject, look, because, points }): Check => {
    if (look === null) return { kind: 'not-checked', check: subject, because }
    const drawn = sets.found.get(look) ?? []
    return checkBy({ look, observed: look.at(observed), drawn, points, rows: [] })
  })
  const checks = withHolm([...made.slice(0, 3), outliersCheck(model, residuals, rows), ...made.slice(3)])
  return {
    kind: residuals.kind === 'stopped' || sets.isStopped ? 'stopped' : 'finished',
    checks,
    looked: checks.filter(({ kind }) => kind === 'checked').length,
    refits: { asked: refits, meant, fitted: sets.fitted, failed: sets.failed },
    residuals,
  }
}

function requireOf({ covariates = [], dates, fields, refits }: ChecksAsked, rows: number): void {
  const known = { length: rows }
  for (const covariate of covariates)
    requireSameLength({ rows: known, [covariate.name]: covariate.kind === 'numbers' ? covariate.values : covariate.of })
  if (dates !== undefined) requireSameLength({ rows: known, dates })
  if (fields !== undefined) requireSameLength({ rows: known, fields })
  if (refits !== undefined) requireCount('refits', refits)
}

/** A subject with its look, or why there is none. */
interface Readied {
  readonly subject: CheckSubject
  readonly look: Look | null
  readonly because: NotLooked
  readonly points: Points | null
}

function readyLooks({ covariates = [], dates, fields }: ChecksAsked, observed: Standing, rows: number): readonly Readied[] {
  const isFew = rows < fewestRows
  const readied = (subject: CheckSubject, look: Look | null, because: NotLooked, points: Points | null = null): Readied => ({
    subject,
    look: isFew ? null : look,
    because: isFew ? 'few-rows' : because,
    points,
  })
  const along = (subject: CheckSubject, values: ArrayLike<number>, because: NotLooked): Readied => {
    const bins = binsOfValues(values)
    return readied(subject, bins.length === 0 ? null : overBinsLook(subject, bins), because, pointsOf(values, observed))
  }
  const plain = [uniformityLook(rows), dispersionLook(observed), zerosLook(observed)]
  const hasDates = dates !== undefined && Array.from(dates).some((date) => Number.isFinite(date))
  return [
    ...plain.map((look) => readied(look.subject, look, 'few-rows')),
    ...covariates.map((covariate) => {
      const subject = { kind: 'covariate', name: covariate.name } as const
      if (covariate.kind === 'numbers') return along(subject, covariate.values, 'one-value')
      const bins = binsOfLevels(covariate.of, covariate.levels)
      return readied(subject, bins.length === 0 ? null : overBinsLook(subject, bins), 'one-value')
    }),
    ...(dates === undefined ? [] : [along({ kind: 'time' }, dates, hasDates ? 'one-value' : 'no-dates')]),
    ...(dates === undefined || fields === undefined
      ? []
      : [readied({ kind: 'autocorrelation' }, autocorrelationLook(fields, dates), hasDates ? 'few-pairs' : 'no-dates')]),
  ]
}

/** Rows whose place is known. */
function pointsOf(values: ArrayLike<number>, { quantiles }: Standing): Points {
  const known = [...quantiles.keys()].filter((i) => Number.isFinite(values[i]))
  return {
    at: Float64Array.from(known, (i) => values[i] as number),
    quantiles: Float64Array.from(known, (i) => quantiles[i] as number),
  }
}

interface DrawnSets {
  readonly found: ReadonlyMap<Look, readonly Found[]>
  readonly fitted: number
  readonly failed: number
  readonly isStopped: boolean
}
const noSets: DrawnSets = { found: new Map(), fitted: 0, failed: 0, isStopped: false }

interface SetsAsked {
  readonly model: CountModel
  readonly fit: FittedCountModel
  readonly atHand: ModelAtHand
  readonly looks: readonly Look[]
  readonly meant: number
  readonly rng: Rng
}

/** What each look finds in drawn sets that were fitted as the counts were. */
async function drawnSets({ model, fit, atHand, looks, meant, rng }: SetsAsked, work: LongWork): Promise<DrawnSets> {
  const simulator = countSimulator(model, fit)
  const refit = refitter(model, fit)
  const { trials } = atHand.problem.response
  const found = new Map(looks.map((look): [Look, Found[]] => [look, []]))
  let fitted = 0
  let failed = 0
  for (let r = 0; r < meant; r++) {
    if (work.signal.aborted) return { found, fitted, failed, isStopped: true }
    const own = rng.fork(`refit/${r}`)
    const counts = simulator.draw(own, 'anew')
    const again = refit(counts)
    if (again.kind === 'fitted') {
      fitted++
      const place = { predictor: again.predictor(), end: again.end }
      const standing = standingOf(model.family, { counts, trials }, place, atHand, own)
      for (const look of looks) found.get(look)?.push(look.at(standing))
    } else failed++
    if ((r + 1) % chunk !== 0) continue
    work.onProgress?.({ done: r + 1, total: meant, unit: 'refit' })
    await work.breathe()
  }
  return { found, fitted, failed, isStopped: false }
}

function outliersCheck(model: CountModel, residuals: SimulatedResiduals, rows: number): Check {
  const subject = { kind: 'outliers' } as const
  if (rows < fewestRows) return { kind: 'not-checked', check: subject, because: 'few-rows' }
  if (residuals.draws === 0) return { kind: 'not-checked', check: subject, because: 'few-refits' }
  const { lines, ...seen } = outliersSeen(model.counts, residuals)
  const look: LookSeen['look'] = { subject, against: 'above', scale: 'plain', lines }
  return checkBy({ ...seen, look, points: null })
}

/** Holm's adjustment over the checks that were made. */
function withHolm(checks: readonly Check[]): readonly Check[] {
  const made = checks.filter((check): check is CheckMade => check.kind === 'checked')
  const adjusted = holm(made.map(({ p }) => p))
  const by = new Map(made.map((check, k) => [check, adjusted[k] ?? check.p]))
  return checks.map((check) => (check.kind === 'checked' ? { ...check, holm: by.get(check) ?? check.p } : check))
}
