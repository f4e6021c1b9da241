import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { columnsOf, pageWidth } from '@thrum/report'
import { describe, expect, it, onTestFinished } from 'vitest'
import { speaker } from '../../src/terminal/terminal.ts'
import { tell, testFolder } from '../in-process.ts'
import { wideSheet } from '../sheets.ts'

/** A sheet of counts in its file, and the words of a fit to it. */
function sheet(text = wideSheet()): string {
  const file = join(testFolder(), 'counts.csv')
  writeFileSync(file, text)
  return file
}
const bees = ['--response', 'honey bee', '--family', 'nb2', '--fixed', 'strip', '--random', 'field', '--effort', 'minutes']
const codeIn = ({ json }: { readonly json: unknown }) => (json as { readonly error?: { readonly code: string } }).error?.code

describe('thrum fit', () => {
  it('tells what was fitted, its table, what varies, means, checks, cautions, and how', async () => {
    const { code, out, notes } = await tell(['fit', sheet(), ...bees, '--per', '60'])
    expect([code, notes]).toEqual([0, ''])
    const headings = ['Coefficients', 'What varies', 'strip: means and pairs', 'Checks', 'Cautions', 'How it was fitted']
    expect(out.split('\n').filter((line) => headings.includes(line))).toEqual(headings)
    expect(out).toMatch(/^honey bee in 32 rows, as counts that scatter/u)
    expect(out).toMatch(/^ {2}strip: yes +0\.\d+ +\S+ +2\.\d+ +\S+ – \S+ +6 +<0\.001$/mu)
    expect(out).toContain('Means per 60 of minutes')
    expect(out).toContain('what-differs')
    expect(out.split('\n').filter((line) => columnsOf(line) > 80)).toEqual([])
  })

  it('says the same in Spanish, and is brief where that is wished', async () => {
    const say = speaker('thrum', 'es')
    const file = sheet()
    const { out } = await tell(['fit', file, ...bees, '--unchecked'], { say })
    expect(out).toMatch(/^honey bee en 32 filas, como conteos/u)
    expect(out).toMatch(/^Lo que varía$/mu)
    expect(out).toMatch(/0,\d/u)
    const short = await tell(['fit', file, ...bees, '--unchecked', '--brief'], { say })
    expect(short.out.split('\n').length).toBeLessThan(out.split('\n').length - 10)
  })

  it('holds a terminal of 40 columns', async () => {
    onTestFinished(() => {
      pageWidth.columns = 80
    })
    pageWidth.columns = 40
    const { out } = await tell(['fit', sheet(), ...bees, '--unchecked', '--without', 'strip'])
    expect(out.split('\n').filter((line) => columnsOf(line) > 40)).toEqual([])
  })

  it('ends with 1 where there is no fit, and says why and what to do', async () => {
    const none = wideSheet().replaceAll(/^(.*),(no|yes),10,200,\d+,(\d+)$/gmu, '$1,$2,10,200,0,$3')
    const receipt = join(testFolder(), 'receipt')
    const { code, out, notes } = await tell(['fit', sheet(none), ...bees, '--receipt', receipt])
    expect([code, notes]).toEqual([1, ''])
    expect(out).toContain('No fit')
    expect(out).toContain('all counts are 0')
    expect(out).toContain('Cure: ')
    expect(out).toContain('No receipt was written')
    expect(existsSync(receipt)).toBe(false)
    const { code: again, json } = await tell(['fit', sheet(none), ...bees], { isJson: true })
    expect([again, json]).toMatchObject([
      1,
      { kind: 'refused', reason: 'all-zero', text: { text: expect.stringContaining('0') } },
    ])
  })

  it.each([
    ['cli/fit/usage', []],
    ['cli/import/no-file', ['never.csv', ...bees]],
    ['questions/fit/response-needed', ['SHEET']],
    ['questions/fit/family-needed', ['SHEET', '--response', 'honey bee']],
    ['questions/fit/no-such-column', ['SHEET', ...bees, '--compare', 'honey bee ~ strip']],
    ['model/options/unknown', ['SHEET', ...bees, '--formula', 'x']],
    ['model/options/given-twice', ['SHEET', ...bees, '--fixed', 'observer']],
  ])('ends with 2 on %s', async (code, words) => {
    const told = await tell(['fit', ...words.map((word) => (word === 'SHEET' ? sheet() : word))], { isJson: true })
    expect([told.code, codeIn(told)]).toEqual([2, code])
  })

  it('names families that fit the numbers, a line each', async () => {
    const { notes } = await tell(['fit', sheet(), '--response', 'honey bee'])
    expect(notes).toMatch(/^nb2: .*; try\nthis first\nnb1: /mu)
  })

  it('names lines that are no rows, and rows that lack a cell, by the lines of the file', async () => {
    const [head = '', first = '', ...others] = wideSheet().trimEnd().split('\n')
    const lost = first.replace(/,10,200,/u, ',,200,')
    const file = sheet([head, lost, ...others, 'total,,,,,320,6400,400,90', ''].join('\n'))
    const { out } = await tell(['fit', file, ...bees, '--unchecked'])
    expect(out).toContain('minutes is missing in one row (line 2)')
    expect(out).toMatch(/One line was taken for a title, a total, a note or a header once\s+more, and not for a row \(line 34\)/u)
  })

  it('writes rows and R script in the place of an earlier receipt, and nowhere else', async () => {
    const receipt = join(testFolder(), 'receipt')
    const file = sheet()
    expect((await tell(['fit', file, ...bees, '--receipt', receipt, '--unchecked'])).code).toBe(0)
    expect(readdirSync(receipt).sort()).toEqual(['SHA256SUMS', 'fit.json', 'receipt.R', 'rows.csv'])
    expect((await tell(['fit', file, ...bees, '--receipt', receipt, '--unchecked'])).code).toBe(0)
    expect(readFileSync(join(receipt, 'rows.csv'), 'utf8').split('\r\n')[0]).toBe(
      '"line of the file","field","strip","minutes","honey bee"',
    )
    writeFileSync(join(receipt, 'mine.txt'), 'mine')
    expect(codeIn(await tell(['fit', file, ...bees, '--receipt', receipt], { isJson: true }))).toBe('cli/ask/receipt-folder-used')
  })

  it('work that is stopped ends without a result', async () => {
    const work = { signal: { aborted: true }, breathe: () => Promise.resolve() }
    const told = await tell(['fit', sheet(), ...bees], { isJson: true, work })
    expect([told.code, codeIn(told)]).toEqual([2, 'cli/stopped'])
  })
})
