import { type Mapping, proposeMapping, readCounts, readSheet } from '@thrum/exchange'
import { mark } from '@thrum/model'
import { unwatched } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { datesOf, marksOf, numbersOf, numbersOfKind, sheetBytes, textsOf, total, totals } from '../files.ts'

// Published: the written answers to the invented sheets, value by value.
const proposed = async (name: string, change: (mapping: Mapping) => Mapping = (mapping) => mapping) => {
  const sheet = readSheet(sheetBytes(name))
  const proposal = proposeMapping(sheet)
  return { sheet, proposal, read: await readCounts(sheet, change(proposal.mapping), unwatched) }
}
const asks = (questions: readonly { readonly asks: { readonly id: string } }[]): string[] =>
  questions.map((question) => question.asks.id)

describe('s1: semicolons, decimal commas, Latin-1, mixed dates', () => {
  const name = 's1-semicolon-decimal-comma-latin1.csv'

  it('reads names with their accents', async () => {
    const { sheet, read } = await proposed(name)
    expect(sheet.headers).toEqual(expect.arrayContaining(['Gröda', 'Anmärkning', 'Temp °C']))
    expect(textsOf(read.tables.count, 'field')).toContain('Björkhöjd')
    expect(JSON.stringify(read.tables)).not.toMatch(/\uFFFD|Ã¶/u)
  })

  it('reads dates, minutes, flowers and counts of every row', async () => {
    const { read } = await proposed(name)
    expect(read.rows).toEqual({ read: 8, accepted: 8, waiting: 0, refused: 0 })
    expect(datesOf(read)).toEqual([
      '2024-06-03',
      '2024-06-03',
      '2024-06-04',
      '2024-06-05',
      '2024-06-06',
      '2024-06-07',
      '2024-06-13',
      '2024-06-14',
    ])
    expect(numbersOf(read.tables.count, 'minutes')).toEqual([15, 15, 15, 15, 15, 15, 15, 15])
    // Flowers a square metre times the 100 square metres of the column beside.
    expect(numbersOf(read.tables.count, 'flowers')).toEqual([21250, 19800, 30525, 28700, 115000, 108050, 0, 1200])
    expect(totals(read)).toEqual({ 'honey bee': 49, 'bumble bee': 63, 'wild bee': 7 })
    expect(total(numbersOf(read.tables.count, 'minutes'))).toBe(120)
  })

  it('shows that 1.150 was read as 1150, and the one date in the other order', async () => {
    const { read } = await proposed(name)
    expect(read.shown).toContainEqual(
      expect.objectContaining({ written: '1.150 × 100', value: 115000, because: 'exchange/cell/thousands' }),
    )
    expect(read.shown).toContainEqual(expect.objectContaining({ written: '06/14/2024', printed: '2024-06-14' }))
  })

  it('asks once about the order of day and month, with day first proposed', async () => {
    const { proposal } = await proposed(name)
    const question = proposal.questions.find(({ asks }) => asks.id === 'exchange/ask/date-orders-mixed')
    expect(question?.proposed).toBe('day first')
    expect(question?.asks.values.example).toBe('05/06/24')
  })

  it('lets row 4 wait, with 5 June proposed, where nobody answered', async () => {
    const { read } = await proposed(name, ({ file: _, ...mapping }) => mapping)
    expect(read.rows).toEqual({ read: 8, accepted: 7, waiting: 1, refused: 0 })
    expect(read.rowNotes).toHaveLength(1)
    expect(read.rowNotes[0]).toMatchObject({ line: 5, written: '05/06/24', proposed: '2024-06-05' })
  })

  it('keeps the watch without flowers and says so', async () => {
    const { read } = await proposed(name)
    expect(read.notes).toContainEqual({ id: 'exchange/note/no-flowers', values: { watches: 1, lines: '8' } })
  })
})

describe('s2: title lines, header of two lines, totals, foot notes', () => {
  const name = 's2-title-rows-two-line-header-totals.csv'

  it('joins the two lines of the header', () => {
    expect(readSheet(sheetBytes(name)).headers).toEqual([
      'Field',
      'Date',
      'Weather / Temp C',
      'Weather / Wind',
      'Honey bees',
      'Bumble bees / short tongue',
      'Bumble bees / long tongue',
      'Other / solitary',
      'Other / hoverfly',
    ])
  })

  it('takes seven watches, uses the totals as a check and keeps the notes', async () => {
    const { read } = await proposed(name)
    expect(read.rows).toEqual({ read: 7, accepted: 7, waiting: 0, refused: 0 })
    expect(read.kinds.map((kind) => kind.total)).toEqual([11, 47, 22, 4, 12])
    expect(textsOf(read.tables.count, 'field')).toEqual([
      ...['Larkfoot', 'Larkfoot', 'Old Kiln', 'Old Kiln', 'Old Kiln', 'Thrawnbank', 'Thrawnbank'],
    ])
    expect(read.notes).toContainEqual({ id: 'exchange/note/totals-agree', values: { totals: 3 } })
    const kept = read.notes.filter(({ id }) => id === 'exchange/note/kept-line').map(({ values }) => values.text)
    expect(kept).toEqual([
      'Ostrel Vale phacelia visitor counts 2025',
      'sheet typed up from field cards, crew K',
      'All walks 10 min, 50 m x 2 m.',
      'Thrawnbank 27/6 abandoned, rain at 14:10.',
    ])
  })

  it('offers 10 minutes and 100 m² from the foot note, and asks no question about dates', async () => {
    const { proposal } = await proposed(name)
    expect(proposal.mapping.constants).toMatchObject({ minutes: 10, area: 100 })
    expect(asks(proposal.questions)).toEqual(expect.arrayContaining(['exchange/ask/effort-noted', 'exchange/ask/area-noted']))
    expect(asks(proposal.questions).filter((id) => id.includes('date'))).toEqual([])
  })

  it('leaves the abandoned walk without counts and without effort, and true zeros as zeros', async () => {
    const { read } = await proposed(name)
    expect(numbersOfKind(read, 'honey bee')).toEqual([3, 5, 0, 1, 2, 0, null])
    expect(numbersOf(read.tables.count, 'minutes')).toEqual([10, 10, 10, 10, 10, 10, null])
    expect(read.notes).toContainEqual({ id: 'exchange/note/nothing-counted', values: { watches: 1, lines: '18' } })
    expect(read.notes).toContainEqual({ id: 'exchange/note/several-watches', values: { watches: 2, lines: '7, 12' } })
  })

  it('says which total disagrees, and takes the rows', async () => {
    const text = new TextDecoder().decode(sheetBytes(name)).replace('Larkfoot total,,,,8', 'Larkfoot total,,,,9')
    const sheet = readSheet(new TextEncoder().encode(text))
    expect(sheet.notes).toContainEqual({
      id: 'exchange/note/total-differs',
      values: { line: 9, label: 'Larkfoot total', header: 'Honey bees', said: 9, found: 8 },
    })
  })
})

describe('s3: vague and censored counts', () => {
  const name = 's3-approximate-and-censored-counts.csv'

  it('keeps all twelve rows: five clean honey bee counts, three with a mark, four to answer', async () => {
    const { read } = await proposed(name)
    expect(read.rows).toEqual({ read: 12, accepted: 4, waiting: 8, refused: 0 })
    expect(read.kinds[0]).toEqual({ kind: 'honey bee', total: 39, clean: 5, marked: 3, waiting: 4, missing: 0 })
    const { asWritten, approximate, atLeast, waiting } = mark
    const kinds = textsOf(read.tables.tally, 'kind')
    expect(numbersOfKind(read, 'honey bee')).toEqual([12, 12, 51, null, 5, 2, 0, 1, 0, null, null, 7])
    expect(marksOf(read.tables.tally, 'number').filter((_, row) => kinds[row] === 'honey bee')).toEqual([
      ...[
        asWritten,
        approximate,
        atLeast,
        waiting,
        approximate,
        asWritten,
        asWritten,
        asWritten,
        asWritten,
        waiting,
        waiting,
        approximate,
      ],
    ])
  })

  it.each([
    ['solitary', '-', 'exchange/cell/dash'],
    ['honeybee', '>50', 'exchange/cell/at-least'],
    ['flowers', '200-250', 'exchange/cell/range'],
    ['honeybee', '3-4', 'exchange/cell/range'],
    ['flowers', 'lots', 'exchange/cell/many-word'],
    ['minutes', 'ten', 'exchange/cell/number-word'],
    ['solitary', 'tick', 'exchange/cell/presence-only'],
    ['honeybee', '-1', 'exchange/cell/below-zero'],
    ['honeybee', '1.5', 'exchange/cell/not-whole'],
    ['hoverfly', '<3', 'exchange/cell/at-most'],
  ])('%s "%s" waits: %s', async (column, written, because) => {
    const { read } = await proposed(name)
    const note = read.rowNotes.find((one) => one.column === column && one.written === written)
    expect(note?.because.id).toBe(because)
    expect(note?.state).toBe('waiting')
  })

  it('offers the midpoint of a range of flowers but not of insects', async () => {
    const { read } = await proposed(name)
    expect(read.rowNotes.find(({ written }) => written === '200-250')?.proposed).toBe('225')
    expect(read.rowNotes.find(({ written }) => written === '3-4')?.proposed).toBeNull()
  })

  it('reads "5+5" minutes as 10 and "nil" as 0, and shows both', async () => {
    const { read } = await proposed(name)
    expect(read.shown).toContainEqual(expect.objectContaining({ column: 'minutes', written: '5+5', value: 10 }))
    expect(read.shown).toContainEqual(expect.objectContaining({ column: 'solitary', written: 'nil', value: 0 }))
  })

  it('asks about the dash, and takes the answer', async () => {
    const { proposal } = await proposed(name)
    expect(asks(proposal.questions)).toContain('exchange/ask/dash')
    const { read } = await proposed(name, (mapping) => ({ ...mapping, means: { '-': 0 } }))
    expect(read.rows.waiting).toBe(7)
    expect(read.shown).toContainEqual(expect.objectContaining({ written: '-', value: 0, because: 'exchange/cell/means' }))
  })
})

describe('s5: ids entered twice, a second header', () => {
  const name = 's5-duplicate-ids-second-header.csv'

  it('reads each block by its own header; nothing is shifted and leading zeros stay', async () => {
    const { sheet, read } = await proposed(name, (mapping) => ({ ...mapping, duplicates: 'keep-all' }))
    expect(sheet.headers).toContain('observer')
    expect(sheet.rows).toBe(12)
    const keys = textsOf(read.tables.count, 'key')
    expect(keys.slice(0, 3)).toEqual(['0101', '0102', '0103'])
    const at = keys.indexOf('0106')
    expect([
      numbersOfKind(read, 'honey bee')[at],
      numbersOfKind(read, 'bumble bee')[at],
      numbersOfKind(read, 'wild bee')[at],
    ]).toEqual([2, 7, 0])
    expect(textsOf(read.tables.count, 'field')).not.toContain(' Larkfoot ')
    expect(datesOf(read)[at]).toBe('2025-06-12')
  })

  it('keeps equal rows once with what each adds, and lets the conflict wait', async () => {
    const { read } = await proposed(name)
    expect(read.rows).toEqual({ read: 12, accepted: 8, waiting: 2, refused: 2 })
    expect(read.counts).toBe(9)
    expect(total(numbersOf(read.tables.count, 'minutes'))).toBe(130)
    // Bumble bees without the conflict: 46 - 4.
    expect(totals(read)).toEqual({ 'honey bee': 18, 'bumble bee': 42, 'wild bee': 8 })
    expect(textsOf(read.tables.count, 'observer')[0]).toBe('K2')
    expect(read.rowNotes.map(({ line, state, because }) => [line, state, because.id])).toEqual([
      [5, 'refused', 'exchange/row/entered-twice'],
      [6, 'waiting', 'exchange/row/cell-in-conflict'],
      [7, 'waiting', 'exchange/row/in-conflict'],
      [14, 'refused', 'exchange/row/entered-twice'],
    ])
  })

  it.each([
    ['7', 46],
    ['6', 56],
  ])('with line %s left out bumble bees sum to %i', async (line, bumble) => {
    const { read } = await proposed(name, (mapping) => ({ ...mapping, lines: { [line]: 'leave-out' } }))
    expect(totals(read)).toEqual({ 'honey bee': 18, 'bumble bee': bumble, 'wild bee': 8 })
    expect(read.rows).toEqual({ read: 12, accepted: 9, waiting: 0, refused: 3 })
  })

  it('keeps two watches that share an id, and names the short id', async () => {
    const { read } = await proposed(name)
    expect(read.notes).toContainEqual({ id: 'exchange/note/shared-id', values: { first: 8, line: 12 } })
    expect(read.notes).toContainEqual({ id: 'exchange/note/short-id', values: { id: '108', proposed: '0108' } })
  })

  it('without an answer rows entered twice wait', async () => {
    const { read } = await proposed(name, ({ duplicates: _, ...mapping }) => mapping)
    expect(read.rows).toEqual({ read: 12, accepted: 8, waiting: 4, refused: 0 })
    expect(read.counts).toBe(9)
  })
})
