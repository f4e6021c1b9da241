import type { ComparedAnalyses, Estimate, Figure, StripsFigure } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { type Cell, middleOfDay, notedFrom, nuisancesOf } from '@thrum/survey'
import type { ContrastCase } from '../contrast/contrast-case.ts'
import { perUnit } from '../contrast/estimates.ts'
import { groupName, levelOfCell } from '../contrast/phrases.ts'
import { analysesFigure } from './analyses-told.ts'

type Tangled = Pick<ContrastCase, 'snapshot' | 'design'>

/**
 * Ratios with their intervals and the band inside which a difference is too small to act on. What stands in the figure of
 * analyses is not drawn twice.
 */
function ratios(
  { worth }: ContrastCase,
  estimates: readonly Estimate[],
  compared: readonly ComparedAnalyses[],
): readonly Figure[] {
  const rows = estimates.filter(
    ({ id }) => (id.startsWith('ratio/') || id.startsWith('relative/')) && !isAnalysis(id, estimates, compared),
  )
  if (rows.length === 0) return []
  return [
    {
      kind: 'intervals',
      title: saying('questions/figure/ratios'),
      unit: saying('questions/unit/ratio'),
      scale: 'log',
      band: { low: 1 / worth, high: worth },
      rows: rows.map(({ label, value, interval, n, role }) => ({ label, value, ...interval, n, role })),
    },
  ]
}

/** True of a ratio beside a headline that bears the name of one of the analyses. */
function isAnalysis(id: string, estimates: readonly Estimate[], compared: readonly ComparedAnalyses[]): boolean {
  const names = new Set(compared.flatMap(({ analyses }) => analyses.map((own) => own.id)))
  return estimates.some(
    ({ id: own, role }) => role === 'headline' && id.startsWith(`${own}/`) && names.has(id.slice(own.length + 1)),
  )
}

/** Cells in the order of their levels, the reference first, so that a level looks the same in every figure of an answer. */
const inOrderOfLevels = ({ design }: ContrastCase, cells: readonly Cell[]): readonly Cell[] =>
  cells.toSorted((a, b) => levelOfCell(design, a.field, a.side) - levelOfCell(design, b.field, b.side) || a.side - b.side)

/** The raw counts behind it, field by field. */
function rates(asked: ContrastCase): Figure {
  const { scale, unit } = perUnit(asked.measure, asked.design.unit === 'snapshot')
  return {
    kind: 'rates-by-level',
    title: saying('questions/figure/rates'),
    unit,
    points: asked.kinds.flatMap(({ kind, contrast }) =>
      inOrderOfLevels(asked, contrast.cells).map(({ field, side, total, effort }) => ({
        field: asked.design.fields[field]?.name ?? '',
        level: groupName(asked.design, levelOfCell(asked.design, field, side), side),
        kind: kind.label,
        count: total,
        effort,
        rate: (total / effort) * scale,
      })),
    ),
  }
}

/** Days since the first count of each season, if there are several: a tangle is judged within seasons. */
function seasonDays({ snapshot, design }: Tangled, days: Float64Array): Float64Array | null {
  const { season } = snapshot.tables.count.columns
  const firsts = new Map<number, number>()
  for (const [k, row] of design.rows.entries()) {
    const code = season.codes[row] ?? -1
    const day = days[k] ?? Number.NaN
    if (!Number.isNaN(day)) firsts.set(code, Math.min(firsts.get(code) ?? day, day))
  }
  if (firsts.size < 2) return null
  return days.map((day, k) => day - (firsts.get(season.codes[design.rows[k] ?? 0] ?? -1) ?? 0))
}

interface Readings {
  readonly axis: StripsFigure['axis']
  readonly column: Float64Array
}

/** Readings as a person wrote them: dates are days, and hours hours of the day. */
function readingsOn(nuisance: 'date' | 'stage' | 'hour' | 'temperature', asked: Tangled): Readings {
  const { snapshot, design } = asked
  if (nuisance === 'date') {
    const { date } = snapshot.tables.count.columns
    const days = Float64Array.from(design.rows, (row) => date.values[row] ?? Number.NaN)
    const pooled = seasonDays(asked, days)
    return pooled === null ? { axis: 'date', column: days } : { axis: 'season-day', column: pooled }
  }
  const column = nuisancesOf(snapshot, design).find(({ name }) => name === nuisance)?.columns[0] ?? new Float64Array()
  return { axis: nuisance, column: nuisance === 'hour' ? column.map((hour) => hour + middleOfDay) : column }
}

/** Where the levels lie on a nuisance that is tangled with them. */
function strips({ snapshot, design, tangles }: ContrastCase): readonly Figure[] {
  const worth = tangles.found.filter(({ inflation }) => inflation > notedFrom).flatMap(({ nuisances }) => nuisances)
  const nuisances = (['date', 'stage', 'hour', 'temperature'] as const).filter((name) => worth.includes(name))
  return nuisances.map((name): StripsFigure => {
    const { axis, column } = readingsOn(name, { snapshot, design })
    return {
      kind: 'strips',
      title: saying(`questions/figure/strips/${name}`),
      axis,
      strips: design.levels.map((level, k) => ({
        level,
        values: [...new Set(column.filter((value, row) => design.levelOf[row] === k && !Number.isNaN(value)))].sort(
          (a, b) => a - b,
        ),
      })),
    }
  })
}

export function contrastFigures(
  asked: ContrastCase,
  estimates: readonly Estimate[],
  compared: readonly ComparedAnalyses[],
): readonly Figure[] {
  return [
    ...ratios(asked, estimates, compared),
    ...analysesFigure(asked, compared),
    ...(asked.design.effortKnown ? [rates(asked)] : []),
    ...strips(asked),
  ]
}
