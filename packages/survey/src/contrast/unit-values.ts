import { logOdds, logRate } from '@thrum/stats'
import type { Design } from '../design/design.ts'
import type { Cell } from './cells.ts'

/** One number a cell: log rate of a kind, or log odds of one kind against another in the same watches. */
export interface CellValue {
  readonly field: number
  readonly side: number
  readonly z: number
  /** Totals that make z: one for a rate, two for a relative count. */
  readonly totals: readonly number[]
}

export function rateValues(cells: readonly Cell[]): readonly CellValue[] {
  return cells.map(({ field, side, total, effort }) => ({ field, side, z: logRate(total, effort), totals: [total] }))
}

/** Relative counts (methods 2.9a): both kinds over the counts in which both were looked for. */
export function oddsValues(ofKind: readonly Cell[], ofOther: readonly Cell[]): readonly CellValue[] {
  const other = new Map(ofOther.map((cell) => [`${cell.field}/${cell.side}`, cell]))
  return ofKind.flatMap(({ field, side, total }) => {
    const against = other.get(`${field}/${side}`)
    return against === undefined ? [] : [{ field, side, z: logOdds(total, against.total), totals: [total, against.total] }]
  })
}

/** Independent units of a contrast: one row each. */
export interface Units {
  readonly layout: 'between' | 'within'
  /** z of a field, or of its two sides. */
  readonly z: readonly number[]
  /** For pairs and before/after: the first side; then `z` is the difference. */
  readonly level: readonly number[]
  readonly block: readonly number[]
  /** Positions in the design's fields. */
  readonly fields: readonly number[]
  readonly totals: readonly number[]
}

/** Fields with both sides, as differences second less first. */
function differences(
  values: readonly CellValue[],
  second: number,
): readonly { readonly field: number; readonly d: number; readonly totals: readonly number[] }[] {
  const first = new Map(values.filter(({ side }) => side === 0).map((value) => [value.field, value]))
  return values
    .filter(({ side }) => side === second)
    .flatMap((value) => {
      const from = first.get(value.field)
      return from === undefined ? [] : [{ field: value.field, d: value.z - from.z, totals: [...from.totals, ...value.totals] }]
    })
}

/** Fields as units for the level against the reference; before/after and pairs as differences. */
export function unitsOf(design: Design, values: readonly CellValue[], level: number): Units {
  const own = (field: number) => design.fields[field]
  if (design.structure === 'between-fields') {
    return {
      layout: 'between',
      z: values.map(({ z }) => z),
      level: values.map(({ side }) => side),
      block: values.map(({ field }) => own(field)?.block ?? 0),
      fields: values.map(({ field }) => field),
      totals: values.flatMap(({ totals }) => totals),
    }
  }
  const pairs = differences(values, design.structure === 'within-fields' ? level : 1)
  const controlled = design.structure === 'before-after-control'
  return {
    layout: controlled ? 'between' : 'within',
    z: pairs.map(({ d }) => d),
    level: pairs.map(({ field }) => (controlled ? (own(field)?.level ?? -1) : 0)),
    block: pairs.map(({ field }) => own(field)?.block ?? 0),
    fields: pairs.map(({ field }) => field),
    totals: pairs.flatMap(({ totals }) => totals),
  }
}
