import { InputError } from '@thrum/model/ground'
import { normalMultiplier, normalTails } from './normal.ts'
import { studentMultiplier, studentTwoSidedP } from './student.ts'

/** What an estimate by its standard error is held against: the normal law, or t with so many degrees of freedom (above 0). */
export type Law = 'normal' | { readonly df: number }

/** Half the width of a two-sided interval in standard errors. */
export function multiplierOf(law: Law, level: number): number {
  return law === 'normal' ? normalMultiplier(level) : studentMultiplier(level, law.df)
}

/** Two-sided p value of an estimate by its standard error; an infinite one gives 0. */
export function twoSidedPOf(law: Law, statistic: number): number {
  if (Number.isNaN(statistic)) throw new InputError('ground/input/out-of-range', 'statistic is NaN; expected a number')
  return law === 'normal' ? 2 * normalTails(Math.abs(statistic)).upper : studentTwoSidedP(statistic, law.df)
}
