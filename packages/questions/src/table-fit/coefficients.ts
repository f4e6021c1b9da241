import type { LongWork, Rng } from '@thrum/model/ground'
import {
  bootstrapCountModel,
  type Coefficients,
  type ColumnDf,
  type Interval,
  innerOuterDf,
  percentileInterval,
  profileInterval,
  studentMultiplier,
  studentTwoSidedP,
  type TermDesign,
} from '@thrum/stats'
import { linkOf } from './asked.ts'
import { type FitCase, partsSaying } from './fit-case.ts'
import type { ModelFit } from './run-model.ts'
import type { Limits, ToldCoefficient } from './told.ts'

export const level = 0.95

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null)
export const limitsOf = ({ lower, upper }: Interval): Limits => ({ low: finite(lower), high: finite(upper) })

/** exp of a limit; null where it is beyond all numbers. */
export const exponentials = ({ lower, upper }: Interval): Limits => limitsOf({ lower: Math.exp(lower), upper: Math.exp(upper) })

const unit = (place: number, length: number): Float64Array => Float64Array.from({ length }, (_, j) => Number(j === place))

/** Limits of each coefficient by refits; null for one that was set aside, or whose refits are too few. */
async function bootstrapLimits(own: FitCase, fit: ModelFit, rng: Rng, work: LongWork): Promise<readonly (Interval | null)[]> {
  if (fit.counts === null) return []
  const { aliased } = fit.estimates
  const p = own.design.names.length
  const kept = Array.from({ length: p }, (_, j) => j).filter((j) => !aliased.some(({ column }) => column === j))
  const sums = kept.map((j) => unit(j, p))
  const drawn = await bootstrapCountModel(fit.counts.model, fit.counts.fit, sums, own.asked.refits, rng.fork('bootstrap'), work)
  return Array.from({ length: p }, (_, j) => percentileInterval(drawn.sums[kept.indexOf(j)] ?? new Float64Array(0), level))
}

export interface CoefficientsTold {
  readonly told: readonly ToldCoefficient[]
  readonly df: readonly ColumnDf[]
}

function tell(
  design: TermDesign,
  { coefficients, standardErrors, aliased }: Coefficients,
  df: readonly ColumnDf[],
  limits: (place: number, wald: Interval, multiplier: number) => Interval,
  isRatio: boolean,
): readonly ToldCoefficient[] {
  return design.parts.map((parts, j): ToldCoefficient => {
    const label = partsSaying(parts)
    const alias = aliased.find(({ column }) => column === j)
    if (alias !== undefined)
      return { kind: 'set-aside', label, equals: alias.equals.map(({ column }) => partsSaying(design.parts[column] ?? [])) }
    const estimate = coefficients[j] as number
    const se = standardErrors[j] as number
    if (!(se > 0 && Number.isFinite(se))) return { kind: 'no-scatter', label, estimate }
    const own = df[j] ?? { df: 1, units: 'rows', by: null }
    const multiplier = studentMultiplier(level, own.df)
    const found = limits(j, { lower: estimate - multiplier * se, upper: estimate + multiplier * se }, multiplier)
    return {
      ...{ kind: 'told', label, estimate, se, df: own.df, units: own.units, by: own.by },
      p: studentTwoSidedP(estimate / se, own.df),
      limits: limitsOf(found),
      ratio: isRatio ? { value: finite(Math.exp(estimate)), limits: exponentials(found) } : null,
    }
  })
}

/** Coefficients with limits as they were asked for: by t, by the profile of the likelihood, by refits. */
export async function coefficientsTold(own: FitCase, fit: ModelFit, rng: Rng, work: LongWork): Promise<CoefficientsTold> {
  const { design, asked, groupings } = own
  const df = innerOuterDf(design.matrix, groupings)
  const drawn = asked.by === 'bootstrap' ? await bootstrapLimits(own, fit, rng, work) : []
  const limits = (place: number, wald: Interval, multiplier: number): Interval => {
    if (fit.counts === null || asked.by === 'wald') return wald
    if (asked.by === 'bootstrap') return drawn[place] ?? { lower: Number.NEGATIVE_INFINITY, upper: Number.POSITIVE_INFINITY }
    const { model, fit: counts } = fit.counts
    const weights = unit(place, design.names.length)
    return profileInterval(model, counts, { kind: 'coefficients', weights }, { level, multiplier })
  }
  return { told: tell(design, fit.estimates, df, limits, linkOf(asked.family) !== 'identity'), df }
}

/** Coefficients of the chance of a zero of another origin, by t. */
export function zerosTold({ zeros, groupings }: FitCase, fit: ModelFit): readonly ToldCoefficient[] | null {
  if (zeros === null || fit.zeros === null) return null
  return tell(zeros, fit.zeros, innerOuterDf(zeros.matrix, groupings), (_, wald) => wald, true)
}
