import type { Answer, Estimate } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'

/** What an estimate rests on: how many, from the fewest to the most, and of what. */
interface Units {
  readonly least: number
  readonly most: number
  readonly of: 'fields' | 'watches'
}

const unitsOf = (own: readonly Estimate[], of: Units['of']): Units => ({
  least: own.reduce((least, { n }) => Math.min(least, n), Number.POSITIVE_INFINITY),
  most: own.reduce((most, { n }) => Math.max(most, n), 0),
  of,
})

/** Fields with a mark of their own. */
function fieldsDrawn({ figures }: Answer): number {
  const points = figures.flatMap((figure) => (figure.kind === 'rates-by-level' ? figure.points : []))
  return new Set(points.map(({ field }) => field)).size
}

/**
 * The independent units of an answer: those of what was asked, else of what stands beside it, else the fields that are drawn.
 * Watches are told only where what was asked speaks of nothing but them.
 */
function independentUnits(answer: Answer): Units | null {
  const asked = answer.estimates.filter(({ role }) => role === 'headline')
  const ofFields = (own: readonly Estimate[]): readonly Estimate[] => own.filter(({ counts }) => counts !== 'watches')
  if (ofFields(asked).length > 0) return unitsOf(ofFields(asked), 'fields')
  if (asked.length > 0) return unitsOf(asked, 'watches')
  const beside = ofFields(answer.estimates)
  if (beside.length > 0) return unitsOf(beside, 'fields')
  const drawn = fieldsDrawn(answer)
  return drawn > 0 ? { least: drawn, most: drawn, of: 'fields' } : null
}

/** Verdict and number of independent units, as they stand under the headline; empty where an answer has neither. */
export function standingOf(answer: Answer): readonly Saying[] {
  const units = independentUnits(answer)
  const together = answer.estimates.filter(({ verdict }) => verdict !== null).length > 1 ? 'yes' : 'no'
  return [
    ...(answer.verdict === null ? [] : [saying(`report/figure/verdict/${answer.verdict}`, { together })]),
    ...(units === null
      ? []
      : [
          saying(`report/figure/standing/${units.of}`, {
            least: units.least,
            most: units.most,
            equal: units.least === units.most ? 'yes' : 'no',
          }),
        ]),
  ]
}
