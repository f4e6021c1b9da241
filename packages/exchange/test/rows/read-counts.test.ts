import { type Mapping, parseMapping, readCounts, readSheet } from '@thrum/exchange'
import { mark } from '@thrum/model'
import { type LongWork, unwatched } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { marksOf, numbersOf, numbersOfKind, readBoth, textsOf, totals, utf8 } from '../files.ts'

type Column = Mapping['columns'][number]
const wide = (columns: readonly Column[], rest: Partial<Mapping> = {}): Mapping => ({
  version: 1,
  shape: 'wide',
  columns: [...columns],
  ...rest,
})
const long = (columns: readonly Column[], rest: Partial<Mapping> = {}): Mapping => ({
  version: 1,
  shape: 'long',
  columns: [...columns],
  ...rest,
})
const codeOf = async (text: string, mapping: Mapping): Promise<string> => {
  try {
    await readBoth(utf8(text), mapping)
    return 'read'
  } catch (error) {
    return (error as { code?: string }).code ?? String(error)
  }
}

const field: Column = { header: 'field', as: 'field' }
const minutes: Column = { header: 'minutes', as: 'minutes' }
const bee: Column = { header: 'bee', as: 'tally', kind: 'honey bee' }

describe('effort', () => {
  const times: Column[] = [field, { header: 'start', as: 'start' }, { header: 'end', as: 'end' }, bee]

  it('is end less start; a watch that ends before it starts waits, its counts stay', async () => {
    const { read } = await readBoth(utf8('field,start,end,bee\nA,10:00,10:10,3\nA,10:30,10:20,4\nA,11:00,11:00,5\n'), wide(times))
    expect(numbersOf(read.tables.count, 'minutes')).toEqual([10, null, null])
    expect(totals(read)).toEqual({ 'honey bee': 12 })
    expect(read.rowNotes.map(({ line, because }) => [line, because.id])).toEqual([
      [3, 'exchange/effort/ends-before-start'],
      [4, 'exchange/effort/not-positive'],
    ])
    expect(read.rows).toEqual({ read: 3, accepted: 1, waiting: 2, refused: 0 })
  })

  it('pauses are taken off', async () => {
    const columns: Column[] = [...times, { header: 'pause', as: 'pauses' }]
    const { read } = await readBoth(utf8('field,start,end,pause,bee\nA,10:00,10:15,5,3\nA,10:30,10:40,,4\n'), wide(columns))
    expect(numbersOf(read.tables.count, 'minutes')).toEqual([10, 10])
  })

  it('typed minutes stand; where start and end say otherwise it is told', async () => {
    const { read } = await readBoth(
      utf8('field,start,end,minutes,bee\nA,10:00,10:10,10,3\nA,10:00,10:30,10,3\n'),
      wide([...times, minutes]),
    )
    expect(numbersOf(read.tables.count, 'minutes')).toEqual([10, 10])
    expect(read.notes).toContainEqual({ id: 'exchange/note/minutes-differ', values: { watches: 1, lines: '3' } })
  })

  it('that nobody wrote down must be said by a person', async () => {
    expect(await codeOf('field,bee\nA,3\nB,4\n', wide([field, bee]))).toBe('exchange/sheet/effort-unmapped')
    expect(await codeOf('field,bee\nA,3\nB,4\n', wide([field, bee], { effort: 'not recorded' }))).toBe('read')
  })
})

describe('units', () => {
  const text = 'field,minutes,temp,area,wind,cloud,bee\nA,10,68,0.5,6,50,3\nB,10,50,1,2,100,1\n'
  const measured = (units: readonly (string | undefined)[]): Column[] =>
    (['temperature', 'area', 'wind', 'cloud'] as const).map((as, k) => {
      const unit = units[k]
      const header = as === 'temperature' ? 'temp' : as
      return unit === undefined ? { header, as } : { header, as, unit }
    })

  it('are converted to those of the table', async () => {
    const { read } = await readBoth(utf8(text), wide([field, minutes, ...measured(['degF', 'ha', 'm/s', '%']), bee]))
    expect(numbersOf(read.tables.count, 'temperature')).toEqual([20, 10])
    expect(numbersOf(read.tables.count, 'area')).toEqual([5000, 10000])
    // Published (methods, weather window): 6.0 m/s is Beaufort 4.
    expect(numbersOf(read.tables.count, 'wind')).toEqual([4, 2])
    expect(numbersOf(read.tables.count, 'cloud')).toEqual([4, 8])
  })

  it('are never guessed in silence', async () => {
    expect(await codeOf(text, wide([field, minutes, ...measured([undefined, 'ha', 'm/s', '%']), bee]))).toBe(
      'exchange/mapping/unit-missing',
    )
    expect(await codeOf(text, wide([field, minutes, ...measured(['K', 'ha', 'm/s', '%']), bee]))).toBe(
      'exchange/mapping/unit-unknown',
    )
  })
})

describe('kinds', () => {
  it('of several columns are summed; a part that waits makes the sum wait and says what the others sum to', async () => {
    const columns: Column[] = [
      field,
      minutes,
      ...['a', 'b', 'c'].map((header): Column => ({ header, as: 'tally', kind: 'bumble bee' })),
    ]
    const { read } = await readBoth(
      utf8('field,minutes,a,b,c\nA,10,1,2,3\nA,10,1,2-3,4\nA,10,ca. 5,0,0\nA,10,1,,2\nA,10,,,\n'),
      wide(columns),
    )
    const { asWritten, waiting, approximate, notLookedFor } = mark
    expect(numbersOf(read.tables.tally, 'number')).toEqual([6, null, 5, null, null])
    expect(marksOf(read.tables.tally, 'number')).toEqual([asWritten, waiting, approximate, waiting, notLookedFor])
    expect(numbersOf(read.tables.setAside, 'others')[0]).toBe(5)
    expect(textsOf(read.tables.setAside, 'header')[0]).toBe('b')
    expect(read.rowNotes[1]).toMatchObject({ because: { id: 'exchange/tally/part-missing' }, proposed: '3' })
  })

  it('by caste are tallies of their own', async () => {
    const columns: Column[] = [
      field,
      minutes,
      { header: 'q', as: 'tally', kind: 'bumble bee', caste: 'queen' },
      { header: 'w', as: 'tally', kind: 'bumble bee', caste: 'worker' },
    ]
    const { read } = await readBoth(utf8('field,minutes,q,w\nA,10,1,7\n'), wide(columns))
    expect(textsOf(read.tables.tally, 'caste')).toEqual(['queen', 'worker'])
    expect(numbersOf(read.tables.tally, 'number')).toEqual([1, 7])
    expect(totals(read)).toEqual({ 'bumble bee': 8 })
  })

  it('have names without direction signs', async () => {
    const { read } = await readBoth(
      utf8('field,minutes,bee\n\u202eLark\u200bfoot,10,3\nLarkfoot,10,4\n'),
      wide([field, minutes, { ...bee, kind: 'honey\u00a0 bee\u2069' }]),
    )
    expect(textsOf(read.tables.count, 'field')).toEqual(['Larkfoot', 'Larkfoot'])
    expect(textsOf(read.tables.tally, 'kind')).toEqual(['honey bee', 'honey bee'])
  })

  it('a blank is not looked for unless the mapping says none', async () => {
    const text = 'field,minutes,bee\nA,10,\nB,10,2\n'
    const { read } = await readBoth(utf8(text), wide([field, minutes, bee]))
    expect(numbersOfKind(read, 'honey bee')).toEqual([null, 2])
    const { read: said } = await readBoth(utf8(text), wide([field, minutes, { ...bee, means: { '': 0 } }]))
    expect(numbersOfKind(said, 'honey bee')).toEqual([0, 2])
  })
})

describe('long tables', () => {
  const columns: Column[] = [
    field,
    { header: 'date', as: 'date' },
    minutes,
    { header: 'kind', as: 'kind' },
    { header: 'n', as: 'number' },
    { header: 'strip', as: 'factor' },
  ]
  const text = [
    'field,date,minutes,kind,n,strip',
    'A,2031-05-04,10,honey bee,3,yes',
    'A,04.05.2031,10,hover fly,1,yes',
    'B,2031-05-04,10,honey bee,2,no',
    'C,2031-05-04,10,none,,no',
    'D,2031-05-04,10,,4,no',
    '',
  ].join('\n')

  it.each([
    ['none-seen', 'none-seen', 6],
    ['not-looked-for', 'typed', 3],
    ['not-known', 'not-known', 3],
  ] as const)('absent kinds that are %s', async (absent, zeros, tallies) => {
    const { read } = await readBoth(utf8(text), long(columns, { absent }))
    expect(read.counts).toBe(3)
    expect(textsOf(read.tables.count, 'zeros')).toEqual([zeros, zeros, zeros])
    expect(read.tallies).toBe(tallies)
    expect(totals(read)).toEqual({ 'honey bee': 5, 'hover fly': 1 })
    expect(read.rows).toEqual({ read: 5, accepted: 4, waiting: 0, refused: 1 })
    expect(read.rowNotes.map(({ line, because }) => [line, because.id])).toEqual([[6, 'exchange/row/no-kind']])
  })

  it('two ways of writing a date are one watch; the watch in which nothing came stands', async () => {
    const { read } = await readBoth(utf8(text), long(columns, { absent: 'none-seen' }))
    expect(textsOf(read.tables.count, 'field')).toEqual(['A', 'B', 'C'])
    expect(textsOf(read.tables.count, 'strip')).toEqual(['yes', 'no', 'no'])
    const of = numbersOf(read.tables.tally, 'count')
    expect(numbersOf(read.tables.tally, 'number').filter((_, row) => of[row] === 2)).toEqual([0, 0])
  })

  it('rows of one watch that say different minutes wait; other texts that differ are told', async () => {
    const differing = text.replace('A,04.05.2031,10,hover fly,1,yes', 'A,04.05.2031,15,hover fly,1,no')
    const { read } = await readBoth(utf8(differing), long(columns))
    expect(numbersOf(read.tables.count, 'minutes')).toEqual([null, 10, 10])
    expect(read.rowNotes[0]).toMatchObject({ written: '10 / 15', because: { id: 'exchange/watch/rows-differ' } })
    expect(read.notes).toContainEqual({ id: 'exchange/note/differs-within-watch', values: { header: 'strip' } })
  })

  it('one row a sighting counts rows', async () => {
    const sightings = 'field,date,minutes,kind\nA,2031-05-04,10,honey bee\nA,2031-05-04,10,honey bee\nA,2031-05-04,10,hover fly\n'
    const { read } = await readBoth(utf8(sightings), long(columns.slice(0, 4)))
    expect(totals(read)).toEqual({ 'honey bee': 2, 'hover fly': 1 })
    expect(read.rows.accepted).toBe(3)
  })

  it('a row entered twice waits, or is kept once', async () => {
    const twice = `${text}A,2031-05-04,10,honey bee,3,yes\n`
    const { read } = await readBoth(utf8(twice), long(columns))
    expect(read.rows).toEqual({ read: 6, accepted: 4, waiting: 1, refused: 1 })
    expect(totals(read)['honey bee']).toBe(5)
    const { read: kept } = await readBoth(utf8(twice), long(columns, { duplicates: 'keep-all' }))
    expect(totals(kept)['honey bee']).toBe(8)
  })

  it('needs something that names a watch', async () => {
    expect(await codeOf('minutes,kind,n\n10,honey bee,3\n10,fly,3\n', long(columns.slice(2, 5)))).toBe('exchange/mapping/no-key')
    expect(await codeOf(text, long(columns, { key: ['plot'] }))).toBe('exchange/mapping/key-unknown')
    const blank = 'field,date,minutes,kind,n,strip\n,,10,honey bee,3,yes\n,,10,fly,3,no\n'
    expect(await codeOf(blank, long(columns, { key: ['field', 'date'] }))).toBe('exchange/mapping/no-key')
    const half = blank.replaceAll('\n,,', '\nA,,')
    expect((await readBoth(utf8(half), long(columns, { key: ['field', 'date'] }))).read.counts).toBe(1)
  })
})

describe('mappings that do not fit', () => {
  const text = 'field,minutes,bee\nA,10,3\nB,10,4\n'
  it.each([
    ['a column the sheet lacks', wide([field, minutes, bee, { header: 'date', as: 'date' }]), 'column-missing'],
    ['a column twice', wide([field, minutes, bee, { header: 'bee', as: 'note' }]), 'column-twice'],
    ['two fields', wide([field, { header: 'minutes', as: 'field' }, bee]), 'role-twice'],
    ['a kind column in a wide table', wide([{ header: 'field', as: 'kind' }, minutes, bee]), 'role-of-other-shape'],
    [
      'a factor with the name of a column',
      wide([{ header: 'field', as: 'factor', factor: 'date' }, minutes, bee]),
      'factor-name-taken',
    ],
  ])('%s', async (_, mapping, code) => {
    expect(await codeOf(text, mapping)).toBe(`exchange/mapping/${code}`)
  })

  it('no tally column; counting units mixed or unknown', async () => {
    expect(await codeOf(text, wide([field, minutes]))).toBe('exchange/sheet/no-tally-column')
    const units = (a: string, b: string): Promise<string> =>
      codeOf(`field,minutes,bee,unit\nA,10,3,${a}\nB,10,4,${b}\n`, wide([field, minutes, bee, { header: 'unit', as: 'unit' }]))
    expect(await units('visits', 'individuals')).toBe('exchange/sheet/units-mixed')
    expect(await units('individuals', 'Individuals')).toBe('read')
    expect(await units('thing', 'thing')).toBe('exchange/mapping/counting-unit-unknown')
  })

  it('JSON that is no mapping says where', () => {
    const wrong = { version: 1, shape: 'wide', columns: [{ header: 'a', as: 'bees' }] }
    expect(() => parseMapping(wrong)).toThrowError(/exchange\/mapping\/misshapen.*columns\.0\.as/u)
    expect(() => parseMapping({ version: 2 })).toThrowError(/version/u)
  })
})

describe('work', () => {
  it('stops when asked, and tells how far it is', async () => {
    const sheet = readSheet(utf8('field,minutes,bee\nA,10,3\nB,10,4\n'))
    const stopped: LongWork = { signal: { aborted: true, reason: 'enough' }, breathe: () => Promise.resolve() }
    await expect(readCounts(sheet, wide([field, minutes, bee]), stopped)).rejects.toBe('enough')
    const told: number[] = []
    await readCounts(sheet, wide([field, minutes, bee]), { ...unwatched, onProgress: ({ done }) => told.push(done) })
    expect(told.at(-1)).toBe(2)
  })
})
