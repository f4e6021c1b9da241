import { edgeDistance, independenceOf, type KindClass, type Shape, warningDistance } from '@thrum/biology'
import type { Field } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import type { AuditInput, Finding } from './finding.ts'

function shapeOf(field: Field | undefined): Shape | null {
  if (field === undefined) return null
  if (field.polygon !== null) return { type: 'Polygon', coordinates: [[...field.polygon]] }
  return field.point === null ? null : { type: 'Point', coordinates: [field.point.longitude, field.point.latitude] }
}

/** The furthest flier among the kinds asked. */
function furthest(classes: readonly KindClass[]): KindClass {
  return classes.reduce((far, own) => (warningDistance(own) > warningDistance(far) ? own : far), classes[0] ?? 'other')
}

/** Fields of different levels that lie within flight range of each other share their insects (methods 1.6). */
export function sameBeesFields({ snapshot, design, kinds }: AuditInput): readonly Finding[] {
  if (design.structure !== 'between-fields' && design.structure !== 'before-after-control') return []
  if (design.factor?.about === 'hives') return []
  const placed = design.fields.map((field) => ({ field, shape: shapeOf(snapshot.fields[field.index]) }))
  const rows = Array.from(design.rows)
  const unplaced = placed.filter(({ shape }) => shape === null)
  const found: Finding[] = []
  if (unplaced.length > 0) {
    found.push({
      code: 'places-unknown',
      severity: 'warn',
      text: saying('survey/audit/places-unknown', { fields: unplaced.length, of: placed.length }),
      rows,
      cure: saying('survey/cure/record-places'),
    })
  }
  let nearest = { metres: Number.POSITIVE_INFINITY, one: '', other: '' }
  for (const [k, a] of placed.entries()) {
    for (const b of placed.slice(k + 1)) {
      if (a.shape === null || b.shape === null || a.field.level === b.field.level) continue
      const metres = edgeDistance(a.shape, b.shape)
      if (metres < nearest.metres) nearest = { metres, one: a.field.name, other: b.field.name }
    }
  }
  const kind = furthest(kinds.map((set) => set.class))
  if (nearest.metres === Number.POSITIVE_INFINITY) return found
  const independence = independenceOf(kind, nearest.metres)
  if (independence === 'independent') return found
  const severity = independence === 'refused' ? 'block' : 'warn'
  return [
    ...found,
    {
      code: 'same-bees-fields',
      severity,
      text: saying(`survey/audit/same-bees-fields/${severity}`, { ...nearest, range: warningDistance(kind) }),
      rows,
      cure: saying('survey/cure/fields-further-apart', { range: warningDistance(kind) }),
    },
  ]
}
