import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createDemonstration } from '@thrum/host'
import { unwatched } from '@thrum/model/ground'
import { createSpeaker, withTexts } from '@thrum/report'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { runCommand } from '../src/run-command.ts'
import { allWords, type Terminal } from '../src/terminal/terminal.ts'
import { pseudo } from './pseudo-words.ts'

// Every sentence goes through its id (decision 0005): spoken in a made-up language, nothing printed may hold a run of plain
// letters that is no name of the data, no word of the command line and no equation.

const strange = createSpeaker(pseudo(allWords), 'en')

function pseudoTerminal(printed: string[]): Terminal {
  return {
    say: strange,
    isJson: false,
    isInteractive: false,
    work: unwatched,
    print: (text) => printed.push(text),
    json: () => undefined,
    note: (text) => printed.push(text),
    ask: async () => '',
  }
}

/** Words that come from data, the command line or mathematics, and may stand as they are. */
const fromData = new Set(
  `honey bee bumble small solitary hover fly other insect strip no centre edge morning afternoon before after sweet cherry sunflower
  observer field date start minutes stage flowers tally visit kinds visits verdict shown alike unsettled leaning design blocks thrum csv
  vale who what differs is sound blocks times exp ln sum sqrt se level a blocks nuisances ratio limits sample of over fields mean one
  log daypart position season per time area all kinds individuals hives hive distance hiveDistance mapping json missing nothing temperature
  new import check settle correct withdraw history forget merge restore ask help json title in accept absent unit crop year effort assigned none seen not looked for known at random recorded
  chosen Larkmoor NUMBER TEXT YEAR MONTH DAY until flower and snapshot more fewer bloom min`.split(/\s+/u),
)

/** Runs of plain letters that no catalogue wrote. Texts a catalogue wrote have no plain letters left. */
function strayWords(text: string): readonly string[] {
  const plain = text
    .split('\n')
    .filter((line) => !/^\s*(z_f|d_f|R =|p =|inflation =|a least-squares)/u.test(line))
    .join(' ')
  const words = plain.match(/(?<![\p{L}\d_./'-])[A-Za-z]{3,}(?![\p{L}\d_./(])/gu) ?? []
  return [...new Set(words)].filter((word) => !fromData.has(word) && !fromData.has(word.toLowerCase()))
}

let folder = ''
const here = process.cwd()
const run = async (...argv: string[]): Promise<string> => {
  const printed: string[] = []
  await runCommand(argv, pseudoTerminal(printed))
  return printed.join('\n')
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'thrum-pseudo-'))
  process.env.THRUM_HOME = folder
  await createDemonstration(join(folder, 'vale.thrum'))
  writeFileSync(
    join(folder, 'sheet.csv'),
    'field,date,start,minutes,bloom stage,honey bee,bumble bee\nLarkmoor,2031-06-03,10:15,15,65,14,9\nLarkmoor,2031-06-12,10:30,15,68,17,4\n',
  )
})
afterAll(() => {
  rmSync(folder, { recursive: true, force: true })
  expect(process.cwd()).toBe(here)
})

describe('a made-up language', () => {
  it('is thoroughly strange, and keeps what fills the blanks', () => {
    const said = strange({ id: 'cli/new/made', values: { file: 'vale.thrum' } })
    expect(said).toContain('vale.thrum')
    expect(strayWords(said)).toEqual([])
  })

  it('shows a sentence that bypasses the catalogue', () => {
    expect(strayWords('Hello newcomer, this was printed past every catalogue')).toContain('newcomer')
  })

  it.each([
    ['help'],
    ['help', 'what-differs'],
    ['ask', 'no-such-question'],
    ['ask', 'who-visits', '--colour', 'x'],
    ['ask', 'what-differs', '--between', 'strip'],
    ['frobnicate'],
    ['new', 'a?b.thrum'],
    ['import', 'no-such-file'],
  ])('%s %s: nothing bypasses it', async (...argv) => {
    const vale = ['ask', 'check'].includes(argv[0] ?? '') ? ['--in', join(folder, 'vale.thrum')] : []
    expect(strayWords((await run(...argv, ...vale)).replaceAll(/frobnicate|no-such-\w+|colour|a\?b/gu, ''))).toEqual([])
  })

  it.each([
    [['who-visits']],
    [['who-visits', '--by', 'season']],
    [['what-differs', '--kinds', 'bumble bee', '--between', 'strip', '--worth', '2']],
    [
      [
        'what-differs',
        '--kinds',
        'honey bee',
        '--since',
        '2032-07-23',
        '--crop',
        'sunflower',
        '--season',
        '2032',
        '--worth',
        '2',
      ],
    ],
    [['what-differs', '--kinds', 'bumble bee', '--between', 'strip', '--crop', 'sunflower', '--worth', '2']],
    [['what-differs', '--between', 'kind', '--levels', 'honey bee,bumble bee', '--worth', '2']],
    [['is-design-sound', '--between', 'position']],
  ])('answers: %j', async (argv) => {
    const printed = await run('ask', ...argv, '--in', join(folder, 'vale.thrum'))
    // Published sources are quoted, not translated: "- Student (1908) ... [from memory]".
    const sentences = printed.replaceAll(/\s+/gu, ' ').replaceAll(/- \p{Lu}[\p{L}-]+ (?:[A-Z]\.|\()[^[]*\[[^\]]*\]/gu, '')
    expect(strayWords(sentences.replaceAll(/(?:z_f|d_f|R|p|inflation) = .*?(?= - )/gu, ''))).toEqual([])
  })

  it('import, check: nothing bypasses it', async () => {
    await run('new', join(folder, 'sheet.thrum'))
    const offered = await run('import', join(folder, 'sheet.csv'), '--in', join(folder, 'sheet.thrum'))
    expect(strayWords(offered.replaceAll(folder, ''))).toEqual([])
    expect(strayWords(await run('check', '--in', join(folder, 'sheet.thrum')))).toEqual([])
  })

  it('the machine form carries ids, values and texts side by side', () => {
    expect(withTexts({ id: 'cli/check/fine', values: {} }, strange)).toEqual({
      id: 'cli/check/fine',
      values: {},
      text: strange({ id: 'cli/check/fine', values: {} }),
    })
  })
})
