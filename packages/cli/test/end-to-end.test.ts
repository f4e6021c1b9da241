import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { plantedQuestions } from '@thrum/host'
import { columnsOf } from '@thrum/report'
import { describe, expect, it } from 'vitest'
import { tell, testFolder } from './in-process.ts'
import { wideSheet } from './sheets.ts'
import { thrum } from './spawned.ts'

const lines = (text: string): readonly string[] => text.split('\n')
const tooWide = (text: string): readonly string[] => lines(text).filter((line) => columnsOf(line) > 80)

/** A folder with a project of eight fields in it; the steps to it are tried elsewhere. */
async function folderWithProject(sheet = wideSheet(), ...said: readonly string[]): Promise<string> {
  const folder = testFolder()
  process.env.THRUM_HOME = join(folder, 'home')
  writeFileSync(join(folder, 'counts.csv'), sheet)
  await tell(['new', join(folder, 'own.thrum')])
  const { code } = await tell(['import', join(folder, 'counts.csv'), '--in', join(folder, 'own.thrum'), '--accept', ...said])
  expect(code).toBe(0)
  return folder
}

describe('the start', () => {
  it('makes the demonstration once, answers its questions as planted, and keeps to the page', () => {
    const folder = testFolder()
    const first = thrum({ folder, name: 'start' }, '--exit')
    expect([first.code, first.err]).toEqual([0, ''])
    expect(tooWide(first.out)).toEqual([])
    // Of kinds asked together the verdict that was planted is that of one kind, not of the question.
    const told = plantedQuestions.map(({ id, verdict }) =>
      id === 'strips/other-kinds' ? expect.any(String) : `verdict: ${verdict}`,
    )
    expect(lines(first.out).filter((line) => line.startsWith('verdict: '))).toEqual(told)

    const second = thrum({ folder, name: 'start' }, '--exit')
    expect([second.code, second.out]).toEqual([0, first.out])
    expect(readdirSync(folder).filter((name) => name.endsWith('.thrum'))).toEqual(['ostrel-vale.thrum'])
  })
})

describe('a project of one’s own', () => {
  it('from nothing to an answer and its receipt: results on the output, nothing beside it', () => {
    const folder = testFolder()
    writeFileSync(join(folder, 'counts.csv'), wideSheet())
    const ask = ['ask', 'what-differs', '--between', 'strip', '--kinds', 'honey bee', '--worth', '1.5', '--receipt', 'receipt']
    const told = [
      ['new', 'own', '--title', 'My Vale'],
      ['import', 'counts.csv', '--accept', '--assigned', 'strip=at random'],
      ask,
    ].map((argv) => {
      const { code, out, err } = thrum({ folder }, ...argv)
      expect([code, err], argv.join(' ')).toEqual([0, ''])
      expect(tooWide(out), argv.join(' ')).toEqual([])
      return out
    })
    expect(lines(told[2] ?? '')).toContain('verdict: shown')
    expect(told[2]).toContain('yes caused, under these conditions,')
    expect(readdirSync(join(folder, 'receipt')).sort()).toEqual([
      'SHA256SUMS',
      'answer.json',
      'counts.csv',
      'design.csv',
      'model-1.csv',
      'model-per-flower-1.csv',
      'receipt.R',
    ])
    const answer = JSON.parse(readFileSync(join(folder, 'receipt', 'answer.json'), 'utf8'))
    expect([answer.version, answer.verdict, answer.receipt.rows]).toEqual([1, 'shown', { selected: 32, of: 32 }])
    expect(answer.headline.text).toContain('caused, under these conditions')
  })

  it('ends with 1 where what was checked does not hold', async () => {
    const untimed = wideSheet().replaceAll(',10,200,', ',,200,')
    const folder = await folderWithProject(untimed, '--effort', 'not recorded')
    const { code, out, err } = thrum({ folder }, 'check')
    expect([code, err]).toEqual([1, ''])
    expect(lines(out)).toContain('Something blocks; see above.')
  })

  it('bad usage ends with 2: what to do stands beside the output, which is empty', async () => {
    const folder = await folderWithProject()
    const unknown = thrum({ folder }, 'never')
    expect([unknown.code, unknown.out]).toEqual([2, ''])
    expect(unknown.err).toMatch(/There is no command "never"\.\nCommands are: new, import/u)
    const worth = thrum({ folder }, 'ask', 'what-differs', '--between', 'strip')
    expect([worth.code, worth.out]).toEqual([2, ''])
    expect(worth.err).toMatch(/worth acting on.*\n.*--worth 1\.5/u)
    expect(tooWide(worth.err)).toEqual([])
  })

  it('none in the folder, or several: it says how to name one', async () => {
    const folder = testFolder()
    process.env.THRUM_HOME = join(folder, 'home')
    const none = thrum({ folder }, '--json', 'check')
    expect([none.code, none.err]).toEqual([2, ''])
    expect(JSON.parse(none.out)).toEqual({
      error: {
        code: 'cli/no-project-here',
        values: { found: '' },
        text: 'There is no project in this folder.',
        remedy: expect.stringContaining('thrum new'),
      },
    })
    for (const name of ['one', 'two']) await tell(['new', join(folder, name)])
    const several = thrum({ folder }, 'ask', 'who-visits')
    expect(several.code).toBe(2)
    expect(several.err).toMatch(
      /more than one project in this folder: one\.thrum, two\.thrum\.\nName the one you mean with --in\./u,
    )
  })
})

describe.skipIf(process.platform === 'win32')('a project that takes no writing', () => {
  it('is answered all the same, says so beside the answer, and stays as it was', async () => {
    const folder = await folderWithProject()
    const path = join(folder, 'own.thrum')
    chmodSync(path, 0o444)
    mkdirSync(join(folder, 'home'), { recursive: true })
    chmodSync(folder, 0o555)
    const before = readFileSync(path)
    try {
      const { code, out, err } = thrum({ folder, asNobody: true }, 'ask', 'what-differs', '--between', 'strip', '--worth', '2')
      expect(code).toBe(0)
      expect(lines(out).some((line) => line.startsWith('verdict: '))).toBe(true)
      expect(err).toBe('the file is protected against writing\n')
      const writing = thrum({ folder, asNobody: true }, 'import', 'counts.csv', '--accept')
      expect(writing.code).toBe(2)
      expect(writing.err).toMatch(/own\.thrum cannot be written: the file is protected against writing/u)
    } finally {
      chmodSync(folder, 0o755)
    }
    expect(readFileSync(path).equals(before)).toBe(true)
    expect(existsSync(`${path}-wal`)).toBe(false)
  })
})
