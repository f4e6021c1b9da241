import type { IntervalsFigure } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import type { CheckMade, LeftOut, ModelSuspect } from '@thrum/stats'
import { suspectSaying } from './check-sayings.ts'
import { lineLabel } from './line-label.ts'

type Row = IntervalsFigure['rows'][number]
const own = (id: string, values: Saying['values'] = {}): Saying => saying(`questions/model-checks/${id}`, values)

/** Drawn sets between the ends of a line, and the level of limits of a sum. */
const level = 0.95

/** One small figure of a suspect; its title says what is wrong. */
export function suspectFigure(suspect: ModelSuspect): IntervalsFigure {
  const title = suspectSaying(suspect)
  return suspect.kind === 'check' ? checkFigure(suspect.check, title) : influenceFigure(suspect, title)
}

/** For each line what was found, and under it where 95 of 100 sets drawn from the model lie. */
function checkFigure({ check, lines, scale }: CheckMade, title: Saying): IntervalsFigure {
  return {
    kind: 'intervals',
    title,
    unit: own(scale === 'ratio' ? 'unit/times-expected' : `unit/${check.kind}`),
    scale: 'linear',
    band: null,
    rows: lines.flatMap(({ label, rows, found, expected, least, most }): Row[] => {
      const per = scale === 'ratio' ? expected : 1
      if (!(per > 0)) return []
      const line = lineLabel(check, label)
      return [
        { label: line, value: found / per, low: null, high: null, level, n: rows, role: 'headline' },
        {
          label: own('label/by-the-model', { line }),
          value: expected / per,
          low: least / per,
          high: most / per,
          level,
          n: rows,
          role: 'beside',
        },
      ]
    }),
  }
}

/** An asked sum with all rows, and without each of what hangs most on it. */
function influenceFigure(
  { sum, rows, leftOut, beside }: Extract<ModelSuspect, { readonly kind: 'influence' }>,
  title: Saying,
): IntervalsFigure {
  const ratios = (one: { readonly estimate: number; readonly lower: number; readonly upper: number }) => ({
    value: Math.exp(one.estimate),
    low: Math.exp(one.lower),
    high: Math.exp(one.upper),
    level,
  })
  const without = (part: LeftOut): readonly Row[] => {
    const found = part.kind === 'refitted' ? part.sums.find((one) => one.sum === sum?.name) : undefined
    if (found === undefined || found.kind === 'aliased') return []
    return [{ label: own('label/without', { by: part.by, level: part.level }), ...ratios(found), n: part.rows, role: 'beside' }]
  }
  return {
    kind: 'intervals',
    title,
    unit: own('unit/ratio'),
    scale: 'log',
    band: null,
    rows:
      sum === null
        ? []
        : [
            { label: own('label/with-all', { sum: sum.name }), ...ratios(sum), n: rows, role: 'headline' },
            ...[leftOut, ...beside].flatMap(without),
          ],
  }
}
