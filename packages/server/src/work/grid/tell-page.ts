import type { Project } from '@thrum/host'
import { mark, markName } from '@thrum/model'
import type { CountsColumn, CountsPage } from '../../api/counts.ts'
import type { PageAsked } from '../../thread/protocol.ts'
import type { Desk } from '../desk.ts'
import { filterRows } from './filter-rows.ts'
import { buildGrid, type GridColumn } from './grid.ts'
import { orderRows } from './order-rows.ts'

/** A page before its sentences have their texts beside them. */
interface PageMade extends Omit<CountsPage, 'columns'> {
  readonly columns: readonly (Omit<CountsColumn, 'title'> & Pick<GridColumn, 'title'>)[]
}

function columnTold(column: GridColumn, rows: readonly number[]): PageMade['columns'][number] {
  const { name, title, type, unit } = column
  const codes = rows.map((row) => column.markOf(row))
  return {
    name,
    title,
    type,
    unit,
    values: rows.map((row) => column.cell(row)),
    marks: codes.every((code) => code === mark.asWritten) ? null : codes.map((code) => markName(code) ?? 'asWritten'),
  }
}

/** A page of the counts as columns. The grid is built once for each state of the data. */
export async function tellPage(
  desk: Desk,
  project: Project,
  { offset, limit, sort, filters, addresses }: PageAsked,
): Promise<PageMade> {
  const snapshot = await project.snapshot()
  const grid = desk.once('grid', snapshot, () => buildGrid(snapshot))
  const passed = orderRows(grid, filterRows(grid, filters, addresses), sort)
  const rows = [...passed.subarray(offset, offset + limit)]
  return {
    digest: snapshot.digest,
    total: passed.length,
    offset,
    rows: rows.map((row) => grid.address(row)),
    lines: rows.map((row) => grid.line(row)),
    columns: grid.columns.map((column) => columnTold(column, rows)),
  }
}
