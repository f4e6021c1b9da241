import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { commands } from '../../src/run-command.ts'
import { allWords, speaker } from '../../src/terminal/terminal.ts'
import { tell, testFolder } from '../in-process.ts'

describe('commands that are printed', () => {
  it('stand on a line of their own, and never break', async () => {
    const path = join(testFolder(), 'a-name-that-is-long-enough-to-reach-the-end-of-the-line.thrum')
    const { out } = await tell(['new', path], { say: speaker('./thrum') })
    expect(out.split('\n')).toContain(`    ./thrum import counts.csv --in ${path}`)
  })

  it('stand in no sentence of the terminal, the host and the store', () => {
    const names = commands.map(({ name }) => name).join('|')
    const inSentence = new RegExp(`[^ \\n] *thrum (?:${names})\\b|^ {1,3}thrum `, 'mu')
    const own = Object.entries(allWords).filter(([id]) => /^(?:cli|host|store)\//u.test(id))
    expect(own.filter(([, text]) => inSentence.test(text)).map(([id]) => id)).toEqual([])
    expect(inSentence.test('Bring a table: thrum import counts.csv')).toBe(true)
  })

  it.each([
    ['thrum', 'thrum'],
    ['./thrum', './thrum'],
    ['../tools/thrum', '../tools/thrum'],
    // What a message text or a shell would read otherwise is not told.
    ["o'brien/{thrum}", 'thrum'],
    ['my tools/thrum', 'thrum'],
  ])('are written as the program was called: %s', async (called, told) => {
    const { notes } = await tell(['ask'], { say: speaker(called) })
    expect(notes.split('\n')).toContain(`    ${told} ask who-visits`)
  })
})
