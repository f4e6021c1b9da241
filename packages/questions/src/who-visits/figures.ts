import type { Estimate, Figure } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { perUnit } from '../contrast/estimates.ts'
import { shareUnit } from '../contrast/phrases.ts'
import type { VisitCase } from './groups.ts'

/** Rates and shares with their intervals, and the raw rates field by field. */
export function figures(asked: VisitCase, estimates: readonly Estimate[]): readonly Figure[] {
  const { scale, unit } = perUnit(asked.measure, asked.selected.unit === 'snapshot')
  const intervals = (part: 'rate' | 'share', scaleName: 'linear' | 'share', title: string, unitOf: Saying): Figure => ({
    kind: 'intervals',
    title: saying(title),
    unit: unitOf,
    scale: scaleName,
    band: null,
    rows: estimates
      .filter(({ id, role }) => role === 'headline' && (id.startsWith(`${part}/`) || id.includes(`/${part}/`)))
      .map(({ label, value, interval, n, role }) => ({ label, value, ...interval, n, role })),
  })
  return [
    intervals('rate', 'linear', 'questions/figure/visit-rates', unit),
    intervals('share', 'share', 'questions/figure/shares', shareUnit(asked.sightingsOnly)),
    {
      kind: 'rates-by-level',
      title: saying('questions/figure/visit-rates-by-field'),
      unit,
      points: asked.groups.flatMap((group) =>
        group.rates.flatMap(({ kind, data }) =>
          data.fields.map(({ name, total, effort }) => ({
            field: name,
            level: group.name ?? '',
            kind: kind.label,
            count: total,
            effort,
            rate: (total / effort) * scale,
          })),
        ),
      ),
    },
  ]
}
