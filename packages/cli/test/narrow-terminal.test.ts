import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { columnsOf, pageWidth } from '@thrum/report'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { commands } from '../src/run-command.ts'
import { speaker } from '../src/terminal/terminal.ts'
import { type Told, tell } from './in-process.ts'
import { messySheet, wideSheet } from './sheets.ts'

/** Short names, so that what is too long is not the path of a test. */
let folder = ''
const at = (name: string): string => join(folder, name)
const say = speaker('./thrum')
const tooWide = ({ out, notes }: Told, columns: number): readonly string[] =>
  `${out}\n${notes}`.split('\n').filter((line) => columnsOf(line) > columns && !line.includes(folder))
const isCommand = (line: string): boolean => /^\s*\.\/thrum /u.test(line)

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'thrum-narrow-'))
  process.env.THRUM_HOME = at('home')
  writeFileSync(at('counts.csv'), wideSheet())
  writeFileSync(at('messy.csv'), messySheet)
  await tell(['new', at('own.thrum')])
  for (const sheet of ['counts.csv', 'messy.csv']) await tell(['import', at(sheet), '--in', at('own.thrum'), '--accept'])
  pageWidth.columns = 40
})
afterAll(() => {
  pageWidth.columns = 80
  rmSync(folder, { recursive: true, force: true })
})

describe('a terminal of 40 columns', () => {
  it.each([
    ['check'],
    ['settle'],
    ['history', 'counts.csv:2'],
    ['import', 'MESSY'],
    ['ask', 'who-visits'],
    ['ask', 'what-differs', '--between', 'strip', '--worth', '2'],
    ['ask', 'is-design-sound', '--between', 'strip'],
    ['ask', 'what-differs', '--between', 'mood', '--worth', '2'],
  ])('holds %s %s', async (...argv) => {
    const told = await tell([...argv.map((word) => (word === 'MESSY' ? at('messy.csv') : word)), '--in', at('own.thrum')], {
      say,
    })
    expect(told.out + told.notes).not.toBe('')
    // The head of a table names its unit and its interval; it is the one line that is not broken.
    expect(tooWide(told, 40).filter((line) => !isCommand(line) && !line.endsWith('said)'))).toEqual([])
  })

  it.each([[], ...commands.map(({ name }) => [name]), ['who-visits']])('holds help %s', async (...topic) => {
    const told = await tell(['help', ...topic], { say })
    expect(tooWide(told, 40).filter((line) => !isCommand(line))).toEqual([])
  })

  it('options stand above what they do, commands on a line of their own', async () => {
    const { out } = await tell(['help', 'forget'], { say })
    expect(out.split('\n')).toEqual([
      './thrum forget observer "NAME" --because TEXT [--accept] [--in FILE.thrum]',
      'Takes a name out of everything in the',
      'project: tables, notes, corrections, the',
      'files as they came. What stands instead',
      'is the same in every copy. Shown first.',
      './thrum forget place FIELD --because TEXT',
      '      the point and outline of a field',
      './thrum forget fact ID --because TEXT',
      '      a fact, a row (FILE:LINE) or a',
      '      file',
      'The backups beside the project forget it',
      'too, and every copy that merges.',
    ])
    const importing = (await tell(['help', 'import'], { say })).out.split('\n')
    expect(importing.slice(importing.indexOf('  --absent none-seen'), importing.indexOf('  --year 2031'))).toEqual([
      '  --absent none-seen',
      '      in a long table: a kind without a',
      '      row was looked for and not seen',
      '      (or not-looked-for, or not-known)',
      '  --crop, --season, --observer TEXT',
      '      the same for every row',
    ])
  })
})
