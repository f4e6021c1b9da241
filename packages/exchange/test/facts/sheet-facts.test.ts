import { type Mapping, sheetFacts, sheetId } from '@thrum/exchange'
import { createLogicalClock, type Fact, foldFacts } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { extractBytes, extractMapping, readBoth, total, utf8 } from '../files.ts'

const author = (device: string, at: number) => ({
  by: 'K1',
  device,
  clock: createLogicalClock({ now: () => at, monotonic: () => at, zone: () => 'UTC' }, device),
})

async function factsOf(bytes: Uint8Array, mapping: Mapping, device: string, at: number, file = 'counts.csv'): Promise<Fact[]> {
  const { read } = await readBoth(bytes, mapping)
  return [...sheetFacts({ project: 'project-of-a-test', file, bytes, mapping, read, author: author(device, at) })]
}

const osr = extractBytes('osr-sweden-2013/pollinators.txt')
const osrMapping = extractMapping('osr-sweden-2013/mapping.json')

describe('sheetFacts', () => {
  it('identity: the same file on two machines is the same facts', async () => {
    const here = await factsOf(osr, osrMapping, 'here', 1_700_000_000_000)
    const there = await factsOf(osr, osrMapping, 'there', 1_800_000_000_000, 'copy of counts.csv')
    expect(there.map(({ id }) => id)).toEqual(here.map(({ id }) => id))
    expect(there.map(({ data }) => data)).toEqual(here.map(({ data }) => data))
    expect(foldFacts([...here, ...there]).digest).toBe(foldFacts(here).digest)
    expect(foldFacts([...there, ...here]).tables.count.rows).toBe(240)
  })

  it('another mapping, another project or other bytes are another sheet', () => {
    const hash = 'a'.repeat(64)
    const ids = [
      sheetId('project-1', hash, osrMapping),
      sheetId('project-2', hash, osrMapping),
      sheetId('project-1', 'b'.repeat(64), osrMapping),
      sheetId('project-1', hash, { ...osrMapping, constants: { ...osrMapping.constants, unit: 'visits' } }),
    ]
    expect(new Set(ids).size).toBe(4)
  })

  it('begins with the sheet, ends with its acceptance, and every fact is about the sheet', async () => {
    const facts = await factsOf(osr, osrMapping, 'here', 1_700_000_000_000)
    expect(facts.map(({ kind }) => kind)).toEqual([
      'sheet-read',
      'factor-described',
      'rows-brought',
      'rows-brought',
      'sheet-accepted',
    ])
    expect(new Set(facts.map(({ subject }) => subject)).size).toBe(1)
    expect(facts.at(-1)?.body).toMatchObject({ batches: 2 })
  })

  it('identity: folded, the tallies sum to what was read and stand with their counts', async () => {
    const snapshot = foldFacts(await factsOf(osr, osrMapping, 'here', 1_700_000_000_000))
    const { tally, count } = snapshot.tables
    const honey = snapshot.kinds.findIndex(({ name }) => name === 'honey bee')
    const sum = Array.from(tally.columns.number.values).filter((_, row) => snapshot.tallyKind[row] === honey)
    expect(total(sum)).toBe(122)
    expect(count.columns.season.dictionary).toEqual(['2013'])
    expect(snapshot.assigned.get('treatment')).toBe('not known')
    expect(Array.from(snapshot.tallyCount).every((row) => row >= 0 && row < 240)).toBe(true)
    // First line of the file: one honey bee at an edge plot of site_1.
    expect(snapshot.tables.count.columns.line.values[0]).toBe(2)
  })

  it('identity: a sheet longer than a batch folds to the same rows', async () => {
    const rows = 70_000
    const lines = Array.from({ length: rows }, (_, k) => `f${k % 700},2031-06-0${1 + (k % 9)},10,${k % 7},${k % 3}`)
    const bytes = utf8(`field,date,minutes,honey bee,hover fly\n${lines.join('\n')}\n`)
    const mapping: Mapping = {
      version: 1,
      shape: 'wide',
      columns: [
        { header: 'field', as: 'field' },
        { header: 'date', as: 'date' },
        { header: 'minutes', as: 'minutes' },
        { header: 'honey bee', as: 'tally' },
        { header: 'hover fly', as: 'tally' },
      ],
    }
    const facts = await factsOf(bytes, mapping, 'here', 1)
    expect(
      facts.filter(({ kind }) => kind === 'rows-brought').map(({ body }) => [body.table, body.batch, body.first, body.rows]),
    ).toEqual([
      ['count', 0, 0, 65_536],
      ['count', 1, 65_536, 4_464],
      ['tally', 0, 0, 65_536],
      ['tally', 1, 65_536, 65_536],
      ['tally', 2, 131_072, 8_928],
    ])
    const { tables, fields, tallyCount } = foldFacts(facts)
    expect(tables.count.rows).toBe(rows)
    expect(fields).toHaveLength(700)
    const last = tables.tally.rows - 1
    expect(tallyCount[last]).toBe(rows - 1)
    expect(tables.tally.columns.number.values[last]).toBe((rows - 1) % 3)
    expect(fields[0]?.name).toBe('f0')
  })

  it('keeps what waits as it was written, at the row it belongs to', async () => {
    const bytes = utf8('field,minutes,honey bee,hover fly\nLarkfoot,10,3,1\nOld Kiln,10,3-4,2\nOld Kiln,10,2\n')
    const mapping: Mapping = {
      version: 1,
      shape: 'wide',
      columns: [
        { header: 'field', as: 'field' },
        { header: 'minutes', as: 'minutes' },
        { header: 'honey bee', as: 'tally', kind: 'bee' },
        { header: 'hover fly', as: 'tally', kind: 'fly' },
      ],
    }
    const { tables } = foldFacts(await factsOf(bytes, mapping, 'here', 1))
    const aside = tables.setAside.columns
    const text = (column: typeof aside.state, row: number) => column.dictionary[column.codes[row] ?? -1]
    expect(tables.setAside.rows).toBe(2)
    expect([text(aside.state, 0), text(aside.table, 0), text(aside.column, 0), text(aside.written, 0)]).toEqual([
      ...['waiting', 'tally', 'number', '3-4'],
    ])
    expect(aside.row.values[0]).toBe(2)
    expect(aside.line.values[0]).toBe(3)
    expect([text(aside.state, 1), text(aside.because, 1), text(aside.written, 1)]).toEqual([
      ...['refused', 'exchange/row/too-few-cells', 'Old Kiln\t10\t2'],
    ])
  })
})
