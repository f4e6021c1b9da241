import {
  compareRows,
  freshRows,
  type HeldRows,
  type Mapping,
  type MendedPlan,
  matchRows,
  onlyNew,
  proposeMapping,
  readCounts,
  readSheet,
} from '@thrum/exchange'
import { mark } from '@thrum/model'
import { ThrumError, unwatched } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { numbersOf, textsOf, utf8 } from '../files.ts'

const first = `field,plot,date,start,minutes,note,honey bee,hover fly
Weir,edge,2031-05-04,09:10,10,,12,3
Weir,centre,2031-05-04,10:10,10,windy,14,-
Ings,edge,2031-05-04,11:10,10,,3-4,0
`

async function read(text: string, more: Partial<Mapping> = {}) {
  const sheet = readSheet(utf8(text))
  const mapping = { ...proposeMapping(sheet).mapping, ...more }
  return { mapping, read: await readCounts(sheet, mapping, unwatched) }
}

interface Here {
  /** Cells that a person corrected here: `row/column` or `row/kind`. */
  readonly corrected?: { readonly [cell: string]: number | string }
  readonly withdrawn?: readonly number[]
}

/** Rows of a file as a project holds them that brought it, corrected and withdrawn as told. */
async function held(text: string, { corrected = {}, withdrawn = [] }: Here = {}): Promise<HeldRows> {
  const fresh = freshRows((await read(text)).read)
  const standing = (key: string, said: ReturnType<typeof fresh.cell>) => {
    const value = corrected[key]
    return value === undefined ? said : { value, mark: mark.asWritten }
  }
  return {
    project: 'project of the test',
    rows: fresh.rows,
    columns: fresh.columns,
    address: (row) => `first#${row}`,
    line: (row) => fresh.line(row),
    isWithdrawn: (row) => withdrawn.includes(row),
    forgotten: () => null,
    said: (row, column) => fresh.cell(row, column),
    stands: (row, column) => standing(`${row}/${column}`, fresh.cell(row, column)),
    tallies: (row) =>
      fresh.tallies(row).map(({ label, row: tally, cell }) => ({
        label,
        address: `tally#${tally}`,
        said: cell,
        stands: standing(`${row}/${label}`, cell),
        isWithdrawn: false,
      })),
  }
}

async function planOf(mended: string, here: Here = {}, more: Partial<Mapping> = {}): Promise<MendedPlan> {
  const { read: own, mapping } = await read(mended, more)
  const rows = await held(first, here)
  const fresh = freshRows(own)
  return compareRows(fresh, rows, matchRows(fresh, rows, mapping))
}

const told = ({ changed }: Pick<MendedPlan, 'changed'>): readonly string[] =>
  changed.map(
    ({ line, label, column, from, to }) =>
      `${line} ${label ?? column}: ${from.written ?? from.value} → ${to.written ?? to.value}`,
  )
const line = (k: number): string => first.split('\n')[k] ?? ''

describe('a mended file', () => {
  it('identity: the same rows in another order add nothing', async () => {
    const plan = await planOf([line(0), line(3), line(1), line(2), ''].join('\n'))
    expect(plan).toMatchObject({ equal: 3, changed: [], kept: [], added: [], addedTallies: [], gone: [], goneTallies: [] })
    expect(plan.key).toEqual(['field', 'plot', 'date', 'start'])
    expect(plan.lines.map(({ line: own, address }) => `${own} ${address}`)).toEqual(['2 first#2', '3 first#0', '4 first#1'])
  })

  it('changed cells are told one by one, with what stood there and the line of the new file', async () => {
    const plan = await planOf(first.replace('09:10,10,,12', '09:10,12,,13').replace('3-4', '3').replace('windy', 'calm'))
    expect(told(plan)).toEqual(['2 minutes: 10 → 12', '2 honey bee: 12 → 13', '3 note: windy → calm', '4 honey bee: 3-4 → 3'])
    expect(plan.equal).toBe(0)
  })

  it('a cell that was emptied, or became vague, is a change too; never a zero', async () => {
    const plan = await planOf(first.replace(',12,3', ',,ca. 3').replace('windy', ''))
    expect(told(plan)).toEqual(['2 honey bee: 12 → null', '2 hover fly: 3 → 3', '3 note: windy → null'])
    expect(plan.changed.map(({ to }) => to.mark)).toEqual([mark.notLookedFor, mark.approximate, mark.asWritten])
  })

  it('new rows are new, and rows that are gone are listed', async () => {
    const plan = await planOf([line(0), line(1), line(2), 'Oxlea,edge,2031-05-06,09:00,10,,7,1', ''].join('\n'))
    expect(plan.added).toEqual([2])
    expect(plan.gone).toEqual([{ address: 'first#2', line: 4 }])
  })

  it('a column of another kind brings tallies to rows that are there; one that left is listed', async () => {
    const added = await planOf(
      first.replaceAll(/(hover fly|\d|-|0)$/gmu, (end) => `${end},${end === 'hover fly' ? 'bumble bee' : '2'}`),
    )
    expect(added.addedTallies.map(({ of, label }) => `${of} ${label}`)).toEqual([
      'first#0 bumble bee',
      'first#1 bumble bee',
      'first#2 bumble bee',
    ])
    const gone = await planOf(first.replaceAll(/,[^,\n]*$/gmu, ''))
    expect(gone.goneTallies.map(({ label }) => label)).toEqual(['hover fly', 'hover fly', 'hover fly'])
  })

  it('what a person corrected here stays: unsaid where the file left it, told where the file changed it too', async () => {
    const here = { corrected: { '0/honey bee': 21, '1/minutes': 15 } }
    expect(await planOf(first, here)).toMatchObject({ equal: 3, changed: [], kept: [] })
    const plan = await planOf(first.replace(',12,3', ',13,3'), here)
    expect(plan.changed).toEqual([])
    expect(told({ changed: plan.kept })).toEqual(['2 honey bee: 21 → 13'])
    // The file now says what the person said.
    expect(await planOf(first.replace(',12,3', ',21,3'), here)).toMatchObject({ changed: [], kept: [] })
  })

  it('a corrected key matches as it was and as it is', async () => {
    const here = { corrected: { '2/field': 'Ings North' } }
    expect(await planOf(first, here)).toMatchObject({ equal: 3, added: [], gone: [] })
    expect(await planOf(first.replace('Ings', 'Ings North'), here)).toMatchObject({ added: [], gone: [], changed: [] })
  })

  it('a row that was withdrawn here stays withdrawn', async () => {
    const plan = await planOf(first.replace(',12,3', ',99,3'), { withdrawn: [0] })
    expect(plan).toMatchObject({ withdrawnLines: [2], changed: [], added: [], gone: [] })
  })

  it('rows that share their key cannot be matched: which lines, and what to do', async () => {
    const twice = `${first}Ings,edge,2031-05-04,11:10,10,,9,9\n`
    const failure = await planOf(twice, {}, { key: ['field', 'plot', 'date', 'start'] }).catch((cause: unknown) => cause)
    expect(failure).toMatchObject({ code: 'exchange/mended/key-not-unique', values: { lines: '4, 5' } })
    expect(await planOf(twice).catch((cause: unknown) => cause)).toMatchObject({ code: 'exchange/mended/no-key' })
    expect(await planOf(first, {}, { key: ['mood'] }).catch((cause: unknown) => cause)).toBeInstanceOf(ThrumError)
  })

  it('an id that begins again in every file is no key', async () => {
    const numbered = (days: string): string =>
      `visit id,field,date,minutes,honey bee\n${[1, 2, 3].map((k) => `${k},Weir ${days} ${k},2031-05-${days}${k},10,${k}`).join('\n')}\n`
    const rows = await held(numbered('0'))
    const { read: own, mapping } = await read(numbered('1'))
    const fresh = freshRows(own)
    expect(matchRows(fresh, rows, mapping).key).toEqual(['field', 'date'])
    expect(matchRows(fresh, rows, mapping).gone).toHaveLength(3)
  })
})

describe('what a mended file brings', () => {
  it('only new rows, with their tallies and what of them waits, and the lines of those held', async () => {
    const text = `${first}Oxlea,edge,2031-05-06,09:00,10,,lots,1\n`
    const { read: own, mapping } = await read(text)
    const rows = await held(first)
    const fresh = freshRows(own)
    const tables = onlyNew(own, compareRows(fresh, rows, matchRows(fresh, rows, mapping)), () => false)
    expect(textsOf(tables.count, 'field')).toEqual(['Oxlea'])
    expect(numbersOf(tables.tally, 'count')).toEqual([0, 0])
    expect(numbersOf(tables.tally, 'number')).toEqual([null, 1])
    expect(textsOf(tables.setAside, 'written')).toEqual(['lots'])
    expect(numbersOf(tables.setAside, 'row')).toEqual([0])
    expect(numbersOf(tables.heldLine, 'line')).toEqual([2, 3, 4])
    expect(numbersOf(tables.heldLine, 'row')).toEqual([0, 1, 2])
  })

  it('tallies that are new in rows held name their count by its address', async () => {
    const text = first.replaceAll(/(hover fly|\d|-|0)$/gmu, (end) => `${end},${end === 'hover fly' ? 'bumble bee' : '2'}`)
    const { read: own, mapping } = await read(text)
    const rows = await held(first)
    const fresh = freshRows(own)
    const tables = onlyNew(own, compareRows(fresh, rows, matchRows(fresh, rows, mapping)), () => false)
    expect(tables.count).toEqual([])
    expect(textsOf(tables.tally, 'of')).toEqual(['first#0', 'first#1', 'first#2'])
    expect(numbersOf(tables.tally, 'count')).toEqual([null, null, null])
    expect(textsOf(tables.tally, 'kind')).toEqual(['bumble bee', 'bumble bee', 'bumble bee'])
  })
})
