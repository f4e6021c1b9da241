import type { Verdict } from '@thrum/model'
import { ratioOfContrast, verdictLevels } from '@thrum/stats'
import { isBlocked, type PairContrast, type RefusedPair } from '@thrum/survey'
import { type LimitsAt, readVerdict, type VerdictRead } from '../verdict/read-verdict.ts'
import type { ContrastCase, KindContrast } from './contrast-case.ts'

/** One kind at one level against the reference, with its verdict. */
export interface PairVerdict {
  readonly kind: KindContrast
  readonly pair: PairContrast | RefusedPair
  readonly verdict: Verdict
  /** What the rule reads of the interval, whatever was held back afterwards. Null where none was read. */
  readonly read: VerdictRead | null
  /** Level at which `shown` and `alike` are decided, and any other limit that is to be ruled out. */
  readonly deciding: number
  /** Contrasts asked together with this one; 1 for a kind declared primary before counting. */
  readonly contrasts: number
}

export const limitsOfPair =
  (pair: PairContrast): LimitsAt =>
  (level) =>
    ratioOfContrast(pair.contrast, level)

/** Verdict of each kind and pair: blocked by the audit, refused by the method, else by the rule. */
export function pairVerdicts(asked: ContrastCase): readonly PairVerdict[] {
  const { early, primary } = asked
  const blocked = isBlocked(asked.findings)
  const all = asked.kinds.reduce((sum, { contrast }) => sum + contrast.pairs.length, 0)
  return asked.kinds.flatMap((kind) => {
    const contrasts = kind.kind.label === primary ? kind.contrast.pairs.length : all
    const levels = verdictLevels(contrasts)
    const values = { kind, contrasts, deciding: early ? levels.early : levels.deciding }
    return kind.contrast.pairs.map((pair): PairVerdict => {
      if (blocked || pair.kind === 'refused') return { ...values, pair, verdict: 'design-blocks', read: null }
      const read = readVerdict({ limits: limitsOfPair(pair), worth: asked.worth, contrasts, early })
      return { ...values, pair, verdict: read.verdict, read }
    })
  })
}

/** A difference that is shown by one fair way of counting effort and points the other way by another is at most leaning. */
export function heldBack(found: PairVerdict): PairVerdict {
  return found.verdict === 'shown' ? { ...found, verdict: 'leaning' } : found
}
