import { exposureOfField, exposureOfLevel, findWithEveryRange, honeyBeeRange } from '@thrum/biology'
import { saying } from '@thrum/model/ground'
import { exposureOf, hivesAround, rangeOn } from './exposure.ts'
import type { AuditInput, Finding } from './finding.ts'

/** Below this ratio of exposures the control's bees are its own (product charter). */
const separate = 0.1

interface Sides {
  readonly control: number
  readonly treated: number
}

/** Mean exposure of the reference and of a level: fields weighted by minutes, then a plain mean over fields. */
function exposures({ snapshot, design }: AuditInput, level: number, range: number | null): Sides | null {
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
  const side = (of: number) => (k: number) => design.levelOf[k] === of && (!afterOnly || design.periodOf[k] === 1)
  const control = over(side(0))
  const treated = over(side(level))
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

/** Exposures that differ by less than this part are the same: rounding of weighted means. */
const dust = 1e-9

/**
 * True where the contrast is one of hives: by its name, or because hives came nearer or went between before and after. One
 * range for both periods: bees that begin to fly further are no move.
 */
function isAboutHives(input: AuditInput): boolean {
  const { design } = input
  if (design.factor?.about === 'hives') return true
  if (design.structure !== 'before-after') return false
  const sides = exposures(input, 1, honeyBeeRange.summer)
  return sides !== null && 1 - ratioOf(sides) > dust
}

/** The level whose exposure is most like that of the reference; null where nobody looked for hives on both sides. */
function worstLevel(input: AuditInput): { readonly level: number; readonly sides: Sides } | null {
  return input.design.levels
    .slice(1)
    .flatMap((_, k) => {
      const sides = exposures(input, k + 1, null)
      return sides === null ? [] : [{ level: k + 1, sides }]
    })
    .reduce<{ readonly level: number; readonly sides: Sides } | null>(
      (worst, own) => (worst === null || ratioOf(own.sides) > ratioOf(worst.sides) ? own : worst),
      null,
    )
}

/**
 * Honey bees fly from field to field: hives are a contrast only if one side is exposed to clearly more of them.
 * Exposure by methods.md 6.2, with the season's range; if the finding hangs on the range, it says so.
 */
export function sameBeesHives(input: AuditInput): readonly Finding[] {
  const { snapshot, design, worth } = input
  if (!isAboutHives(input)) return []
  const rows = Array.from(design.rows)
  const worst = worstLevel(input)
  if (worst === null) {
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
  const { level } = worst
  const ratio = ratioOf(worst.sides)
  const severity = severityOf(ratio, worth)
  const every = findWithEveryRange((range) => {
    const other = exposures(input, level, range)
    return other === null ? 'none' : severityOf(ratioOf(other), worth)
  })
  const moved = design.structure === 'before-after'
  const values = {
    fold: 1 / ratio,
    percent: 100 * ratio,
    worth,
    range: rows[0] === undefined ? 0 : rangeOn(snapshot, rows[0]),
    from: nearest(input, 0),
    to: nearest(input, level),
    levelA: design.levels[0] ?? '',
    levelB: design.levels[level] ?? '',
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
