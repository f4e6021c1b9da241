import type { Verdict } from '@thrum/model'
import { ratioOfContrast } from '@thrum/stats'
import { isBlocked, type PairContrast, type RefusedPair } from '@thrum/survey'
import { type LimitsAt, readVerdict, type VerdictRead } from '../verdict/read-verdict.ts'
import { type ContrastCase, isEarly, type KindContrast, primaryKind } from './contrast-case.ts'

/** One kind at one level against the reference, with its verdict. */
export interface PairVerdict {
  readonly kind: KindContrast
  readonly pair: PairContrast | RefusedPair
  readonly verdict: Verdict
  readonly read: VerdictRead | null
  /** Contrasts asked together with this one; 1 for a kind declared primary before counting. */
  readonly contrasts: number
}

export const limitsOfPair =
  (pair: PairContrast): LimitsAt =>
  (level) =>
    ratioOfContrast(pair.contrast, level)

/** Verdict of each kind and pair: blocked by the audit, refused by the method, else by the rule. */
export function pairVerdicts(asked: ContrastCase): readonly PairVerdict[] {
  const blocked = isBlocked(asked.findings)
  const early = isEarly(asked.snapshot)
  const primary = primaryKind(asked.snapshot)
  const all = asked.kinds.reduce((sum, { contrast }) => sum + contrast.pairs.length, 0)
  return asked.kinds.flatMap((kind) => {
    const contrasts = kind.kind.label === primary ? kind.contrast.pairs.length : all
    return kind.contrast.pairs.map((pair): PairVerdict => {
      if (blocked || pair.kind === 'refused') return { kind, pair, verdict: 'design-blocks', read: null, contrasts }
      const read = readVerdict({ limits: limitsOfPair(pair), worth: asked.worth, contrasts, early })
      return { kind, pair, verdict: read.verdict, read, contrasts }
    })
  })
}

/** A difference that is shown by one fair way of counting effort and points the other way by another is at most leaning. */
export function heldBack(found: PairVerdict): PairVerdict {
  return found.verdict === 'shown' ? { ...found, verdict: 'leaning', read: null } : found
}
