import { requireSameLength } from '@thrum/model/ground'
import type { Columns } from '../least-squares/inflation.ts'
import { baseColumns } from './between-units.ts'
import { type ContrastFit, fitOneContrast, type UnitRefusal } from './unit-fit.ts'

/** Units that differ in a measured level. */
export interface UnitSlope {
  /** One number per unit; length F. */
  readonly z: readonly number[]
  /** Measured level of each unit; length F. */
  readonly value: readonly number[]
  /** Block code of each unit, whole numbers from 0; left out: one block. */
  readonly block?: readonly number[]
  /** Nuisance columns, each of length F. */
  readonly nuisance?: Columns
}

/**
 * Slope of one number per unit on a measured level, beside blocks and nuisances. Multiply estimate and se for a larger step.
 *
 * @throws InputError on lengths that differ, block codes that are not whole, numbers not finite
 * @source Scheffe H. (1959) The Analysis of Variance, ch. 2; methods 2.8.
 * @check z 1, 2, 4 at 0, 1, 2 leaves 1 degree of freedom and is refused; z 1, 2, 4, 4 at 0, 1, 2, 3 gives 1.1, se 0.264575 (R 4.2.2 lm)
 */
export function unitSlope({ z, value, block, nuisance = [] }: UnitSlope): ContrastFit | UnitRefusal {
  requireSameLength(block === undefined ? { z, value } : { z, value, block })
  return fitOneContrast(z, { base: baseColumns(z.length, block), nuisance, contrasts: [value] })
}
