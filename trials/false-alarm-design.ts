// Designs of whole fields whose bloom stage leans to one level by a chosen amount, and counts made from them. Imports nothing
// from the audit: its own R2 comes from plain sums.

import { isoDate } from '@thrum/model'
import type { Rng } from '@thrum/model/ground'
import { drawNegativeBinomial, drawNormal } from '@thrum/stats'
import type { CountRow } from '../packages/survey/test/project-of-counts.ts'

/** What all designs share: methods.md 2.11 (field SD 0.42 on the log), 1.4 (stages 61 to 67), and plain numbers of ours. */
export const truths = {
  fieldSd: 0.42,
  meanPerCount: 8,
  theta: 3,
  visits: 4,
  minutes: 10,
  /** Visitors fall by this ratio from the first stage to the last. */
  nuisanceRatio: 2,
  firstStage: 61,
  lastStage: 67,
} as const

const firstDay = 22_410 // 2031-05-11

export interface LeaningField {
  readonly level: 0 | 1
  /** Bloom stage at each visit. */
  readonly stages: readonly number[]
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

/** Squared correlation of the level with the fields' mean stage: the partial R2 of two arms without blocks. */
export function leaning(fields: readonly LeaningField[]): number {
  const stages = fields.map(({ stages: own }) => mean(own))
  const levels = fields.map(({ level }) => level)
  const [s, l] = [mean(stages), mean(levels)]
  let [ss, ll, sl] = [0, 0, 0]
  for (let k = 0; k < fields.length; k++) {
    const [a, b] = [(stages[k] as number) - s, (levels[k] as number) - l]
    ss += a * a
    ll += b * b
    sl += a * b
  }
  return ss === 0 ? 0 : (sl * sl) / (ss * ll)
}

/** Fields of two arms, visited at stages that lean to the second by a random amount. */
export function drawFields(rng: Rng, arm: number): readonly LeaningField[] {
  const lean = 4 * rng.uniform()
  const middle = (truths.firstStage + truths.lastStage) / 2
  return Array.from({ length: 2 * arm }, (_, k): LeaningField => {
    const level = k < arm ? 0 : 1
    const own = middle + (level - 0.5) * lean + drawNormal(rng)
    const stages = Array.from({ length: truths.visits }, (_visit, v) => {
      const stage = Math.round(own + (v - (truths.visits - 1) / 2))
      return Math.min(truths.lastStage, Math.max(truths.firstStage, stage))
    })
    return { level, stages }
  })
}

/** Counts at those visits: fading bloom, fields that differ, and an effect of the second level (1: none). */
export function drawCounts(rng: Rng, fields: readonly LeaningField[], effect: number): readonly CountRow[] {
  const slope = -Math.log(truths.nuisanceRatio) / (truths.lastStage - truths.firstStage)
  return fields.flatMap(({ level, stages }, k) => {
    const field = truths.fieldSd * drawNormal(rng)
    return stages.map((stage, visit): CountRow => {
      const log = Math.log(truths.meanPerCount) + field + slope * (stage - 64) + (level === 1 ? Math.log(effect) : 0)
      return {
        field: `field ${k}`,
        margin: level === 0 ? 'mown' : 'standing',
        // The day follows the bloom, so that date and stage are one nuisance; the hour turns from visit to visit.
        date: isoDate(firstDay + 2 * (stage - truths.firstStage)),
        start: (k + visit) % 2 === 0 ? '11:00' : '14:50',
        minutes: truths.minutes,
        stage,
        unit: 'individuals',
        zeros: 'typed',
        tallies: { bee: drawNegativeBinomial(rng, Math.exp(log), truths.theta) },
      }
    })
  })
}
