import { type Saying, saying } from '@thrum/model/ground'
import { floorWithEndlessMinutes, halfWidthAt, unitsNeeded, verdictLevels } from '@thrum/stats'
import type { PairContrast } from '@thrum/survey'
import type { ContrastCase } from './contrast-case.ts'
import type { PairVerdict } from './pair-verdict.ts'

/** Above this many fields it is said that counting in fields like these will not settle it (methods 2.8). */
const mostFields = 60

/**
 * How much more counting would settle a contrast: an interval whose half-width is at most ln(S)/2 is always shown or alike.
 * Never from the observed effect (methods 2.8).
 */
function moreCounting(asked: ContrastCase, found: PairVerdict, pair: PairContrast): Saying {
  const level = verdictLevels(found.contrasts).deciding
  const { units, columns, residualSd, contrast } = pair
  const size = { units: units.z.length, columns, residualSd, se: contrast.se, level }
  const target = Math.log(asked.worth) / 2
  // A whole step is one more field a level and block; of pairs, one more field.
  const step = units.layout === 'within' ? 1 : asked.design.levels.length * Math.max(1, asked.design.blocks.length)
  const needed = unitsNeeded(size, target, step, mostFields)
  const values = { kind: found.kind.kind.label, fields: size.units, worth: asked.worth }
  if (needed.kind === 'enough-now') return saying('questions/next/enough', values)
  const minutesCould = asked.against === null && floorWithEndlessMinutes({ ...size, totals: units.totals }).halfWidth <= target
  const minutes =
    asked.against === null ? [saying(minutesCould ? 'questions/next/minutes-too' : 'questions/next/minutes-not')] : []
  if (needed.kind === 'beyond-cap')
    return saying('questions/next/not-in-fields-like-these', { ...values, cap: needed.cap, minutes })
  return saying('questions/next/more-fields', {
    ...values,
    more: needed.more,
    all: needed.units,
    now: halfWidthAt(size),
    minutes,
  })
}

const distinct = (sayings: readonly Saying[]): readonly Saying[] => {
  const seen = new Set<string>()
  return sayings.filter((own) => {
    const key = JSON.stringify(own)
    return seen.has(key) ? false : seen.add(key)
  })
}

/** What to do or collect next, as concrete as can be said. */
export function nextSteps(asked: ContrastCase, found: readonly PairVerdict[]): readonly Saying[] {
  const cures = asked.findings
    .filter(({ severity, cure }) => severity === 'block' && cure !== null)
    .map(({ cure }) => cure as Saying)
  const steps = found.flatMap((own): readonly Saying[] => {
    if (own.pair.kind === 'refused') {
      const { refusal } = own.pair
      if (refusal.because === 'few-fields' || refusal.because === 'few-pairs') return []
      return [saying(`questions/next/refused/${refusal.because}`, { kind: own.kind.kind.label })]
    }
    if (own.verdict === 'design-blocks') return []
    if (own.verdict === 'alike' || (own.verdict === 'shown' && own.read?.size === 'worth-acting-on'))
      return [saying('questions/next/settled', { kind: own.kind.kind.label })]
    if (asked.design.measured !== null)
      return [saying('questions/next/slope', { kind: own.kind.kind.label, name: asked.design.measured.name })]
    return [moreCounting(asked, own, own.pair)]
  })
  return distinct([...cures, ...steps])
}
