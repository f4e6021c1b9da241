import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { jsonText } from '../src/terminal/terminal.ts'
import { tell, testFolder } from './in-process.ts'
import { wideSheet } from './sheets.ts'

let folder = ''
beforeEach(async () => {
  folder = testFolder()
  process.env.THRUM_HOME = join(folder, 'home')
  await tell(['new', join(folder, 'own.thrum')])
})

function bring(text: string, isJson = false) {
  const path = join(folder, 'counts.csv')
  writeFileSync(path, text)
  return tell(['import', path, '--in', join(folder, 'own.thrum'), '--accept'], { isJson })
}

describe('the machine form', () => {
  it('holds no raw control code and no mark of direction, and means the same', () => {
    const value = { name: 'a\u0000\u001b[31m\u007f\u009b\u061c\u200e\u202e\u2066\u2028\ufeffé蜂', '\u202e': ['\ud83d'] }
    const text = jsonText(value)
    expect(text).not.toMatch(/(?!\n)\p{Cc}|[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\u2028\u2029\ufeff]/u)
    expect(text).toContain('é蜂')
    expect(JSON.parse(text)).toEqual(value)
  })

  it('of an import has every reading that is more than its own digits, not only those that are printed', async () => {
    const { json } = await bring(wideSheet().replace(/,10,200,/gu, ',10 min,0200,'), true)
    expect((json as { readonly readings: unknown }).readings).toEqual([
      { column: 'open flowers', written: '0200', value: 200, printed: '200', because: 'exchange/cell/read-as', cells: 32 },
      { column: 'minutes', written: '10 min', value: 10, printed: '10', because: 'exchange/cell/minutes', cells: 32 },
    ])
  })
})

describe('what is printed', () => {
  it('of a name that never ends is its beginning', async () => {
    const { code, out } = await bring(wideSheet().replaceAll('Field A', 'x'.repeat(30_000)))
    expect(code).toBe(0)
    expect(out).toContain('x…')
    expect(out.length).toBeLessThan(10_000)
  })

  it('of a header of a megabyte is its beginning, and the file is brought', async () => {
    const { code, out, notes } = await bring(wideSheet().replace('hover fly', `hover fly ${'x'.repeat(1_048_576)}`))
    expect([code, notes]).toEqual([0, ''])
    expect(out).toContain('x…')
    expect(out.length).toBeLessThan(10_000)
  })

  it('of a time that stands beside a date is the time, as a clock shows it', async () => {
    const { out } = await bring(wideSheet().replaceAll('10:30', '2031-05-05 10:30'))
    expect(out).toContain('start: "2031-05-05 10:30" is read as 10:30')
  })

  it('of a row in history is as wide as the page, however long its field is named', async () => {
    await bring(wideSheet().replaceAll('Field A', 'x'.repeat(30_000)))
    const { code, out } = await tell(['history', 'counts.csv:2', '--in', join(folder, 'own.thrum')])
    expect(code).toBe(0)
    expect(out.split('\n').filter((line) => line.length > 80)).toEqual([])
  })
})

describe('a line that was set aside', () => {
  const rows = wideSheet().split('\n')
  it.each([
    ['too many cells', `${rows[1]},more,and more`, 'it has more cells than there are columns'],
    ['too few cells', 'Field A,2031-05-05', 'it has fewer cells than there are columns'],
    ['an endless cell', `${'x'.repeat(40_000)},2031-05-05,10:30,walker 1,no,10,200,7,3`, 'more characters than can be read'],
    ['a line entered twice', rows[2] ?? '', 'it equals another line: one watch entered twice, or two watches?'],
  ])('with %s is told again, with why', async (_, line, why) => {
    expect((await bring([...rows.slice(0, -1), line, ''].join('\n'))).code).toBe(0)
    const history = await tell(['history', `counts.csv:${rows.length}`, '--in', join(folder, 'own.thrum')])
    expect(history.code).toBe(2)
    expect(history.notes.replace(/\s+/gu, ' ')).toContain(why)
    expect((await tell(['settle', '--in', join(folder, 'own.thrum')])).code).toBe(0)
  })
})
