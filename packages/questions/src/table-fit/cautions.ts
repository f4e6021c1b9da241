import { saying } from '@thrum/model/ground'
import type { ColumnDf } from '@thrum/stats'
import { togetherSaying } from './asked.ts'
import type { FitCase } from './fit-case.ts'
import { partsSaying } from './fit-case.ts'
import type { ModelFit } from './run-model.ts'
import type { ToldCaution } from './told.ts'

const note = (id: string, values: Parameters<typeof saying>[1] = {}): ToldCaution => ({
  ...{ id, severity: 'note', cure: null },
  text: saying(`questions/fit/caution/${id}`, values),
})
const warn = (id: string, values: Parameters<typeof saying>[1] = {}): ToldCaution => ({
  ...{ id, severity: 'warn' },
  text: saying(`questions/fit/caution/${id}`, values),
  cure: saying(`questions/fit/caution/${id}/cure`, values),
})

/** Lines that are named. */
const linesNamed = 5

function ofFile({ table }: FitCase): readonly ToldCaution[] {
  const told = (id: 'aside' | 'refused', lines: readonly number[]): readonly ToldCaution[] => {
    const values = { count: lines.length, lines: lines.slice(0, linesNamed).join(', ') }
    if (lines.length === 0) return []
    return [id === 'aside' ? note('aside', values) : warn('refused', values)]
  }
  return [...told('refused', table.refused), ...told('aside', table.aside)]
}

/** Columns that are the same throughout each level of a grouping: their units are its levels. */
function ofWholeUnits({ design, groupings, rows }: FitCase, df: readonly ColumnDf[]): readonly ToldCaution[] {
  const told = design.parts.flatMap((parts, j) => {
    const own = df[j]
    return parts.length > 0 && own?.units === 'levels' ? [{ parts, by: own.by }] : []
  })
  const byUnits = Map.groupBy(told, ({ by }) => by)
  return [...byUnits].map(([by, columns]) =>
    warn('whole-units', {
      columns: columns.map(({ parts }) => partsSaying(parts)),
      of: by ?? '',
      units: groupings.find(({ name }) => name === by)?.levels ?? 0,
      rows: rows.length,
    }),
  )
}

function ofFit({ asked }: FitCase, { warnings, groups }: ModelFit): readonly ToldCaution[] {
  const few = warnings.flatMap((warning): ToldCaution[] =>
    warning.kind === 'few-groups' ? [warn('few-groups', { of: warning.of, groups: warning.groups })] : [],
  )
  const others = warnings.flatMap((warning): ToldCaution[] => {
    if (warning.kind === 'perfect-correlation') return [warn('perfect-correlation', { of: warning.of })]
    if (warning.kind === 'no-extra-zeros') return [warn('no-extra-zeros')]
    if (warning.kind === 'wide-offset') return [warn('wide-offset', { fold: Number(Math.exp(warning.span).toPrecision(2)) })]
    return []
  })
  const plain = asked.family === 'poisson' || asked.family === 'binomial' ? [note('plain-family', { family: asked.family })] : []
  const full = asked.family === 'gaussian' && groups.length > 0 && !asked.reml ? [note('full-likelihood')] : []
  return [...few, ...others, ...plain, ...full]
}

function ofAsked({ asked, rows }: FitCase): readonly ToldCaution[] {
  const { slope, fixed, effort, random, zerosBy, family, isChecked } = asked
  const isCount = family === 'nb2' || family === 'nb1' || family === 'poisson'
  return [
    ...(random.length === 0 ? [note('no-grouping', { rows: rows.length })] : []),
    ...(slope !== null && !fixed.some((term) => term.includes(slope.column))
      ? [warn('slope-without-term', { slope: slope.column.name, of: togetherSaying(slope.by) })]
      : []),
    ...(isCount && effort === null && asked.offset === null ? [note('no-effort')] : []),
    ...(zerosBy === null ? [] : [note('zeros-mechanism')]),
    ...(isChecked || family === 'gaussian' ? [] : [note('unchecked')]),
  ]
}

/** What a careful person says beside the numbers. */
export function cautionsTold(own: FitCase, fit: ModelFit, df: readonly ColumnDf[]): readonly ToldCaution[] {
  return [...ofFile(own), ...ofWholeUnits(own, df), ...ofFit(own, fit), ...ofAsked(own)]
}
