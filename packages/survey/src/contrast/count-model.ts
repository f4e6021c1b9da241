import type { Snapshot } from '@thrum/model'
import {
  type Contrast,
  type CountModel,
  type CountModelFit,
  contrastLimits,
  fitCountModel,
  matrixOfColumns,
  studentTwoSidedP,
} from '@thrum/stats'
import { evenDurations } from '../audit/effort.ts'
import type { Design } from '../design/design.ts'
import { stepLength } from '../factor/measured-factor.ts'
import { columnOverUnits } from './adjustment.ts'
import { columnsOfPair, groupingsOfPair, isWithin, type ModelColumn, type VisitTotals, visitTotals } from './count-rows.ts'
import { differsBetweenLevels, type PairContrast } from './field-contrast.ts'

/** Most visits, and most groups of several groupings, of a model that is fitted while a person waits. Ours, by its time. */
const mostVisits = 5_000
const mostGroups = 200

/** How effort enters: in proportion; minutes as a covariate; open flowers by the rule of proportion. */
export type ModelVariant = 'plain' | 'minutes' | 'flowers'

/** A model as it is fitted, by the names of its parts. */
export interface ModelProblem {
  readonly family: 'nb2' | 'beta-binomial'
  readonly counts: Float64Array
  /** Of a relative count: both kinds together. */
  readonly trials: Float64Array | null
  readonly offset: Float64Array
  /** The contrast is the last. */
  readonly columns: readonly ModelColumn[]
  readonly groupings: NonNullable<CountModel['groupings']>
}

/** Why a model has no contrast. */
export type ModelFailure = 'too-many-visits' | 'lost' | Exclude<CountModelFit['kind'], 'fitted'>

export interface FittedModel {
  readonly kind: 'fitted'
  /** Wald, on the log scale, with the degrees of freedom of the field-level t: never those of single watches. */
  readonly contrast: Contrast
  readonly problem: ModelProblem
  /** Groupings whose variance came out as zero, and whether scatter beyond chance did. */
  readonly without: { readonly groupings: readonly string[]; readonly dispersion: boolean }
  /** Whether flowers are taken in proportion (offset) or not (covariate); null where they do not enter. */
  readonly flowers: 'offset' | 'covariate' | null
}

export type ModelContrast = FittedModel | { readonly kind: 'not-fitted'; readonly because: ModelFailure }

/** A pair and what a model of it is made from. */
export interface ModelInput {
  readonly snapshot: Snapshot
  readonly design: Design
  readonly pair: PairContrast
  readonly tallies: Float64Array
  readonly against: Float64Array | null
}

/** The totals that all models of a pair are fitted to. */
export const totalsOfPair = ({ snapshot, design, pair, tallies, against }: ModelInput): VisitTotals =>
  visitTotals(snapshot, design, pair, tallies, against)

const logs = (values: Float64Array): Float64Array => values.map((value) => Math.log(value))
const less = (values: Float64Array, other: Float64Array): Float64Array => values.map((value, i) => value - (other[i] as number))
const areKnown = (values: Float64Array): boolean => values.length > 0 && values.every(Number.isFinite)

/** Open flowers of each watch of a design. */
function flowersOf({ snapshot, design }: ModelInput): Float64Array {
  const { values } = snapshot.tables.count.columns.flowers
  return Float64Array.from(design.rows, (row) => values[row] ?? Number.NaN)
}

/** True where some watches last more than 1.5 times as long as others (methods 1.1). */
function durationsDiffer({ design: { minutes } }: ModelInput): boolean {
  let low = Number.POSITIVE_INFINITY
  let high = 0
  for (const own of minutes) {
    if (own < low) low = own
    if (own > high) high = own
  }
  return areKnown(minutes) && high / low > evenDurations
}

/** Log of mean open flowers over a visit; of a rate per flower flower-minutes over minutes, turned over as effort weighs them. */
function logFlowers(input: ModelInput, totals: VisitTotals): Float64Array {
  const flowers = flowersOf(input)
  if (input.design.measure !== 'flower') return logs(totals.meansOf(flowers))
  return logs(totals.meansOf(flowers.map((own) => 1 / own))).map((own) => -own)
}

/**
 * The variants of a count model that apply to a pair.
 *
 * - Minutes: where watched minutes differ more than 1.5-fold, they enter as a covariate beside.
 * - Flowers: of a rate per flower in place of the plain model; of a rate per time beside it, where flowers were counted in
 *   every watch and the levels themselves do not differ in them: what a level does to flowers is part of what it does.
 *
 * Of more visits than a model is fitted to the plain one stands for all.
 * A slope within fields needs slopes drawn for each field, which these models do not have: none applies.
 */
export function modelVariants(input: ModelInput, totals: VisitTotals = totalsOfPair(input)): readonly ModelVariant[] {
  const { design, pair, against } = input
  if (!design.effortKnown && against === null) return []
  if (design.measured !== null && isWithin(design)) return []
  if (against !== null || totals.counts.length > mostVisits) return ['plain']
  const minutes = durationsDiffer(input) ? (['minutes'] as const) : []
  if (design.measure === 'flower') return ['flowers', ...minutes]
  const flowers = flowersOf(input)
  if (design.measure === 'area' || design.measured !== null || !areKnown(logs(flowers))) return ['plain', ...minutes]
  const ofUnits = columnOverUnits(design, pair.units, flowers, pair.level, Math.log)
  const differ = ofUnits === null || differsBetweenLevels(ofUnits, pair.units, pair.level)
  return ['plain', ...minutes, ...(differ ? [] : (['flowers'] as const))]
}

function fit(problem: ModelProblem): CountModelFit {
  const { family, counts, trials, offset, columns, groupings } = problem
  return fitCountModel({
    family,
    counts,
    ...(trials === null ? {} : { trials }),
    design: matrixOfColumns(
      counts.length,
      columns.map(({ values }) => values),
    ),
    offset,
    groupings,
  })
}

/** One coefficient with the t of the field-level fit; null where it has none. */
function coefficient(
  fitted: CountModelFit & { readonly kind: 'fitted' },
  column: number,
  df: number,
  length: number,
): Contrast | null {
  if (fitted.aliased.some((own) => own.column === column)) return null
  const estimate = (fitted.coefficients[column] as number) * length
  const se = (fitted.standardErrors[column] as number) * Math.abs(length)
  if (!(Number.isFinite(estimate) && se > 0 && Number.isFinite(se))) return null
  const t = estimate / se
  return { estimate, se, df, t, p: studentTwoSidedP(t, df) }
}

function fitContrast(input: ModelInput, problem: ModelProblem, flowers: FittedModel['flowers']): ModelContrast {
  const { design, pair } = input
  const fitted = fit(problem)
  if (fitted.kind !== 'fitted') return { kind: 'not-fitted', because: fitted.kind }
  const length = design.measured === null ? 1 : stepLength(design.measured, design.measured.step)
  const contrast = coefficient(fitted, problem.columns.length - 1, pair.fieldT.df, length)
  if (contrast === null) return { kind: 'not-fitted', because: 'lost' }
  return {
    kind: 'fitted',
    contrast,
    problem,
    without: {
      groupings: fitted.warnings.flatMap((warning) => (warning.kind === 'zero-variance' ? [warning.of] : [])),
      dispersion: fitted.warnings.some(({ kind }) => kind === 'no-overdispersion'),
    },
    flowers,
  }
}

/** True where visitors do not rise with flowers in proportion: the slope on log flowers, whose 95 % interval excludes 1. */
function isOutOfProportion(problem: ModelProblem, df: number): boolean {
  const fitted = fit(problem)
  if (fitted.kind !== 'fitted') return false
  const place = problem.columns.findIndex(({ name }) => name === flowersName)
  const slope = coefficient(fitted, place, df, 1)
  if (slope === null) return false
  const { lower, upper } = contrastLimits(slope)
  return lower > 1 || upper < 1
}

const flowersName = 'ln flowers'
const minutesName = 'ln minutes'

/**
 * A pair by a model of counts (methods 2.6): totals by visit and level, negative binomial with log effort as offset, of a
 * relative count beta-binomial shares; fields and, where a field holds both sides, fields by side drawn at random; level, blocks
 * and the nuisances of the headline as columns. It stands beside the field-level t and never decides.
 *
 * @source Brooks M.E. et al. (2017) R J. 9, 378-400 for the model; t with the degrees of freedom of fields is ours (methods 2.6).
 */
export function modelContrast(
  input: ModelInput,
  variant: ModelVariant,
  totals: VisitTotals = totalsOfPair(input),
): ModelContrast {
  const { snapshot, design, pair, against } = input
  const groupings = groupingsOfPair(design, totals)
  const groups = groupings.reduce((sum, { levels }) => sum + levels, 0)
  const rows = totals.counts.length
  if (rows > mostVisits || (groupings.length > 1 && groups > mostGroups))
    return { kind: 'not-fitted', because: 'too-many-visits' }
  const problemOf = (offset: Float64Array, more: readonly ModelColumn[]): ModelProblem => ({
    family: against === null ? 'nb2' : 'beta-binomial',
    counts: totals.counts,
    trials: against === null ? null : totals.counts.map((own, row) => own + (totals.others[row] as number)),
    offset: against === null ? offset : new Float64Array(rows),
    columns: columnsOfPair(snapshot, design, pair, totals, more),
    groupings,
  })
  const effort = logs(totals.effort)
  if (variant === 'minutes') {
    // Of several watches of one visit the mean minutes of one; the offset keeps how many watches there were.
    const minutes = less(logs(totals.minutes), logs(totals.watches))
    return fitContrast(input, problemOf(less(effort, minutes), [{ name: minutesName, values: minutes }]), null)
  }
  if (variant === 'plain') return fitContrast(input, problemOf(effort, []), null)
  const flowers = logFlowers(input, totals)
  const perTime = design.measure === 'flower' ? less(effort, flowers) : effort
  const covariate = problemOf(perTime, [{ name: flowersName, values: flowers }])
  if (isOutOfProportion(covariate, pair.fieldT.df)) return fitContrast(input, covariate, 'covariate')
  const perFlower = perTime.map((own, row) => own + (flowers[row] as number))
  return fitContrast(input, problemOf(perFlower, []), 'offset')
}
