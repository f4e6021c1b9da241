import { createRng } from '@thrum/model/ground'
import { drawNormal, type Grouping, type LinearMixedModel, matrixOfColumns } from '../../src/index.ts'

export interface MadeMeasures {
  readonly seed: string
  readonly fields?: number
  readonly dates?: number
  readonly plots?: number
  readonly fieldSd?: number
  readonly dateSd?: number
  readonly slopeSd?: number
  readonly residualSd?: number
  readonly effect?: number
  /** Whether fields have slopes, and how they go with their intercepts. */
  readonly slope?: 'none' | 'free' | 'apart'
  /** The grouping that crosses the fields. */
  readonly isCrossed?: boolean
  /** Every third row is left out. */
  readonly isUneven?: boolean
}

type Made = Omit<LinearMixedModel, 'likelihood'> & { readonly groupings: readonly Grouping[] }

/** Measures of plots in fields on dates, half of the fields treated: fields and dates cross, plots lie in fields. */
export function madeMeasures({
  seed,
  fields = 10,
  dates = 6,
  plots = 1,
  fieldSd = 1,
  dateSd = 0.6,
  slopeSd = 0.3,
  residualSd = 1,
  effect = 0.8,
  slope = 'none',
  isCrossed = false,
  isUneven = false,
}: MadeMeasures): Made {
  const rng = createRng(seed)
  const ofField = Array.from({ length: fields }, () => ({
    level: fieldSd * drawNormal(rng),
    slope: slope === 'none' ? 0 : slopeSd * drawNormal(rng),
  }))
  const ofDate = Array.from({ length: dates }, () => (isCrossed ? dateSd * drawNormal(rng) : 0))
  const whole = ofField.flatMap((field, f) =>
    ofDate.flatMap((date, d) =>
      Array.from({ length: plots }, (_, plot) => ({
        ...{ f, d, plot },
        day: d + (f % 3) / 2,
        y: 5 + effect * (f % 2) + field.level + date + (0.2 + field.slope) * (d + (f % 3) / 2) + residualSd * drawNormal(rng),
      })),
    ),
  )
  const rows = isUneven ? whole.filter((_, i) => i % 3 !== 1) : whole
  const day = rows.map((row) => row.day)
  const field = { name: 'field', of: Int32Array.from(rows, ({ f }) => f), levels: fields }
  const sloped = slope === 'none' ? field : { ...field, slope: { name: 'day', values: day, isCorrelated: slope === 'free' } }
  return {
    response: rows.map(({ y }) => y),
    design: matrixOfColumns(rows.length, [rows.map(() => 1), rows.map(({ f }) => f % 2), day]),
    groupings: [
      sloped,
      ...(isCrossed ? [{ name: 'date', of: Int32Array.from(rows, ({ d }) => d), levels: dates }] : []),
      ...(plots > 1
        ? [{ name: 'plot', of: Int32Array.from(rows, ({ f, plot }) => f * plots + plot), levels: fields * plots }]
        : []),
    ],
  }
}
