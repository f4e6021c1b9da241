import { kindClasses } from '@thrum/biology'
import { mark, markAt, numberAt, type Snapshot, textAt } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { durationsDiffer, effortUnknown } from '../audit/effort.ts'
import { byGravity, type Finding } from '../audit/finding.ts'
import { saturatedCounts, unsettledRecords, zerosMissing } from '../audit/records.ts'
import { isOutsideBloom } from '../design/bloom.ts'
import { watchedMinutes } from '../design/effort.ts'
import { classOf, kindSet } from '../selection/kind-set.ts'

type Rule = (snapshot: Snapshot, rows: readonly number[]) => readonly Finding[]

const found = (code: string, severity: Finding['severity'], rows: readonly number[], of: number): readonly Finding[] =>
  rows.length === 0
    ? []
    : [
        {
          code,
          severity,
          text: saying(`survey/check/${code}`, { counts: rows.length, of }),
          rows,
          cure: saying(`survey/check/${code}/cure`),
        },
      ]

const nothingCounted: Rule = (_, rows) =>
  rows.length > 0
    ? []
    : [
        {
          code: 'no-counts',
          severity: 'block',
          text: saying('survey/check/no-counts'),
          rows: [],
          cure: saying('survey/check/no-counts/cure'),
        },
      ]

const cellsWaiting: Rule = ({ tables, tallyCount }) => {
  const { number } = tables.tally.columns
  const rows = Array.from(tallyCount).filter((_, tally) => markAt(number, tally) === mark.waiting)
  return found('cells-waiting', 'warn', [...new Set(rows)], tables.count.rows)
}

const withoutField: Rule = ({ tables, countField }, rows) =>
  found(
    'no-field',
    'warn',
    rows.filter((row) => (countField[row] ?? -1) < 0),
    tables.count.rows,
  )

const withoutDate: Rule = ({ tables }, rows) =>
  found(
    'no-date',
    'warn',
    rows.filter((row) => numberAt(tables.count.columns.date, row) === null),
    tables.count.rows,
  )

const withoutStage: Rule = ({ tables }, rows) =>
  found(
    'no-stage',
    'note',
    rows.filter((row) => numberAt(tables.count.columns.stage, row) === null),
    tables.count.rows,
  )

const withoutFlowers: Rule = ({ tables }, rows) =>
  found(
    'no-flowers',
    'note',
    rows.filter((row) => numberAt(tables.count.columns.flowers, row) === null),
    tables.count.rows,
  )

const withoutWeather: Rule = ({ tables }, rows) => {
  const { temperature, wind } = tables.count.columns
  return found(
    'no-weather',
    'note',
    rows.filter((row) => numberAt(temperature, row) === null && numberAt(wind, row) === null),
    tables.count.rows,
  )
}

/** A watch cannot last longer than a day, nor end before it starts. */
const impossibleTimes: Rule = ({ tables }, rows) => {
  const { start, end } = tables.count.columns
  return found(
    'impossible-times',
    'block',
    rows.filter((row) => (end.values[row] ?? Number.NaN) < (start.values[row] ?? Number.NaN)),
    tables.count.rows,
  )
}

/** Two counts at one plot, day and start by one observer: entered twice, most likely. */
const enteredTwice: Rule = ({ tables }, rows) => {
  const { field, plot, observer, date, start } = tables.count.columns
  const known = rows.filter((row) => numberAt(date, row) !== null && numberAt(start, row) !== null)
  const groups = Map.groupBy(known, (row) =>
    [textAt(field, row), textAt(plot, row), textAt(observer, row), date.values[row], start.values[row]].join('\n'),
  )
  return found('entered-twice', 'warn', [...groups.values()].filter((group) => group.length > 1).flat(), tables.count.rows)
}

/** Counts at stages at which hardly any flower is open, or none (methods 1.4). */
const outsideBloom: Rule = (snapshot, rows) =>
  found(
    'outside-bloom',
    'note',
    rows.filter((row) => isOutsideBloom(snapshot, row)),
    snapshot.tables.count.rows,
  )

/** A general kind beside one it may hold ("bumble bee" beside "Bombus terrestris"): is it their sum, or the rest? */
const kindsMixed: Rule = (snapshot, rows) => {
  const { kinds, tallyKind } = snapshot
  const counted = [...new Set(tallyKind)]
  const named = (kind: number): string => (kinds[kind]?.taxon ?? kinds[kind]?.name ?? '').toLowerCase()
  const isGeneral = (kind: number): boolean =>
    kindClasses.some((name) => name.replaceAll('-', ' ') === named(kind)) || !named(kind).includes(' ')
  const holds = (general: number, other: number): boolean =>
    named(other).startsWith(`${named(general)} `) ||
    (classOf(snapshot, general) === classOf(snapshot, other) && classOf(snapshot, general) !== 'other')
  const pairs = counted.flatMap((general) =>
    isGeneral(general)
      ? counted
          .filter((other) => other !== general && !isGeneral(other) && holds(general, other))
          .map((other) => ({ general, other }))
      : [],
  )
  if (pairs.length === 0) return []
  const names = [...new Set(pairs.flatMap(({ general, other }) => [kinds[general]?.name ?? '', kinds[other]?.name ?? '']))]
  return [
    {
      code: 'kinds-mixed',
      severity: 'note',
      text: saying('survey/check/kinds-mixed', { kinds: names.join(', ') }),
      rows,
      cure: saying('survey/check/kinds-mixed/cure'),
    },
  ]
}

const unitNotSaid: Rule = ({ tables }, rows) =>
  found(
    'unit-not-said',
    'note',
    rows.filter((row) => textAt(tables.count.columns.unit, row) === null),
    tables.count.rows,
  )

const placesUnknown: Rule = ({ fields, tables, countField }) => {
  const lacking = new Set(fields.flatMap((field, k) => (field.point === null && field.polygon === null ? [k] : [])))
  return found(
    'no-place',
    'note',
    Array.from({ length: tables.count.rows }, (_, row) => row).filter((row) => lacking.has(countField[row] ?? -1)),
    tables.count.rows,
  )
}

/** Watches that last: a scan is one instant and has no minutes to lack. */
const lasting = ({ tables }: Snapshot, rows: readonly number[]): readonly number[] =>
  rows.filter((row) => textAt(tables.count.columns.unit, row) !== 'snapshot')

const rules: readonly Rule[] = [
  nothingCounted,
  (snapshot, rows) => effortUnknown(snapshot, lasting(snapshot, rows), false),
  (snapshot, rows) => zerosMissing(snapshot, rows),
  impossibleTimes,
  cellsWaiting,
  withoutField,
  withoutDate,
  enteredTwice,
  (snapshot, rows) =>
    durationsDiffer(
      snapshot,
      lasting(snapshot, rows).filter((row) => watchedMinutes(snapshot, row) > 0),
      false,
    ),
  (snapshot, rows) =>
    saturatedCounts(
      snapshot,
      rows,
      snapshot.kinds.map(({ name }) => kindSet(snapshot, name)),
    ),
  outsideBloom,
  kindsMixed,
  withoutStage,
  withoutWeather,
  withoutFlowers,
  unitNotSaid,
  placesUnknown,
  unsettledRecords,
]

/** What is missing or implausible in the counts of a project, whatever will be asked of it; the gravest first. */
export function checkCounts(snapshot: Snapshot): readonly Finding[] {
  const rows = Array.from({ length: snapshot.tables.count.rows }, (_, row) => row)
  return byGravity(rules.flatMap((rule) => rule(snapshot, rows)))
}
