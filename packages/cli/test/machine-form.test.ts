import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createDemonstration, plantedQuestions } from '@thrum/host'
import { columnsOf } from '@thrum/report'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { commands } from '../src/run-command.ts'
import { typedName } from '../src/terminal/arguments.ts'
import { tell } from './in-process.ts'
import { wideSheet } from './sheets.ts'

let folder = ''
const at = (name: string): string => join(folder, name)
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'thrum-json-'))
  process.env.THRUM_HOME = at('home')
  await createDemonstration(at('vale.thrum'))
  await tell(['new', at('own.thrum')])
  writeFileSync(at('counts.csv'), wideSheet())
  copyFileSync(at('own.thrum'), at('copy.thrum'))
  await tell(['import', at('counts.csv'), '--in', at('own.thrum'), '--accept'])
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('--json', () => {
  const lines: { readonly [command: string]: readonly string[] } = {
    new: ['new', 'NEW'],
    import: ['import', 'SHEET', '--in', 'OWN'],
    check: ['check', 'OWN'],
    settle: ['settle', '--in', 'OWN'],
    correct: ['correct', 'counts.csv:2', 'honey bee', '9', '--reason', 'slip', '--in', 'OWN'],
    withdraw: ['withdraw', 'counts.csv:3', '--reason', 'twice', '--in', 'OWN'],
    history: ['history', 'counts.csv:2', '--in', 'OWN'],
    forget: ['forget', 'observer', 'walker 1', '--because', 'asked to', '--in', 'OWN'],
    merge: ['merge', 'COPY', '--in', 'OWN'],
    restore: ['restore', 'OWN'],
    ask: ['ask', 'who-visits', '--in', 'OWN'],
    fit: ['fit', 'SHEET', '--response', 'honey bee', '--family', 'nb2', '--fixed', 'strip', '--random', 'field', '--unchecked'],
    serve: ['serve', 'OWN', '--port', '0'],
    help: ['help'],
  }
  const files: { readonly [word: string]: string } = {
    NEW: 'new.thrum',
    OWN: 'own.thrum',
    COPY: 'copy.thrum',
    SHEET: 'counts.csv',
  }
  const asTyped = (argv: readonly string[]) => argv.map((word) => (files[word] === undefined ? word : at(files[word])))

  it('every command has a machine form, and says nothing beside it', async () => {
    for (const { name } of commands) {
      const argv = lines[name]
      expect(argv, `a line for ${name}`).toBeDefined()
      const { code, json, notes } = await tell(asTyped(argv ?? []), { isJson: true })
      expect([code, notes], `${name}: ${JSON.stringify(json)}`).toEqual([0, ''])
      expect(json, name).toBeTypeOf('object')
      expect(JSON.parse(JSON.stringify(json)), name).toEqual(json)
    }
  })

  it('an error has a code, its values, its text and a remedy', async () => {
    for (const argv of [
      ['never'],
      ['ask', 'never'],
      ['check', at('counts.csv')],
      ['ask', 'what-differs', '--between', 'strip', '--in', at('own.thrum')],
    ]) {
      const { code, json, notes } = await tell(argv, { isJson: true })
      expect([code, notes]).toEqual([2, ''])
      const { error } = json as { readonly error: { readonly [key: string]: unknown } }
      expect(Object.keys(error)).toEqual(['code', 'values', 'text', 'remedy'])
      for (const key of ['code', 'text', 'remedy']) expect(error[key]).toMatch(/\S/u)
    }
  })
})

describe('80 columns', () => {
  it('hold every planted answer, and every answer to them', async () => {
    for (const { question, options } of plantedQuestions) {
      const words = Object.entries(options).flatMap(([name, value]) => [
        `--${typedName(name)}`,
        Array.isArray(value) ? value.join(',') : String(value),
      ])
      for (const ask of [question, 'is-design-sound']) {
        const { code, out } = await tell(['ask', ask, ...words, '--in', at('vale.thrum')])
        expect(code).toBe(0)
        expect(out.split('\n').filter((line) => columnsOf(line) > 80)).toEqual([])
      }
    }
  })

  it('hold all help', async () => {
    const topics = [[], ...commands.map(({ name }) => [name]), ['who-visits'], ['what-differs'], ['is-design-sound']]
    for (const topic of topics) {
      const { out } = await tell(['help', ...topic])
      expect(
        out.split('\n').filter((line) => columnsOf(line) > 80),
        topic.join(),
      ).toEqual([])
    }
  })
})
