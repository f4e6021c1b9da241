import { isoDate } from '@thrum/model'
import { type Saying, type SayingValue, saying } from '@thrum/model/ground'
import { after, before, type Design } from '@thrum/survey'
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

/** The two sides of a pair as sentences name them: levels, or a measured level as it is and one step further. */
export function levelNames(
  { design }: ContrastCase,
  level: number,
): { readonly levelA: SayingValue; readonly levelB: SayingValue } {
  const { measured } = design
  if (measured === null) return { levelA: design.levels[0] ?? '', levelB: design.levels[level] ?? '' }
  const values = { name: measured.name, step: measured.step }
  return {
    levelA: saying('questions/slope/base', values),
    levelB: saying(measured.scale === 'linear' ? 'questions/slope/step' : 'questions/slope/fold', values),
  }
}

/** What an effect would be credited to: a level, or what changed on a date. */
export function causeOf(asked: ContrastCase, level: number): Saying {
  const { design } = asked
  if (design.structure === 'before-after' && design.factor === null)
    return saying('questions/cause/change', { date: isoDate(design.since ?? 0) })
  return saying('questions/cause/level', { level: levelNames(asked, level).levelB })
}

/** The unit of a share: of all visitors, or among what was written down as seen. */
export const shareUnit = (sightingsOnly: boolean): Saying =>
  saying(sightingsOnly ? 'questions/unit/share-sightings' : 'questions/unit/share')

/** A group of watches as it is named: its level; with controls, its level before or after. */
export function groupName({ structure, levels }: Pick<Design, 'structure' | 'levels'>, level: number, period: number): string {
  const name = levels[level] ?? ''
  return structure === 'before-after-control' ? `${name}, ${period === 1 ? after : before}` : name
}

/** Level of a cell: its side; with controls, where sides are periods, the level of its field. */
export function levelOfCell({ structure, fields }: Pick<Design, 'structure' | 'fields'>, field: number, side: number): number {
  return structure === 'before-after-control' ? (fields[field]?.level ?? -1) : side
}
