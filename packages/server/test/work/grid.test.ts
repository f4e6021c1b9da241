import { join } from 'node:path'
import { createDemonstration, openProject } from '@thrum/host'
import { describe, expect, it, onTestFinished } from 'vitest'
import { filterRows } from '../../src/work/grid/filter-rows.ts'
import { buildGrid, type Grid } from '../../src/work/grid/grid.ts'
import { orderRows } from '../../src/work/grid/order-rows.ts'
import { testFolder } from '../serving.ts'

async function demonstrationGrid(): Promise<Grid> {
  const path = join(testFolder(), 'vale.thrum')
  await createDemonstration(path)
  const project = await openProject(path, 'read')
  onTestFinished(() => project.close())
  return buildGrid(await project.snapshot())
}

const columnOf = (grid: Grid, name: string) => {
  const found = grid.columns.find((column) => column.name === name)
  if (found === undefined) throw new Error(`no column ${name}`)
  return found
}
const cells = (grid: Grid, name: string, rows: Int32Array) => Array.from(rows, (row) => columnOf(grid, name).cell(row))

describe('the grid of counts', () => {
  it('has the kinds as columns, the most counted first, and nothing that says nothing', async () => {
    const grid = await demonstrationGrid()
    const tallies = grid.columns.filter(({ type }) => type === 'tally').map(({ name }) => name)
    expect(tallies.slice(0, 2)).toEqual(['bumble bee', 'honey bee'])
    expect(grid.rows).toBe(160)
    for (const column of grid.columns.filter(({ type }) => type !== 'tally'))
      expect(
        Array.from({ length: grid.rows }, (_, row) => column.cell(row)).some((cell) => cell !== null),
        column.name,
      ).toBe(true)
  })

  it('filters by equality, part, size, date, time and emptiness; all must hold', async () => {
    const grid = await demonstrationGrid()
    const passed = (...filters: readonly string[]) => filterRows(grid, filters, null)
    expect(passed().length).toBe(160)
    const cherry = passed('crop=sweet cherry')
    expect(new Set(cells(grid, 'crop', cherry))).toEqual(new Set(['sweet cherry']))
    expect(passed('crop!=sweet cherry').length + cherry.length).toBe(160)
    expect(passed('crop~CHERRY')).toEqual(cherry)
    const many = cells(grid, 'honey bee', passed('honey bee>20')) as number[]
    expect(Math.min(...many)).toBeGreaterThan(20)
    expect(passed('honey bee>20').length + passed('honey bee<=20').length).toBe(160)
    for (const date of cells(grid, 'date', passed('date>=2032-01-01'))) expect(String(date) >= '2032').toBe(true)
    for (const time of cells(grid, 'start', passed('start<12:00'))) expect(String(time) < '12:00').toBe(true)
    expect(passed('crop=sweet cherry', 'honey bee>20').length).toBeLessThan(many.length)
    expect(passed('field=').length).toBe(0)
    expect(passed('honey bee=asWritten').length + passed('honey bee!=asWritten').length).toBe(160)
  })

  it('orders both ways, empty cells last, equal rows as they were', async () => {
    const grid = await demonstrationGrid()
    const all = filterRows(grid, [], null)
    const bees = cells(grid, 'honey bee', orderRows(grid, all, 'honey bee')) as number[]
    expect(bees).toEqual(bees.toSorted((a, b) => a - b))
    expect(cells(grid, 'honey bee', orderRows(grid, all, '-honey bee'))).toEqual(bees.toReversed())
    const fields = orderRows(grid, all, 'field')
    for (let k = 1; k < fields.length; k++) {
      const [a, b] = [fields[k - 1] ?? 0, fields[k] ?? 0]
      if (columnOf(grid, 'field').cell(a) === columnOf(grid, 'field').cell(b)) expect(a).toBeLessThan(b)
    }
    expect(orderRows(grid, all, null)).toEqual(all)
  })

  it('finds rows by their addresses, and by those of their tallies', async () => {
    const grid = await demonstrationGrid()
    const some = [3, 77, 5].map((row) => grid.address(row))
    expect([...filterRows(grid, [], some)]).toEqual([3, 5, 77])
    expect([...filterRows(grid, [], ['nowhere#1'])]).toEqual([])
    expect([...filterRows(grid, [], [])]).toEqual([])
  })

  it('says which columns there are where one is not known, and what a number is', async () => {
    const grid = await demonstrationGrid()
    for (const filter of ['never=1', 'crop', '']) {
      expect(() => filterRows(grid, [filter], null)).toThrow(/server\/counts\/no-such-column/u)
    }
    expect(() => filterRows(grid, ['honey bee>many'], null)).toThrow(/server\/counts\/not-a-number/u)
    expect(() => filterRows(grid, ['date>soon'], null)).toThrow(/server\/counts\/not-a-number/u)
    expect(() => orderRows(grid, new Int32Array(), 'never')).toThrow(/server\/counts\/no-such-column/u)
  })
})
