import type { Snapshot } from '@thrum/model'
import type { ContrastCase, ContrastOptions } from '../contrast/contrast-case.ts'
import { heldBack, type PairVerdict, pairVerdicts } from '../contrast/pair-verdict.ts'
import { analysesOf, type MadeAnalysis } from './analyses.ts'
import { type OtherFits, otherFits } from './sensitivity.ts'
import { otherWindow, type Variants, variantsOf } from './variants.ts'

/** A comparison with its verdicts, and what it was fitted to in other ways. */
export interface Judged {
  readonly variants: Variants
  readonly found: readonly PairVerdict[]
  /** Of each comparison; null where nothing may be compared. */
  readonly fits: readonly (OtherFits | null)[]
}

export function judgeContrast(snapshot: Snapshot, asked: ContrastCase, options: ContrastOptions): Judged {
  const variants = variantsOf(snapshot, asked, options)
  const found = pairVerdicts(asked).map((own) => (variants.opposed(own) ? heldBack(own) : own))
  return { variants, found, fits: otherFits(asked, found) }
}

/** The other analyses of each comparison; null where nothing may be compared. */
export function analyseOtherwise(
  snapshot: Snapshot,
  asked: ContrastCase,
  options: ContrastOptions,
  { variants, found, fits }: Judged,
): readonly (readonly MadeAnalysis[] | null)[] {
  if (found.every(({ verdict }) => verdict === 'design-blocks')) return found.map(() => null)
  const window = otherWindow(snapshot, asked, options, variants.whole)
  return found.map((own, k) => analysesOf(asked, own, fits[k] ?? null, window))
}
