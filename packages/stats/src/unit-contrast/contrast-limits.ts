import { requireFinite, requireOpenUnit } from '@thrum/model/ground'
import { studentMultiplier } from '../distribution/student.ts'
import { exp } from '../elementary.ts'
import type { Interval } from '../interval.ts'
import type { Contrast } from './unit-fit.ts'

/**
 * Limits at any level, on the scale of the estimate: estimate -/+ t(df) se, or the contrast's own where it has some.
 *
 * @param contrast estimate, its standard error and degrees of freedom
 * @param level two-sided coverage, above 0 and below 1 [1]
 * @throws InputError ground/input/out-of-range
 * @source Student (1908) Biometrika 6, 1-25.
 * @check 0.789046, se 0.110378, df 5 at 0.95, as ratios: 1.657499 to 2.923503 (R 4.2.2 confint)
 */
export function contrastLimits(contrast: Pick<Contrast, 'estimate' | 'se' | 'df' | 'limits'>, level = 0.95): Interval {
  requireOpenUnit('level', level)
  requireFinite('estimate', contrast.estimate)
  if (contrast.limits !== undefined) return contrast.limits(level)
  const reach = studentMultiplier(level, contrast.df) * contrast.se
  return { lower: contrast.estimate - reach, upper: contrast.estimate + reach }
}

/** A contrast of logs as a ratio, with its limits. */
export function ratioOfContrast(
  contrast: Pick<Contrast, 'estimate' | 'se' | 'df' | 'limits'>,
  level = 0.95,
): Interval & { readonly ratio: number } {
  const { lower, upper } = contrastLimits(contrast, level)
  return { ratio: exp(contrast.estimate), lower: exp(lower), upper: exp(upper) }
}
