import { type Saying, saying } from '@thrum/model/ground'
import { leastFields } from '../contrast/refusal.ts'
import type { AuditInput, Finding } from './finding.ts'

/** Below this many fields in an arm the audit warns (product charter). */
export const comfortableFields = 6

/** How many fields each level lacks. */
function lacking(arms: readonly { readonly level: string; readonly fields: number }[], wanted: number): readonly Saying[] {
  return arms
    .filter(({ fields }) => fields < wanted)
    .map(({ level, fields }) => saying('survey/cure/fields-with', { more: wanted - fields, level }))
}

/** Fields are the independent units: how many stand in each level, or hold both. */
export function notReplicated({ design }: AuditInput): readonly Finding[] {
  if (design.structure === 'within-fields' || design.structure === 'before-after') {
    const fields = design.fields.length
    if (fields >= comfortableFields) return []
    const severity = fields < leastFields ? 'block' : 'warn'
    return [
      {
        code: 'not-replicated',
        severity,
        text: saying(`survey/audit/not-replicated/within/${severity}`, { fields }),
        rows: Array.from(design.rows),
        cure: saying('survey/cure/more-fields', {
          more: Math.max(0, (severity === 'block' ? leastFields : comfortableFields) - fields),
        }),
      },
    ]
  }
  const arms = design.levels.map((level, k) => ({ level, fields: design.fields.filter((field) => field.level === k).length }))
  const least = arms.reduce((fewest, arm) => (arm.fields < fewest.fields ? arm : fewest), {
    level: '',
    fields: Number.POSITIVE_INFINITY,
  })
  if (least.fields >= comfortableFields) return []
  const severity = least.fields < leastFields ? 'block' : 'warn'
  return [
    {
      code: 'not-replicated',
      severity,
      text: saying(`survey/audit/not-replicated/between/${severity}`, {
        arms: arms.map(({ level, fields }) => saying('survey/audit/not-replicated/arm', { level, fields })),
      }),
      rows: Array.from(design.rows),
      cure: saying('survey/cure/more-fields-in', { each: lacking(arms, severity === 'block' ? leastFields : comfortableFields) }),
    },
  ]
}
