import type { IntervalsFigure, RatesFigure, StripsFigure } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { words } from '../../src/figure/words.en.ts'
import { createSpeaker, english } from '../../src/index.ts'

export const say = createSpeaker({ ...english, ...words, 'sample/text': '{text}' })
export const told = (text: string): Saying => saying('sample/text', { text })

type Row = IntervalsFigure['rows'][number]

export const row = (
  label: string,
  value: number | null,
  low: number | null,
  high: number | null,
  own: Partial<Row> = {},
): Row => ({
  label: told(label),
  value,
  low,
  high,
  level: 0.95,
  n: 8,
  role: 'headline',
  ...own,
})

export const ratios = (rows: readonly Row[]): IntervalsFigure => ({
  kind: 'intervals',
  title: told('Ratios'),
  unit: told('times'),
  scale: 'log',
  band: { low: 0.5, high: 2 },
  rows,
})

export const plain = (rows: readonly Row[], scale: 'linear' | 'share' = 'linear'): IntervalsFigure => ({
  ...ratios(rows),
  title: told('Rates by kind'),
  unit: told(scale === 'share' ? 'of all visitors' : 'per hour'),
  scale,
  band: null,
})

export const point = (field: string, level: string, rate: number, kind = 'bumble bee'): RatesFigure['points'][number] => ({
  field,
  level,
  kind,
  rate,
  count: Math.round(rate * 2),
  effort: 120,
})

export const rates = (points: RatesFigure['points']): RatesFigure => ({
  kind: 'rates-by-level',
  title: told('Field by field'),
  unit: told('per hour'),
  points,
})

export const strips = (own: StripsFigure['strips'], axis: StripsFigure['axis'] = 'date'): StripsFigure => ({
  kind: 'strips',
  title: told('Where the levels lie'),
  axis,
  strips: own,
})

/** Four invented fields, each with counts at both levels. */
export const pairedRates = rates(
  ['Averlusk', 'Brunnoxel', 'Cadrimoth', 'Dorvenna'].flatMap((field, k) => [
    point(`${field} Orchard`, 'centre', 6 + 2 * k),
    point(`${field} Orchard`, 'edge', 18 + 5 * k),
  ]),
)

export const widths = [280, 390, 519, 520, 720, 1280]
