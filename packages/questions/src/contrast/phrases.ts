import { isoDate } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import type { ContrastCase } from './contrast-case.ts'

/** How strong a word the design can carry (language ladder of methods.md 0.3). */
export type Strength = 'caused' | 'changed-more' | 'associated'

export function strengthOf({ design }: ContrastCase): Strength {
  if (design.factor?.assigned === 'at random') return 'caused'
  return design.structure === 'before-after-control' ? 'changed-more' : 'associated'
}

/** "visitors per minute", "visits per flower and minute", "bumble bees for each honey bee" ... */
export function rateNoun({ measure, design, against }: ContrastCase): Saying {
  if (against !== null) return saying('questions/noun/relative', { other: against.kind.label })
  const thing = saying(design.unit === 'visits' ? 'questions/noun/visits' : 'questions/noun/visitors')
  return saying(`questions/noun/${design.unit === 'snapshot' ? 'scan' : 'watch'}/${measure}`, { thing })
}

/** What is compared, as a person says it: "strip", "position", or the date of change. */
export function contrastName({ design }: ContrastCase): Saying {
  const factor = design.factor?.name ?? ''
  if (design.structure === 'before-after-control') return saying('questions/contrast/before-after-control', { factor })
  return design.structure === 'before-after'
    ? saying('questions/contrast/before-after')
    : saying('questions/contrast/levels', { factor })
}

/** What an effect would be credited to: a level, or what changed on a date. */
export function causeOf({ design }: ContrastCase, level: number): Saying {
  if (design.structure === 'before-after' && design.factor === null)
    return saying('questions/cause/change', { date: isoDate(design.since ?? 0) })
  return saying('questions/cause/level', { level: design.levels[level] ?? '' })
}
