import { type Saying, saying } from '@thrum/model/ground'
import { ratioOfContrast } from '@thrum/stats'
import type { Finding, Refusal } from '@thrum/survey'
import type { ContrastCase } from '../contrast/contrast-case.ts'
import { limitsOfPair, type PairVerdict } from '../contrast/pair-verdict.ts'
import { causeOf, levelNames, rateNoun, strengthOf } from '../contrast/phrases.ts'

/** What a sentence about one pair is filled with. Limits are those of the interval that decided. */
export function pairValues(asked: ContrastCase, found: PairVerdict): Saying['values'] {
  const { pair } = found
  const names = {
    kind: found.kind.kind.label,
    ...levelNames(asked, pair.level),
    noun: rateNoun(asked),
    cause: causeOf(asked, pair.level),
    worth: asked.worth,
    least: 1 / asked.worth,
  }
  if (pair.kind === 'refused') return names
  const level = found.read?.level ?? 0.95
  const shown = found.verdict === 'leaning' ? 0.95 : level
  const { lower, upper } = limitsOfPair(pair)(shown)
  const ratio = ratioOfContrast(pair.contrast).ratio
  return {
    ...names,
    ratio,
    low: lower,
    high: upper,
    level: shown,
    fields: pair.units.z.length,
    direction: saying(ratio >= 1 ? 'questions/direction/more' : 'questions/direction/fewer'),
  }
}

/** Why an answer is blocked, shortly: the distinct findings that block. */
export function reasons(findings: readonly Finding[]): readonly Saying[] {
  const blocks = findings.filter(({ severity }) => severity === 'block')
  const tangledWith = [...new Set(blocks.flatMap(({ code, text }) => (code === 'tangled' ? namesIn(text) : [])))]
  const others = [...new Set(blocks.map(({ code }) => code).filter((code) => code !== 'tangled'))]
  return [
    ...(blocks.some(({ code }) => code === 'tangled')
      ? [
          tangledWith.length === 0
            ? saying('questions/reason/tangled-blocks')
            : saying('questions/reason/tangled', { nuisances: tangledWith.map((id) => saying(id)) }),
        ]
      : []),
    ...others.map((code) => saying(`questions/reason/${code}`)),
  ]
}

function namesIn(text: Saying): readonly string[] {
  const nuisance = text.values.nuisance
  return Array.isArray(nuisance) ? nuisance.map((own: Saying) => own.id) : []
}

export function refusalSaying(refusal: Refusal): Saying {
  const { because, ...values } = refusal
  return saying(`questions/refusal/${because}`, values)
}

function blockedHeadline(asked: ContrastCase, found: PairVerdict): Saying {
  const values = pairValues(asked, found)
  const blocks = reasons(asked.findings)
  const own = blocks.length > 0 || found.pair.kind === 'estimated' ? blocks : [refusalSaying(found.pair.refusal)]
  return saying('questions/what-differs/headline/design-blocks', { ...values, reasons: own })
}

/** The sentence of one kind and level, with the number and its interval. */
export function pairSentence(asked: ContrastCase, found: PairVerdict): Saying {
  if (found.verdict === 'design-blocks') return blockedHeadline(asked, found)
  const values = pairValues(asked, found)
  if (found.verdict === 'shown') {
    const size = saying(`questions/what-differs/size/${found.read?.size ?? 'may-be-too-small'}`, { worth: asked.worth })
    return saying(`questions/what-differs/headline/shown/${strengthOf(asked)}`, { ...values, size })
  }
  if (found.verdict === 'alike')
    return saying(`questions/what-differs/headline/alike/${found.read?.size ?? 'no-difference-seen'}`, values)
  return saying(`questions/what-differs/headline/${found.verdict}`, values)
}

/** One plain sentence for the whole question. */
export function headlineOf(asked: ContrastCase, found: readonly PairVerdict[], notes: readonly Saying[]): Saying {
  const only = found.length === 1 ? found[0] : undefined
  const blockedAlike =
    found.every(({ verdict }) => verdict === 'design-blocks') && asked.findings.some(({ severity }) => severity === 'block')
  const main =
    only !== undefined || blockedAlike
      ? pairSentence(asked, only ?? (found[0] as PairVerdict))
      : saying('questions/what-differs/headline/several', {
          comparisons: found.length,
          each: found.map((own) =>
            saying('questions/what-differs/headline/one-of-several', {
              ...pairValues(asked, own),
              verdict: saying(`questions/verdict/${own.verdict}`),
            }),
          ),
        })
  return notes.reduce((before, note) => saying('questions/headline/with-notes', { main: before, notes: [note] }), main)
}
