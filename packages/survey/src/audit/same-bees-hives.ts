import { exposureOfField, exposureOfLevel, findWithEveryRange } from '@thrum/biology'
import { saying } from '@thrum/model/ground'
import { exposureOf, hivesAround, rangeOn } from './exposure.ts'
import type { AuditInput, Finding } from './finding.ts'

/** Below this ratio of exposures the control's bees are its own (product charter). */
const separate = 0.1

interface Sides {
  readonly control: number
  readonly treated: number
}

/** Mean exposure of the two sides compared: fields weighted by minutes, then a plain mean over fields. */
function exposures({ snapshot, design }: AuditInput, range: number | null): Sides | null {
  const over = (inside: (k: number) => boolean): number | null => {
    const byField = new Map<number, { exposure: number; minutes: number }[]>()
    for (let k = 0; k < design.rows.length; k++) {
      if (!inside(k)) continue
      const exposure = exposureOf(snapshot, design.rows[k] as number, range)
      if (exposure === null) continue
      const field = design.fieldOf[k] as number
      const minutes = design.minutes[k] as number
      byField.set(field, [...(byField.get(field) ?? []), { exposure, minutes: minutes > 0 ? minutes : 1 }])
    }
    return byField.size === 0 ? null : exposureOfLevel([...byField.values()].map(exposureOfField))
  }
  const afterOnly = design.structure === 'before-after-control'
  const side = (level: number) => (k: number) => design.levelOf[k] === level && (!afterOnly || design.periodOf[k] === 1)
  const control = over(side(0))
  const treated = over(side(1))
  return control === null || treated === null ? null : { control, treated }
}

const ratioOf = ({ control, treated }: Sides): number =>
  control === treated ? 1 : Math.min(control, treated) / Math.max(control, treated)

/** Distances of the nearest hives on each side, for the words. */
function nearest({ snapshot, design }: AuditInput, level: number): number {
  const distances = Array.from(design.rows).flatMap((row, k) =>
    design.levelOf[k] === level ? (hivesAround(snapshot, row) ?? []).map(({ distance }) => distance) : [],
  )
  return distances.length === 0 ? Number.NaN : distances.reduce((a, b) => Math.min(a, b))
}

const severityOf = (ratio: number, worth: number): 'none' | 'warn' | 'block' =>
  ratio < separate ? 'none' : ratio > 1 / worth ? 'block' : 'warn'

/** True where the contrast is one of hives: by its name, or because hives came nearer or went between before and after. */
function isAboutHives(input: AuditInput, sides: Sides | null): boolean {
  const { design } = input
  if (design.factor?.about === 'hives') return true
  return design.structure === 'before-after' && sides !== null && sides.control !== sides.treated
}

/**
 * Honey bees fly from field to field: hives are a contrast only if one side is exposed to clearly more of them.
 * Exposure by methods.md 6.2, with the season's range; if the finding hangs on the range, it says so.
 */
export function sameBeesHives(input: AuditInput): readonly Finding[] {
  const { snapshot, design, worth } = input
  const sides = exposures(input, null)
  if (!isAboutHives(input, sides)) return []
  const rows = Array.from(design.rows)
  if (sides === null) {
    return [
      {
        code: 'hives-unknown',
        severity: 'warn',
        text: saying('survey/audit/hives-unknown'),
        rows,
        cure: saying('survey/cure/look-for-hives'),
      },
    ]
  }
  const ratio = ratioOf(sides)
  const severity = severityOf(ratio, worth)
  const every = findWithEveryRange((range) => {
    const other = exposures(input, range)
    return other === null ? 'none' : severityOf(ratioOf(other), worth)
  })
  const moved = design.structure === 'before-after'
  const values = {
    fold: 1 / ratio,
    percent: 100 * ratio,
    worth,
    range: rows[0] === undefined ? 0 : rangeOn(snapshot, rows[0]),
    from: nearest(input, 0),
    to: nearest(input, 1),
    levelA: design.levels[0] ?? '',
    levelB: design.levels[1] ?? '',
  }
  const cure = saying(moved ? 'survey/cure/hives-far' : 'survey/cure/controls-out-of-range')
  const found: Finding[] = []
  if (severity !== 'none')
    found.push({
      code: 'same-bees-hives',
      severity,
      text: saying(`survey/audit/same-bees-hives/${moved ? 'moved' : 'levels'}/${severity}`, values),
      rows,
      cure,
    })
  if (every.hangsOnRange) {
    found.push({
      code: 'hangs-on-range',
      severity: 'warn',
      text: saying('survey/audit/hangs-on-range', {
        spring: word(every.findings.spring),
        summer: word(every.findings.summer),
        autumn: word(every.findings.autumn),
        from: values.from,
        to: values.to,
      }),
      rows,
      cure: null,
    })
  }
  return found
}

const word = (severity: 'none' | 'warn' | 'block') => saying(`survey/audit/hangs-on-range/${severity}`)
