import { readSheet, type Sheet } from '@thrum/exchange'
import { describe, expect, it } from 'vitest'
import { utf8 } from '../files.ts'

const latin1 = (text: string): Uint8Array => Uint8Array.from(text, (sign) => sign.charCodeAt(0))
const utf16 = (text: string, mark: boolean): Uint8Array =>
  Uint8Array.from([
    ...(mark ? [0xff, 0xfe] : []),
    ...[...text].flatMap((sign) => [sign.charCodeAt(0) & 0xff, sign.charCodeAt(0) >> 8]),
  ])

/** All rows as written, blank cells as ''. */
const rowsOf = (sheet: Sheet): string[][] =>
  Array.from({ length: sheet.rows }, (_, row) => sheet.columns.map(({ codes, dictionary }) => dictionary[codes[row] ?? -1] ?? ''))
const noteIds = (sheet: Sheet): string[] => sheet.notes.map(({ id }) => id)
const codeOf = (read: () => unknown): string => {
  try {
    read()
  } catch (error) {
    return (error as { code?: string }).code ?? String(error)
  }
  return 'read'
}

const columns = (many: number, letter = 'c'): string => Array.from({ length: many }, (_, k) => `${letter}${k}`).join(',')
const ones = `A${',1'.repeat(699)}`
const simple = 'field,minutes,bees\nÅs,10,3\nDal,10,0\n'

describe('encodings', () => {
  it.each([
    ['UTF-8', utf8(simple), 'utf-8'],
    ['UTF-8 with its mark', utf8(`\ufeff${simple}`), 'utf-8'],
    ['UTF-16', utf16(simple, true), 'utf-16le'],
    ['UTF-16 without a mark', utf16(simple, false), 'utf-16le'],
    ['Latin-1', latin1(simple), 'windows-1252'],
  ])('%s', (_, bytes, encoding) => {
    const sheet = readSheet(bytes)
    expect(sheet.encoding).toBe(encoding)
    expect(sheet.headers[0]).toBe('field')
    expect(rowsOf(sheet)[0]).toEqual(['Ås', '10', '3'])
  })

  it('two encodings in one file are read line by line', () => {
    const sheet = readSheet(Uint8Array.from([...utf8('field,minutes,bees\nÅs,10,3\n'), ...latin1('Ängen,10,1\n')]))
    expect(rowsOf(sheet).map(([field]) => field)).toEqual(['Ås', 'Ängen'])
    expect(noteIds(sheet)).toContain('exchange/note/mixed-encoding')
  })
})

describe('lines and cells', () => {
  it.each([
    ['LF', '\n', 'LF'],
    ['CRLF', '\r\n', 'CRLF'],
    ['a bare CR', '\r', 'CR'],
  ])('line ends: %s', (_, end, lineEnds) => {
    const sheet = readSheet(utf8(simple.replaceAll('\n', end)))
    expect(sheet.lineEnds).toBe(lineEnds)
    expect(rowsOf(sheet)).toHaveLength(2)
    expect([...sheet.lines]).toEqual([2, 3])
  })

  it('mixed line ends', () => {
    const sheet = readSheet(utf8('field,minutes,bees\rA,10,3\r\nB,10,0\nC,10,1'))
    expect(sheet.lineEnds).toBe('mixed')
    expect(sheet.rows).toBe(3)
  })

  it.each([',', ';', '\t', '|'])('delimiter %j', (delimiter) => {
    const sheet = readSheet(utf8(simple.replaceAll(',', delimiter)))
    expect(sheet.delimiter).toBe(delimiter)
    expect(rowsOf(sheet)[1]).toEqual(['Dal', '10', '0'])
  })

  it('quoted cells hold delimiters, quotes and line ends; lines are still counted', () => {
    const sheet = readSheet(utf8('field,minutes,note\n"Gjern, north",10,"two\nlines ""here"""\nDal,10,x\n'))
    expect(rowsOf(sheet)).toEqual([
      ['Gjern, north', '10', 'two\nlines "here"'],
      ['Dal', '10', 'x'],
    ])
    expect([...sheet.lines]).toEqual([2, 4])
  })

  it('a stray quote spoils its own line only', () => {
    const sheet = readSheet(utf8('field,minutes,bees\nA,10,3\n"B,10,4\nC,10,5\nD,10,6" plot\nE,10,7\n'))
    expect(rowsOf(sheet).map(([field]) => field)).toEqual(['A', 'C', 'D', 'E'])
    expect(sheet.refused).toEqual([{ line: 3, written: '"B\t10\t4', because: { id: 'exchange/row/stray-quote', values: {} } }])
  })

  it('rows with too few or too many cells are refused one by one, and kept', () => {
    const sheet = readSheet(utf8('field,minutes,bees\nA,10,3\nB,10\nC,10,4,5\nD,10,6,,\n'))
    expect(rowsOf(sheet).map(([field]) => field)).toEqual(['A', 'D'])
    expect(sheet.refused.map(({ line, written, because }) => [line, written, because.id])).toEqual([
      [3, 'B\t10', 'exchange/row/too-few-cells'],
      [4, 'C\t10\t4\t5', 'exchange/row/too-many-cells'],
    ])
  })

  it('an enormous cell refuses its row, not the file', () => {
    const sheet = readSheet(utf8(`field,minutes,bees\nA,10,3\n${'x'.repeat(40_000)},10,4\n`))
    expect(sheet.rows).toBe(1)
    expect(sheet.refused[0]).toMatchObject({ line: 3, because: { id: 'exchange/row/cell-too-long' } })
    expect(sheet.refused[0]?.written.length).toBeLessThanOrEqual(2_000)
  })

  it('a single NUL or direction sign is told and kept out of names', () => {
    const sheet = readSheet(
      utf8('field,minutes,bees\nA\u0000b,10,3\n\u202eB,10,4\nlong enough to be text,10,4\nand more of it here,10,4\n'),
    )
    expect(noteIds(sheet)).toContain('exchange/note/control-characters')
    expect(noteIds(sheet)).toContain('exchange/note/unseen-signs')
    expect(sheet.rows).toBe(4)
  })

  it('control characters of the upper half are told, however many, and are no proof against a text', () => {
    const sheet = readSheet(utf8(`field,minutes,bees\nA\u009bb${'\u0085'.repeat(20)},10,3\n`))
    expect(sheet.notes).toContainEqual({ id: 'exchange/note/control-characters', values: { characters: 21 } })
  })
})

describe('headers and what is no row', () => {
  it('names that come twice or not at all are made unique', () => {
    expect(readSheet(utf8('field,bees,bees,\nA,1,2,x\n')).headers).toEqual(['field', 'bees', 'bees (2)', 'column 4'])
  })

  it('a header that is a whole question is known by its beginning, also where it stands once more', () => {
    const question = 'How many insects of any kind did you see on the flowers of the plot? '.repeat(5)
    const header = `field,${question}one,${question}two`
    const sheet = readSheet(utf8(`${header}\nA,1,2\n${header}\nB,3,4\n`))
    expect(sheet.headers.map((name) => name.length <= 200)).toEqual([true, true, true])
    expect(sheet.headers[1]).toBe(`${question.slice(0, 179)}…`)
    expect(sheet.headers[2]).toBe(`${question.slice(0, 179)}… (2)`)
    expect(rowsOf(sheet)).toHaveLength(2)
  })

  it('titles, blank lines, foot notes', () => {
    const sheet = readSheet(utf8('Counts of 2031,,\n\n,,\nfield,minutes,bees\nA,10,1\n\nB,10,2\n,,\nDone by K,,\n'))
    expect(sheet.headerLines).toEqual([4])
    expect(sheet.rows).toBe(2)
    expect(sheet.blankLines).toBe(4)
    expect(sheet.asides.map(({ line, what }) => [line, what])).toEqual([
      [1, 'title'],
      [4, 'header'],
      [9, 'note'],
    ])
  })

  it('a farm whose name begins like a total is a farm', () => {
    const sheet = readSheet(
      utf8('field,date,minutes,bees,note\nMean Meadow,2031-05-04,10,3,\nSum Hill,2031-05-04,10,4,\nTotal,,20,7,\n'),
    )
    expect(rowsOf(sheet).map(([field]) => field)).toEqual(['Mean Meadow', 'Sum Hill'])
    expect(noteIds(sheet)).toContain('exchange/note/totals-agree')
  })

  it('a mean under the table is left out and told', () => {
    const sheet = readSheet(utf8('field,date,bees\nA,2031-05-04,3\nB,2031-05-04,4\nMean,,3.5\n'))
    expect(sheet.rows).toBe(2)
    expect(sheet.notes).toContainEqual({ id: 'exchange/note/total-left-out', values: { line: 4, label: 'Mean' } })
  })

  it('a header line of a person stands before detection', () => {
    const text = utf8('a,b,c\nfield,minutes,bees\nA,10,1\n')
    expect(readSheet(text, { header: [2] }).headers).toEqual(['field', 'minutes', 'bees'])
    expect(readSheet(text, { header: [1, 2] }).headers).toEqual(['a / field', 'b / minutes', 'c / bees'])
  })
})

describe('files that are refused as a whole', () => {
  it.each([
    ['nothing', new Uint8Array(), 'exchange/file/empty'],
    ['blanks', utf8(' \n\n'), 'exchange/file/empty'],
    ['a workbook', Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0]), 'exchange/file/not-text'],
    ['a picture', Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10]), 'exchange/file/not-text'],
    ['noise', Uint8Array.from({ length: 300 }, (_, k) => (k * 37) % 32), 'exchange/file/not-text'],
    ['prose', utf8('Dear all,\nthe counts went well.\nBest wishes\nK\n'), 'exchange/sheet/not-a-table'],
    ['rows without a header', utf8('1,2,3\n4,5,6\n'), 'exchange/sheet/no-header'],
    ['a header without rows', utf8('field,minutes,bees\n'), 'exchange/sheet/no-rows'],
    ['ragged rows', utf8('field,minutes,bees\nA,1\nB,1\nC,1,2\nD\tx,1\nE,1,1,1,1\n'), 'exchange/sheet/not-a-table'],
    [
      'too many columns',
      utf8(`${Array.from({ length: 1001 }, (_, k) => `c${k}`).join(',')}\n${'1,'.repeat(1000)}1\n`),
      'exchange/sheet/too-wide',
    ],
    [
      'too many columns, brought by a header further down',
      utf8(`${columns(700)}\n${ones}\n${ones}\n${columns(700)},${columns(400, 'd')}\n`),
      'exchange/sheet/too-wide',
    ],
    [
      'a million cells between the names of a header further down',
      utf8(`a,b,c\n1,2,3\nb,a,c${','.repeat(1_000_000)}b\n`),
      'exchange/sheet/too-wide',
    ],
  ])('%s', (_, bytes, code) => {
    expect(codeOf(() => readSheet(bytes))).toBe(code)
  })
})
