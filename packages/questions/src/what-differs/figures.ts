import type { Estimate, Figure, StripsFigure } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { middleOfDay, notedFrom, nuisancesOf } from '@thrum/survey'
import type { ContrastCase } from '../contrast/contrast-case.ts'
import { perUnit } from '../contrast/estimates.ts'
import { groupName, levelOfCell } from '../contrast/phrases.ts'

/** Ratios with their intervals and the band inside which a difference is too small to act on. */
function ratios({ worth }: ContrastCase, estimates: readonly Estimate[]): readonly Figure[] {
  const rows = estimates.filter(({ id }) => id.startsWith('ratio/') || id.startsWith('relative/'))
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

/** The raw counts behind it, field by field. */
function rates(asked: ContrastCase): Figure {
  const { scale, unit } = perUnit(asked.measure, asked.design.unit === 'snapshot')
  return {
    kind: 'rates-by-level',
    title: saying('questions/figure/rates'),
    unit,
    points: asked.kinds.flatMap(({ kind, contrast }) =>
      contrast.cells.map(({ field, side, total, effort }) => ({
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

/** Readings as a person wrote them: dates are days, and hours hours of the day. */
function readingsOn(axis: StripsFigure['axis'], { snapshot, design }: Pick<ContrastCase, 'snapshot' | 'design'>): Float64Array {
  const { date } = snapshot.tables.count.columns
  if (axis === 'date') return Float64Array.from(design.rows, (row) => date.values[row] ?? Number.NaN)
  const column = nuisancesOf(snapshot, design).find(({ name }) => name === axis)?.columns[0] ?? new Float64Array()
  return axis === 'hour' ? column.map((hour) => hour + middleOfDay) : column
}

/** Where the levels lie on a nuisance that is tangled with them. */
function strips({ snapshot, design, tangles }: ContrastCase): readonly Figure[] {
  const worth = tangles.found.filter(({ inflation }) => inflation > notedFrom).flatMap(({ nuisances }) => nuisances)
  const axes = (['date', 'stage', 'hour', 'temperature'] as const).filter((axis) => worth.includes(axis))
  return axes.map((axis): StripsFigure => {
    const column = readingsOn(axis, { snapshot, design })
    return {
      kind: 'strips',
      title: saying(`questions/figure/strips/${axis}`),
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

export function contrastFigures(asked: ContrastCase, estimates: readonly Estimate[]): readonly Figure[] {
  return [...ratios(asked, estimates), ...(asked.design.effortKnown ? [rates(asked)] : []), ...strips(asked)]
}
