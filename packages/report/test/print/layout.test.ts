import fc from 'fast-check'
import { describe, expect, it, onTestFinished } from 'vitest'
import { columnsOf, pageWidth, table, wrap } from '../../src/index.ts'

const letter = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...'abcxyz-,.') },
  { weight: 1, arbitrary: fc.constantFrom('é', 'e\u0301', 'ß', '蜂', '花', '매', 'ﾊ', '\u{20000}', '\u{1f41d}', '\u00a0', 'ि') },
)
const word = fc.oneof(
  { weight: 6, arbitrary: fc.array(letter, { minLength: 1, maxLength: 12 }) },
  { weight: 1, arbitrary: fc.array(letter, { minLength: 40, maxLength: 260 }) },
)
const paragraph = fc.array(word, { maxLength: 30 }).map((words) => words.map((letters) => letters.join('')).join(' '))
const blanks = fc.integer({ min: 0, max: 6 }).map((n) => ' '.repeat(n))

describe('wrap', () => {
  it('identity: no line is longer than the page, and nothing but blanks is lost', () => {
    fc.assert(
      fc.property(paragraph, blanks, blanks, (text, indent, hanging) => {
        const lines = wrap(text, indent, hanging)
        for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(pageWidth.columns)
        const letters = (own: string): string => own.replaceAll(' ', '')
        expect(letters(lines.join(''))).toBe(letters(text))
      }),
      { seed: 21, numRuns: 400 },
    )
  })

  it('a word of a million letters is broken before anybody loses patience', () => {
    const lines = wrap(`bee ${'x'.repeat(1_000_000)} bee`, '  - ', '    ')
    expect(lines.slice(0, 2)).toEqual(['  - bee', `    ${'x'.repeat(76)}`])
    expect(lines).toHaveLength(1 + Math.ceil(1_000_000 / 76))
  })

  it('identity: a line is full before the next begins', () => {
    fc.assert(
      fc.property(paragraph, (text) => {
        const lines = wrap(text)
        lines.slice(1).forEach((line, k) => {
          const next = line.split(' ')[0] ?? ''
          expect(columnsOf(`${lines[k]} ${next}`)).toBeGreaterThan(pageWidth.columns)
        })
      }),
      { seed: 22, numRuns: 200 },
    )
  })

  it('breaks words longer than a line, marks with their letter, wide characters by the columns they take', () => {
    expect(wrap('a'.repeat(170))).toEqual(['a'.repeat(80), 'a'.repeat(80), 'a'.repeat(10)])
    expect(wrap('蜂'.repeat(50))).toEqual(['蜂'.repeat(40), '蜂'.repeat(10)])
    expect(wrap('e\u0301'.repeat(81))).toEqual(['e\u0301'.repeat(80), 'e\u0301'])
  })

  it('indents the first line and hangs the others', () => {
    const lines = wrap(Array.from({ length: 30 }, () => 'watch').join(' '), '  - ', '    ')
    expect(lines[0]?.startsWith('  - watch')).toBe(true)
    expect(lines.slice(1).every((line) => line.startsWith('    watch'))).toBe(true)
  })

  it('a line of four blanks is a command: never broken, and other lines of a text are paragraphs of their own', () => {
    const command = `    ./thrum import ${'long-'.repeat(20)}name.csv --in ostrel-vale.thrum --accept`
    expect(wrap(`Next:\n${command}\nOr not.`, '  - ', '    ')).toEqual(['  - Next:', `    ${command}`, '    Or not.'])
    expect(wrap(command)).toEqual([command])
  })

  it('of nothing, or of blanks, there is no line', () => {
    expect(wrap('')).toEqual([])
    expect(wrap('   ', '  ')).toEqual([])
  })
})

describe('table', () => {
  const cell = fc.string({ maxLength: 14, unit: fc.constantFrom('0', '1', '.', '–', ' ', '蜂') })
  const row = fc.tuple(paragraph, cell, cell, cell).map((cells): readonly string[] => cells)

  it('identity: no line is longer than the page, whatever the labels, where the cells leave room', () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 5 }), blanks, (rows, indent) => {
        const others = [1, 2, 3].map((k) => Math.max(...rows.map((own) => columnsOf(own[k] ?? ''))))
        fc.pre(others.reduce((sum, width) => sum + width + 2, indent.length + 16) <= pageWidth.columns)
        for (const line of table(rows, indent)) expect(columnsOf(line)).toBeLessThanOrEqual(pageWidth.columns)
      }),
      { seed: 23, numRuns: 400 },
    )
  })

  it('numbers stand to the right, labels wrap and end on the line of their numbers', () => {
    expect(
      table([
        ['honey bee', '12.5', '3 fields'],
        [`${'very '.repeat(20)}small bee`, '3', '12 fields'],
      ]),
    ).toEqual([
      '  honey bee                                                      12.5   3 fields',
      '  very very very very very very very very very very very very',
      '    very very very very very very very very small bee               3  12 fields',
    ])
  })

  it('a row with fewer cells than others is no fault', () => {
    expect(table([['a', '1', '2'], ['b']])).toEqual(['  a                 1  2', '  b'])
  })
})

describe('a narrow page', () => {
  const narrow = (columns: number): void => {
    pageWidth.columns = columns
    onTestFinished(() => {
      pageWidth.columns = 80
    })
  }
  const rows = [
    ['honey bee, before: 24 counted, these watches only', '144', '92.3 – 214', '1 watch'],
    ['bumble bee', '42', '', '1 watch'],
  ]

  it('holds paragraphs', () => {
    narrow(40)
    expect(wrap('Watch at least three fields in which nothing changes.', '  - ', '    ')).toEqual([
      '  - Watch at least three fields in which',
      '    nothing changes.',
    ])
  })

  it('below 60 columns the cells of a row stand under its label', () => {
    narrow(59)
    expect(table(rows)).toEqual([
      '  honey bee, before: 24 counted, these watches only',
      '    144  92.3 – 214  1 watch',
      '  bumble bee',
      '    42  1 watch',
    ])
    narrow(40)
    expect(table([['bee', '0.000123', '0.0000456 – 0.000789', '12 pairs of fields']])).toEqual([
      '  bee',
      '    0.000123',
      '    0.0000456 – 0.000789',
      '    12 pairs of fields',
    ])
    expect(table([['bee']])).toEqual(['  bee'])
  })

  it('from 60 columns on they stand beside it', () => {
    narrow(60)
    expect(table(rows)[1]).toBe('    these watches only              144  92.3 – 214  1 watch')
    for (const line of table(rows)) expect(columnsOf(line)).toBeLessThanOrEqual(60)
  })
})

describe('columnsOf', () => {
  it.each([
    ['', 0],
    ['bee', 3],
    ['e\u0301', 1],
    ['é', 1],
    ['蜂', 2],
    ['\u{1f41d}', 2],
    ['ﾊ', 1],
  ])('"%s" takes %i', (text, columns) => {
    expect(columnsOf(text)).toBe(columns)
  })
})
