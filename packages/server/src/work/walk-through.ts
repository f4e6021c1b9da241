import { plantedQuestions } from '@thrum/host'
import { isDemonstration } from '@thrum/host/desk'
import type { Snapshot } from '@thrum/model'
import type { WalkTold } from '../api/question.ts'

const verdicts = ['shown', 'alike', 'unsettled', 'design-blocks'] as const

/** The first planted question of each verdict, so that one walk through the demonstration meets all of them. */
export function walkThrough(snapshot: Snapshot): WalkTold {
  if (!isDemonstration(snapshot)) return []
  return verdicts.flatMap((verdict) => {
    const found = plantedQuestions.find((own) => own.verdict === verdict)
    return found === undefined
      ? []
      : [{ question: found.question, options: JSON.parse(JSON.stringify(found.options)) as WalkTold[number]['options'], verdict }]
  })
}
