import { describe, expect, it } from 'vitest'
import { findColumn, isTableName, mark, numberAt, numberColumn, type TextColumn, textAt, textColumn } from '../../src/index.ts'
import { buildTable, changeCells, keepRows } from '../../src/tables/table-builder.ts'
import { type Cells, columnsOf } from '../made-log.ts'

const block = (source: string, cells: Cells) => ({
  source,
  rows: Object.values(cells)[0]?.length ?? 0,
  columns: columnsOf(cells),
})
const texts = (column: unknown): readonly (string | null)[] =>
  Array.from((column as TextColumn).codes, (_, row) => textAt(column as TextColumn, row))

describe('buildTable', () => {
  it('a column that a block lacks is not looked for in its rows, never zero', () => {
    const table = buildTable('count', [block('a', { field: ['Weir'], flowers: [200] }), block('b', { field: ['Ings', 'Weir'] })])
    const { flowers, field } = table.columns
    expect([Array.from(flowers.values), Array.from(flowers.marks ?? [])]).toEqual([
      [200, Number.NaN, Number.NaN],
      [mark.asWritten, mark.notLookedFor, mark.notLookedFor],
    ])
    expect(texts(field)).toEqual(['Weir', 'Ings', 'Weir'])
    expect(numberAt(flowers, 1)).toBeNull()
  })

  it('what no declaration names is a factor; numbers in one file and texts in another become texts', () => {
    const table = buildTable('count', [
      block('a', { field: ['Weir', 'Ings'], soil: ['clay', null], height: [1.5, null] }),
      block('b', { field: ['Weir'], height: ['tall'] }),
    ])
    expect([...table.factors.keys()]).toEqual(['soil', 'height'])
    expect(texts(findColumn(table, 'soil'))).toEqual(['clay', null, null])
    expect(texts(findColumn(table, 'height'))).toEqual(['1.5', null, 'tall'])
    expect(findColumn(table, 'toString')).toBeUndefined()
    expect(isTableName('toString')).toBe(false)
  })

  it('a declared column of the wrong type is left out, not misread', () => {
    const table = buildTable('count', [block('a', { field: ['Weir'], minutes: ['ten'] })])
    expect(numberAt(table.columns.minutes, 0)).toBeNull()
  })

  it('changes share what they do not touch and leave the old table as it was', () => {
    const table = buildTable('count', [block('a', { field: ['Weir', 'Ings'], minutes: [10, 12] })])
    const changed = changeCells(table, [{ row: 1, column: 'minutes', to: 15, mark: mark.approximate }])
    expect(changed.columns.field).toBe(table.columns.field)
    expect(Array.from(table.columns.minutes.values)).toEqual([10, 12])
    expect(Array.from(changed.columns.minutes.values)).toEqual([10, 15])
    expect(changeCells(table, [])).toBe(table)
  })

  it('rows that are kept keep their cells, marks and addresses', () => {
    const table = buildTable('count', [block('a', { field: ['Weir', 'Ings', 'Weir'], minutes: [10, null, 12] })])
    const { table: kept, newRow } = keepRows(table, Uint8Array.of(0, 1, 1))
    expect(Array.from(newRow)).toEqual([-1, 0, 1])
    expect([kept.rows, texts(kept.columns.field), Array.from(kept.rowInSource)]).toEqual([2, ['Ings', 'Weir'], [1, 2]])
    expect(Array.from(kept.columns.minutes.marks ?? [])).toEqual([mark.notLookedFor, mark.asWritten])
    expect(keepRows(table, Uint8Array.of(1, 1, 1)).table).toBe(table)
  })
})

describe('columns of cells', () => {
  it('null is not looked for among numbers, and nothing written among texts', () => {
    expect(numberColumn([1, null]).marks).toEqual(Uint8Array.of(mark.asWritten, mark.notLookedFor))
    expect(numberColumn([1, 0]).marks).toBeNull()
    expect(textColumn(['a', null, 'a', ''])).toEqual({ type: 'text', codes: Int32Array.of(0, -1, 0, 1), dictionary: ['a', ''] })
  })
})
