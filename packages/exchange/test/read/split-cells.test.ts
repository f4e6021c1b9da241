import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Delimiter, delimiters, splitCells } from '../../src/read/split-cells.ts'

interface Taken {
  readonly cells: readonly string[]
  readonly line: number
  readonly stray: boolean
}

function split(text: string, delimiter: Delimiter = ','): Taken[] {
  const taken: Taken[] = []
  splitCells(text, delimiter, (cells, line, stray) => taken.push({ cells: [...cells], line, stray }))
  return taken
}

const quoted = (cell: string, delimiter: string): string =>
  /["\n]/u.test(cell) || cell.includes(delimiter) ? `"${cell.replaceAll('"', '""')}"` : cell

describe('splitCells', () => {
  it('identity: tables written by RFC 4180 are read back, with the number of each line', () => {
    // Delimiters inside cells are few, so that no cell looks like rows it has swallowed.
    const cell = fc.array(fc.constantFrom(...'ab1 é"\n'.split(''), '\u{1f41d}'), { maxLength: 6 }).map((signs) => signs.join(''))
    const table = fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 6 })
    fc.assert(
      fc.property(table, fc.constantFrom(...delimiters), (rows, delimiter) => {
        const text = rows.map((row) => row.map((one) => quoted(one, delimiter)).join(delimiter)).join('\n')
        let line = 1
        const expected = rows.map((cells) => {
          const at = line
          line += 1 + cells.reduce((sum, one) => sum + one.split('\n').length - 1, 0)
          return { cells, line: at, stray: false }
        })
        expect(split(text, delimiter)).toEqual(expected)
        expect(split(`${text}\n`, delimiter)).toEqual(expected)
      }),
      { seed: 7, numRuns: 500 },
    )
  })

  it('a quote that opens and never closes spoils its own line', () => {
    expect(split('a,b\n"c,d\ne,f\n')).toEqual([
      { cells: ['a', 'b'], line: 1, stray: false },
      { cells: ['"c', 'd'], line: 2, stray: true },
      { cells: ['e', 'f'], line: 3, stray: false },
    ])
  })

  it.each([
    ['a word behind the closing quote', 'a,b\n"c" d,1\ne,"f"\n', [2]],
    ['a quote that the next line opens', 'a,b\n"c,1\n"d",2\n', [2]],
    ['rows between two stray quotes', 'a,b,c\n"d,1,2\ne,3,4\nf,5,6"\n', [2]],
  ])('%s swallows no other line', (_, text, stray) => {
    const taken = split(text)
    expect(taken.filter((one) => one.stray).map(({ line }) => line)).toEqual(stray)
    expect(taken.map(({ line }) => line)).toEqual(
      text
        .trimEnd()
        .split('\n')
        .map((_, k) => k + 1),
    )
  })

  it('a quote inside a cell that does not open with one is a sign like any other', () => {
    expect(split('6" pipe,2\n').map(({ cells }) => cells)).toEqual([['6" pipe', '2']])
  })

  it('a text longer than a piece is read whole', () => {
    const rows = Array.from({ length: 60_000 }, (_, k) => `${k},"x${k}"`)
    const taken = split(rows.join('\n'))
    expect(taken).toHaveLength(60_000)
    expect(taken[59_999]).toEqual({ cells: ['59999', 'x59999'], line: 60_000, stray: false })
  })

  it.each([
    ['no quotes at all', () => ''],
    ['now and then a cell over several lines', (k: number) => (k % 97 === 0 ? `a\nb "${k}"\n\nc` : '')],
    ['each cell over several lines', (k: number) => `"\n${'line\n'.repeat(k % 9)},`],
    ['long cells, many to a stretch', (k: number) => (k % 10 === 3 ? `${'x'.repeat(k % 4000)}\n"` : '')],
  ])('a long text is cut between its rows only: %s', (_, noteOf) => {
    const rows = Array.from({ length: 30_000 }, (_, k) => [`field ${k}`, noteOf(k), `${k % 12}`])
    const text = rows.map((cells) => cells.map((cell) => quoted(cell, ',')).join(',')).join('\n')
    let line = 1
    const expected = rows.map((cells) => {
      const own = { cells, line, stray: false }
      line += cells.join('').split('\n').length
      return own
    })
    const taken = split(text)
    expect(taken).toHaveLength(rows.length)
    for (const [k, own] of expected.entries())
      if (taken[k]?.line !== own.line || taken[k].cells.join('|') !== own.cells.join('|')) expect(taken[k]).toEqual(own)
  })

  it.each([',"a"', ',""', '""', '\n"', '"\n', ',"a\n"', '\n,"""', ',"a \n ,'])(
    'a megabyte of %j is split before anybody loses patience',
    (part) => {
      let last = 0
      splitCells(part.repeat(2 ** 20 / part.length), ',', (_, line) => {
        last = line
      })
      expect(last).toBeGreaterThan(0)
    },
  )
})
