import type { MappedColumn, Mapping } from '@thrum/exchange'
import { dayNumber } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { harmOf, harmOfPrinted } from './harmless.ts'
import { rowsIn } from './rows-in.ts'
import { isSpelledAs, plainSpelling } from './spellings.ts'
import { wrongInSvg } from './strict-svg.ts'

// The checks of mutated imports, on both sides: one that lets everything pass would prove nothing.

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text)

describe('harmless text', () => {
  it.each(['\u001b[31m', '\u0000', '\u0085', '\u202e', '\u2066', '\ufeff', '\ud83d', '\t', '\r'])('holds no %j', (sign) => {
    expect(harmOf(`a${sign}b`, 'it')).toMatch(/^it holds U\+/u)
  })
  it('has lines that end, no cell without end, and no stack', () => {
    expect(harmOfPrinted('Žežula 蜂\u{1f41d}\n', 'it')).toBeNull()
    expect(harmOfPrinted('a b '.repeat(40), 'it')).toContain('columns')
    expect(harmOfPrinted(`${'x'.repeat(80)}\n`.repeat(20), 'it')).toContain('in a row')
    expect(harmOfPrinted('Error: no\n    at run (file.ts:3:7)\n', 'it')).toContain('stack')
  })
})

describe('a drawing', () => {
  it.each(['<svg/>', '<svg a="1"><title>a &amp; b</title><g><rect x="1"/></g></svg>\n'])('%s is one', (svg) => {
    expect(wrongInSvg(svg)).toBeNull()
  })
  it.each([
    '<svg><g></svg>',
    '<svg></svg><svg></svg>',
    '<svg>',
    '<svg><script>1</script></svg>',
    '<svg onload="1"/>',
    '<svg><text>a & b</text></svg>',
    '<svg><text>a < b</text></svg>',
    '<svg a="1" a="2"/>',
    '<svg a=1/>',
    '<svg><g fill="url(#x)"/></svg>',
    '<!--a--><svg/>',
    '<svg>\u202e</svg>',
    '<svg>\uffff</svg>',
    '',
  ])('%s is none', (svg) => {
    expect(wrongInSvg(svg)).not.toBeNull()
  })
})

const mapping: Mapping = { version: 1, shape: 'wide', columns: [{ header: 'a', as: 'ignore' }] }
const column = (as: MappedColumn['as'], unit?: string): MappedColumn => ({
  header: 'a',
  as,
  ...(unit === undefined ? {} : { unit }),
})

describe('the spelling of a value', () => {
  it.each([
    [12, '12', 'tally', undefined, true],
    [12, '012', 'tally', undefined, false],
    [1150, '1.150', 'flowers', undefined, false],
    [1.15, '1,150', 'flowers', undefined, true],
    [18, '64.4', 'temperature', 'degF', true],
    [64, '64 °F', 'temperature', 'Cel', false],
    [1500, '1.5', 'hiveDistance', 'km', true],
    [615, '10:15', 'start', undefined, true],
    [855, '2:15 pm', 'start', undefined, true],
    [615, '10:15Z', 'start', undefined, false],
    [616, '10:15', 'start', undefined, false],
    [-180, '-3', 'offset', undefined, true],
    [90, '1.5', 'minutes', 'h', true],
    [10, '10 min', 'minutes', undefined, false],
  ] as const)('%d as "%s" in a column of %s %s: %s', (value, written, as, unit, is) => {
    expect(isSpelledAs(value, written, column(as, unit), mapping)).toBe(is)
  })

  it.each([
    ['2031-05-04', true],
    ['4.5.2031', true],
    ['4/5/31', true],
    ['4 May 2031', true],
    ['5.5.2031', false],
    ['2031-05-04T10:15', false],
    ['4 May', false],
  ])('4 May 2031 as "%s": %s', (written, is) => {
    expect(isSpelledAs(dayNumber('2031-05-04'), written, column('date'), mapping)).toBe(is)
  })

  it('a name without what is not seen', () => {
    expect(plainSpelling(' a\u202e\u0000  b\u200b e\u0301 ')).toBe('a b é')
  })
})

describe('rows counted without the reader', () => {
  it('of a regular file are its lines but the header', () => {
    expect(rowsIn(utf8('field,day,bees,flies\r\nA,1,2,3\r\nB,1,2,3\r\n'), null)).toBe(2)
  })
  it.each([
    'field,day,bees,flies\n"A",1,2,3\n',
    'field,day,bees,flies\nA,1,2\n',
    'field,day,bees,flies\nTotal,1,2,3\n',
    'field,day,bees,flies\nA,1,2,3\nfield,day,bees,flies\n',
    '1,2,3,4\nA,1,2,3\n',
  ])('of any other file are not counted: %j', (text) => {
    expect(rowsIn(utf8(text), null)).toBeNull()
  })
})
