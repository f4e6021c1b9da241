import type { NumberColumn, Snapshot } from '@thrum/model'

/** What can be compared per step in any project that measured it, as `survey` names it. */
const standing: { readonly [name: string]: (snapshot: Snapshot) => NumberColumn } = {
  'hive distance': ({ tables }) => tables.count.columns.hiveDistance,
  'edge distance': ({ tables }) => tables.count.columns.edgeDistance,
  stage: ({ tables }) => tables.count.columns.stage,
  temperature: ({ tables }) => tables.count.columns.temperature,
  flowers: ({ tables }) => tables.count.columns.flowers,
}

const hasNumbers = ({ values }: NumberColumn): boolean => values.some((value) => !Number.isNaN(value))

/** Hives are told per hectare: both must be known of some count. */
function hasHivesPerHectare({ tables, countField, fields }: Snapshot): boolean {
  const { values } = tables.count.columns.hives
  return values.some((hives, row) => !Number.isNaN(hives) && (fields[countField[row] ?? -1]?.hectares ?? null) !== null)
}

/** Everything that was measured and can be compared per step. */
export function measuredNames(snapshot: Snapshot): readonly string[] {
  const own = [...snapshot.tables.count.factors].flatMap(([name, column]) =>
    column.type === 'number' && hasNumbers(column) ? [name] : [],
  )
  const known = Object.keys(standing).filter((name) => hasNumbers((standing[name] as (s: Snapshot) => NumberColumn)(snapshot)))
  return [...new Set([...own, ...known, ...(hasHivesPerHectare(snapshot) ? ['hives per ha'] : [])])]
}
