import type { Answer } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import type { ContrastCase } from '../contrast/contrast-case.ts'
import { limitsOfPair, type PairVerdict } from '../contrast/pair-verdict.ts'
import { contrastName, strengthOf } from '../contrast/phrases.ts'
import { type RelativeOffer, relativeSaying } from '../contrast/relative-offer.ts'
import { countedByLevel, sharesAt } from '../contrast/watches.ts'
import { pairSentence, pairValues } from './headline.ts'

/** What was counted, in the plainest words: it may always be said. */
function counted(asked: ContrastCase, found: PairVerdict): Saying {
  const levels = countedByLevel(asked, found.kind)
  return saying('questions/can-say/counted', {
    kind: found.kind.kind.label,
    fields: asked.design.fields.length,
    each: levels.map(({ level, total, watches }) => saying('questions/can-say/counted-at', { level, total, watches })),
  })
}

/** Shares of all kinds in the watches of a blocked comparison, level by level. */
function shares(asked: ContrastCase): readonly Saying[] {
  if (asked.design.structure === 'before-after-control') return []
  return asked.design.levels.flatMap((level, side) => {
    const found = sharesAt(asked, side).shares.filter(({ part }) => part > 0)
    if (found.length < 2) return []
    const scope = found.every(({ fields }) => fields !== null) ? 'fields' : 'watches'
    return [
      saying(`questions/can-say/shares-${scope}`, {
        level,
        among: asked.sightingsOnly ? 'sightings' : 'visitors',
        each: found.map(({ kind, share, limits }) =>
          saying('questions/can-say/share', { kind, share, low: limits.lower, high: limits.upper }),
        ),
      }),
    ]
  })
}

/**
 * A direction declared beforehand: an upper limit below S rules out a gain worth acting on. The verdict stays as it is; where
 * it is `alike` the other direction is ruled out as well, and more is said already.
 */
export function noGain(asked: ContrastCase, found: PairVerdict, expect: 'more' | 'fewer' | undefined): Saying | null {
  if (expect === undefined || found.pair.kind === 'refused') return null
  if (found.verdict === 'design-blocks' || found.verdict === 'alike') return null
  const { lower, upper } = limitsOfPair(found.pair)(found.deciding)
  const ruledOut = expect === 'more' ? upper < asked.worth : lower > 1 / asked.worth
  return ruledOut ? saying(`questions/can-say/no-gain/${expect}`, pairValues(asked, found)) : null
}

function cannot(asked: ContrastCase, found: PairVerdict): readonly Saying[] {
  const values = { ...pairValues(asked, found), contrast: contrastName(asked) }
  const strength = strengthOf(asked)
  if (found.verdict === 'design-blocks')
    return [saying('questions/cannot-say/made-the-difference', values), saying('questions/cannot-say/no-effect', values)]
  if (found.verdict === 'unsettled')
    return [saying('questions/cannot-say/no-difference', values), saying('questions/cannot-say/a-difference', values)]
  if (found.verdict === 'leaning') return [saying('questions/cannot-say/shown', values)]
  if (found.verdict === 'alike') return [saying('questions/cannot-say/exactly-equal', values)]
  return [
    saying(
      `questions/cannot-say/${strength === 'caused' ? 'everywhere' : strength === 'changed-more' ? 'proved' : 'because-of'}`,
      values,
    ),
  ]
}

const distinct = (sayings: readonly Saying[]): readonly Saying[] => [
  ...new Map(sayings.map((own) => [JSON.stringify(own), own])).values(),
]

/** What counts alone still say where the design blocks the comparison. */
export interface BlockedCounts {
  readonly asked: ContrastCase
  readonly offer: RelativeOffer | null
}

/** What may be said and what may not, by the language ladder of methods.md 0.3. `canSay` is never empty where anything was counted. */
export function claimsOf(
  asked: ContrastCase,
  found: readonly PairVerdict[],
  blocked: BlockedCounts | null,
  expect: 'more' | 'fewer' | undefined,
): Answer['claims'] {
  const kindsOnce = found.filter((own, k) => found.findIndex((other) => other.kind === own.kind) === k)
  return {
    canSay: distinct([
      ...found.filter(({ verdict }) => verdict !== 'design-blocks').map((own) => pairSentence(asked, own)),
      ...found.flatMap((own) => noGain(asked, own, expect) ?? []),
      ...kindsOnce.map((own) => counted(asked, own)),
      ...(blocked === null ? [] : shares(blocked.asked)),
      ...(blocked === null || blocked.offer === null ? [] : [relativeSaying(blocked.offer)]),
    ]),
    cannotSay: distinct(found.flatMap((own) => cannot(asked, own))),
  }
}
