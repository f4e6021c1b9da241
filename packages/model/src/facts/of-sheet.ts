import type { Fact } from './fact.ts'
import { factorDescribed, rowsBrought, sheetRead } from './kinds.ts'

/** True for what a sheet brings before it is accepted: the sheet itself, its batches, what its mapping says of factors. */
export function isOfSheet({ kind, subject }: Pick<Fact, 'kind' | 'subject'>): boolean {
  return kind === sheetRead.kind || kind === rowsBrought.kind || (kind === factorDescribed.kind && subject !== null)
}
