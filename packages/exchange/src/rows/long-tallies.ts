import { ThrumError } from '@thrum/model/ground'
import { plainName } from '../cell/plain-name.ts'
import { type Reading, valueOfReading } from '../cell/reading.ts'
import type { Mapping } from '../mapping/shape.ts'
import type { AsideWriter } from './aside-writer.ts'
import { type CellSource, constantSource, countSource, type NumberHabits } from './cell-source.ts'
import type { RowGroups } from './group-rows.ts'
import type { MappedColumns } from './mapped-columns.ts'
import type { ShownWriter } from './number-cells.ts'
import type { RowOut } from './row-decisions.ts'
import { sumReadings } from './sum-readings.ts'
import { createTallyWriter, type TallyGroup, type TallyWriter } from './tally-writer.ts'
import { type TextSource, textSource } from './text-cells.ts'

/** Words in the column of kinds for a watch in which nothing came. */
const nothingSeen = /^(?:none|nothing|no (?:bees|insects|visitors|visits)|nil|keine?|inga|ingen|ninguno|aucun|-|0)$/iu

/** Who and how many, row by row, in a long table. */
export interface LongTallySource {
  readonly kind: TextSource
  readonly caste: TextSource | null
  readonly behaviour: TextSource | null
  readonly number: CellSource
  /** False where each row is one sighting. */
  readonly counted: boolean
}

/** @throws ThrumError exchange/sheet/no-tally-column */
export function longTallySource(columns: MappedColumns, mapping: Mapping, habits: NumberHabits): LongTallySource {
  const kind = columns.one('kind')
  const number = columns.one('number')
  const constant = mapping.constants?.kind
  if (kind === undefined && constant === undefined) throw new ThrumError('exchange/sheet/no-tally-column')
  const text = (role: 'caste' | 'behaviour'): TextSource | null => {
    const column = columns.one(role)
    return column === undefined ? null : textSource(role, column)
  }
  return {
    kind:
      kind === undefined
        ? { column: 'kind', header: 'kind', words: [plainName(constant ?? '')], codeAt: () => 0 }
        : textSource('kind', kind),
    caste: text('caste'),
    behaviour: text('behaviour'),
    number: number === undefined ? constantSource('1', 1) : countSource(number, mapping, habits),
    counted: number !== undefined,
  }
}

/** True where a row says that nothing was seen: the watch stands, without a tally of its own. */
export function saysNothing(source: LongTallySource, row: number): boolean {
  const kind = source.kind.words[source.kind.codeAt(row)]
  const none = !source.counted || !(valueOfReading(source.number.at(row)) > 0)
  return kind === undefined ? source.counted && none : nothingSeen.test(kind) && none
}

/** Rows that count somebody without saying whom. */
export function rowsWithoutKind(source: LongTallySource, rows: number): ReadonlyMap<number, RowOut> {
  const found = new Map<number, RowOut>()
  const nobody = source.kind.words.map((word) => nothingSeen.test(word))
  for (let row = 0; row < rows; row++) {
    const code = source.kind.codeAt(row)
    if (code >= 0 && nobody[code] !== true) continue
    if (!saysNothing(source, row)) found.set(row, { state: 'refused', because: 'exchange/row/no-kind', values: {} })
  }
  return found
}

interface Parts {
  readonly group: number
  readonly rows: number[]
}

/** A tally for each watch and kind that has a row; zeros for the others where the mapping says that none means none. */
export function longTallies(
  source: LongTallySource,
  groups: RowGroups,
  mapping: Mapping,
  lineOf: (row: number) => number,
  unit: string,
  aside: AsideWriter,
  shown: ShownWriter,
): TallyWriter {
  const tallyGroups: TallyGroup[] = []
  const groupOf = new Map<string, number>()
  const codesOf = (row: number): number => {
    const kind = source.kind.codeAt(row)
    const caste = source.caste?.codeAt(row) ?? -1
    const behaviour = source.behaviour?.codeAt(row) ?? -1
    const key = `${kind}/${caste}/${behaviour}`
    const known = groupOf.get(key)
    if (known !== undefined) return known
    const group = {
      kind: source.kind.words[kind] ?? '',
      caste: source.caste?.words[caste],
      behaviour: source.behaviour?.words[behaviour],
    }
    groupOf.set(key, tallyGroups.length)
    return tallyGroups.push(group) - 1
  }
  for (const row of groups.rows) if (!saysNothing(source, row)) codesOf(row)
  // Kinds that only lines of nothing name are no kinds; a kind of its own without caste is what absent kinds are filled as.
  const kinds = [...new Set(tallyGroups.map(({ kind }) => kind))]
  const plainGroup = kinds.map((kind) => {
    const known = tallyGroups.findIndex(
      (group) => group.kind === kind && group.caste === undefined && group.behaviour === undefined,
    )
    return known >= 0 ? known : tallyGroups.push({ kind }) - 1
  })
  const writer = createTallyWriter(tallyGroups, unit, aside, groups.rows.length)
  const watches = groups.offsets.length - 1
  const zero: Reading = { kind: 'number', written: '', value: 0 }
  for (let watch = 0; watch < watches; watch++) {
    const parts = new Map<number, Parts>()
    const rows = groups.rows.subarray(groups.offsets[watch], groups.offsets[watch + 1])
    for (const row of rows) {
      if (saysNothing(source, row)) continue
      const group = codesOf(row)
      const known = parts.get(group)
      if (known === undefined) parts.set(group, { group, rows: [row] })
      else known.rows.push(row)
    }
    for (const { group, rows: of } of parts.values()) {
      const readings = of.map((row) => source.number.at(row))
      for (const reading of readings) shown.see(source.number.header, reading)
      const reading = sumReadings(readings)
      const at = Math.max(0, readings.indexOf(reading))
      const others = readings.reduce((sum, part, k) => (k === at || !('value' in part) ? sum : sum + part.value), 0)
      const where = { header: source.number.header, line: lineOf(of[at] ?? 0), ownLine: true }
      writer.put(group, watch, reading, of.length === 1 ? where : { ...where, others })
    }
    if (mapping.absent === 'none-seen') {
      const seen = new Set([...parts.keys()].map((group) => tallyGroups[group]?.kind))
      kinds.forEach((kind, k) => {
        if (!seen.has(kind)) writer.put(plainGroup[k] ?? 0, watch, zero, { header: kind, line: 0, ownLine: false })
      })
    }
  }
  return writer
}
