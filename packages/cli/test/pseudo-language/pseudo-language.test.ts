import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { mappingShape, measureUnits, roles } from '@thrum/exchange'
import { createDemonstration, factsOf, forgettable, plantedQuestions, usualSeed } from '@thrum/host'
import { type BodyOf, type ColumnDeclaration, type Fact, factKinds, type rowsBrought, tableDeclarations } from '@thrum/model'
import { rngAlgorithm } from '@thrum/model/ground'
import { questions } from '@thrum/questions'
import { createSpeaker } from '@thrum/report'
import { allKinds } from '@thrum/survey'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import { filledIn } from '../../src/commands/ask.ts'
import { commands } from '../../src/run-command.ts'
import { typedName } from '../../src/terminal/arguments.ts'
import { allWords } from '../../src/terminal/terminal.ts'
import { type Told, tell } from '../in-process.ts'
import { repository } from '../repository.ts'
import { longSheet, messySheet, wideSheet } from '../sheets.ts'
import { namesIn, plainLetters } from './plain-letters.ts'
import { pseudoWords } from './pseudo-words.ts'

/** Greek joins a list with "και" and writes no number with letters: nothing plain comes from the language itself. */
const say = createSpeaker(pseudoWords(allWords), 'el')

const tables: { readonly [table: string]: { readonly [column: string]: ColumnDeclaration } } = tableDeclarations

/** Words of the command line and of files, the same in every language. */
const declared = [
  ...commands.flatMap(({ name, options, flags }) => [name, ...[...options, ...flags].map(typedName)]),
  ...questions.flatMap(({ id, options }) => [
    id,
    ...Object.keys(options).map(typedName),
    // Choices that the host fills in are typed by nobody, and must not be told either.
    ...Object.entries(options).flatMap(([name, option]) =>
      option.type === 'choice' && !filledIn.includes(name) ? option.choices : [],
    ),
  ]),
  ...roles,
  ...Object.values(measureUnits).flat(),
  ...Object.values(tables).flatMap((columns) => [
    ...Object.keys(columns),
    ...Object.values(columns).flatMap(({ unit }) => unit ?? []),
  ]),
  // The mapping file speaks one language, and what is proposed for it is told in its words.
  JSON.stringify(z.toJSONSchema(mappingShape)),
  // What can be compared in any project, levels that the program itself names, and the kind that stands for all: they are
  // typed like the names of options.
  'daypart hive distance edge distance morning afternoon before after',
  allKinds,
  'json help thrum csv missing',
  ...factKinds.keys(),
  usualSeed,
  rngAlgorithm,
  // The one time zone that facts are told in.
  'UTC',
]

/** Everything that facts say: names of kinds, fields, levels, files, people, devices, ids. */
function textsOf(facts: readonly Fact[]): readonly string[] {
  return facts.flatMap(({ id, kind, by, device, subject, body }) => {
    const columns = kind === 'rows-brought' ? (body as unknown as BodyOf<typeof rowsBrought>).columns : []
    const words = columns.flatMap((column) => ('dictionary' in column ? column.dictionary : []))
    return [id, by, device, subject ?? '', kind === 'rows-brought' ? '' : JSON.stringify(body), ...words]
  })
}

/** Equations and citations are the same in every language. */
function formulas(json: unknown): readonly string[] {
  if (json === undefined) return []
  const method = (
    json as { readonly method?: { readonly equation: string; readonly references: readonly { readonly source: string }[] } }
  ).method
  return method === undefined ? [] : [method.equation, ...method.references.map(({ source }) => source)]
}

/** Runs a command line in the pseudo-language: what it printed that is neither of the catalogue nor a name. */
async function plainIn(
  argv: readonly string[],
  names: readonly string[],
  replies?: readonly string[],
): Promise<readonly string[]> {
  const told: Told = await tell(argv, { say, ...(replies === undefined ? {} : { replies }) })
  const known = namesIn(...declared, ...argv, ...names, ...formulas(told.json))
  return plainLetters(`${told.out}\n${told.notes}`, known)
}

let folder: string
let files: { readonly [name: string]: string }
let names: readonly string[]

/** The demonstration, and a project with sheets of every sort in it. */
beforeAll(async () => {
  process.env.THRUM_BY = 'walker'
  folder = mkdtempSync(join(tmpdir(), 'thrum-pseudo-'))
  process.env.THRUM_HOME = join(folder, 'home')
  const at = (name: string): string => join(folder, name)
  files = {
    vale: at('vale.thrum'),
    own: at('own.thrum'),
    small: at('small.thrum'),
    wide: at('wide.csv'),
    long: at('long.csv'),
    messy: at('messy.csv'),
  }
  await createDemonstration(files.vale ?? '')
  writeFileSync(files.wide ?? '', wideSheet())
  writeFileSync(files.long ?? '', longSheet())
  writeFileSync(files.messy ?? '', messySheet)
  writeFileSync(at('few.csv'), wideSheet(2))
  for (const [project, sheet] of [
    ['own.thrum', 'wide.csv'],
    ['own.thrum', 'messy.csv'],
    ['small.thrum', 'few.csv'],
  ] as const) {
    if (sheet !== 'messy.csv') await tell(['new', at(project), '--title', 'Small Vale'])
    expect((await tell(['import', at(sheet), '--in', at(project), '--accept'])).code).toBe(0)
  }
  const facts = []
  for (const project of ['vale.thrum', 'own.thrum', 'small.thrum']) facts.push(...(await factsOf(at(project))))
  names = [folder, wideSheet(), longSheet(), messySheet, ...textsOf(facts)]
}, 60_000)

afterAll(() => rmSync(folder, { recursive: true, force: true }))

const inVale = (...argv: readonly string[]) => plainIn([...argv, '--in', files.vale ?? ''], names)
const inOwn = (...argv: readonly string[]) => plainIn([...argv, '--in', files.own ?? ''], names)

describe('no sentence bypasses the catalogue', () => {
  it.each([[], ...[...commands.map(({ name }) => name), ...questions.map(({ id }) => id)].map((topic) => [topic])])(
    'help %s',
    async (...topic) => {
      expect(await plainIn(['help', ...topic], [])).toEqual([])
    },
  )

  const wordsOf = (options: { readonly [name: string]: unknown }): readonly string[] =>
    Object.entries(options).flatMap(([name, value]) => [
      `--${typedName(name)}`,
      Array.isArray(value) ? value.join(',') : String(value),
    ])

  it.each(plantedQuestions.map(({ id, question, options }) => [id, question, wordsOf({ ...options })] as const))(
    'the demonstration: %s',
    async (_, question, options) => {
      expect(await inVale('ask', question, ...options)).toEqual([])
      expect(await inVale('ask', 'is-design-sound', ...options)).toEqual([])
    },
  )

  it.each([
    ['who-visits'],
    ['who-visits', '--by', 'position', '--per', 'flower', '--brief'],
    ['who-visits', '--by', 'season', '--window', 'all', '--kinds', 'honey bee'],
    ['what-differs', '--between', 'kind', '--levels', 'honey bee,bumble bee', '--worth', '2'],
    ['what-differs', '--between', 'kind', '--levels', 'honey bee,bumble bee,hover fly', '--worth', '2'],
    ['what-differs', '--between', 'position', '--kinds', 'honey bee', '--against', 'bumble bee', '--worth', '2'],
    ['what-differs', '--between', 'strip', '--per', 'flower', '--worth', '1.5', '--expect', 'more'],
    ['what-differs', '--between', 'strip', '--per', 'area', '--kinds', 'hover fly', '--worth', '1.5'],
    ['what-differs', '--between', 'season', '--worth', '1.5', '--crop', 'sunflower'],
    ['what-differs', '--between', 'observer', '--worth', '1.5'],
    ['what-differs', '--between', 'crop', '--worth', '1.5'],
    ['what-differs', '--between', 'stage', '--step', '1', '--worth', '1.5'],
    ['what-differs', '--between', 'strip', '--since', '2032-07-20', '--worth', '1.5'],
    ['is-design-sound', '--between', 'daypart'],
    ['is-design-sound', '--between', 'observer'],
  ])('the demonstration: ask %s %s %s %s', async (...argv) => {
    expect(await inVale('ask', ...argv)).toEqual([])
  })

  it.each([
    ['who-visits'],
    ['what-differs', '--between', 'strip', '--worth', '2'],
    ['what-differs', '--between', 'strip', '--kinds', 'honey bee', '--per', 'flower', '--worth', '2'],
    ['what-differs', '--between', 'strip', '--per', 'area', '--worth', '2'],
    ['what-differs', '--since', '2031-05-09', '--worth', '2'],
    ['what-differs', '--between', 'daypart', '--worth', '2'],
    ['what-differs', '--between', 'kind', '--levels', 'honey bee,hover fly', '--worth', '2'],
    ['is-design-sound', '--between', 'strip'],
    ['is-design-sound', '--since', '2031-05-09'],
  ])('projects with little in them: ask %s %s %s %s', async (...argv) => {
    expect(await inOwn('ask', ...argv)).toEqual([])
    expect(await plainIn(['ask', ...argv, '--in', files.small ?? ''], names)).toEqual([])
  })

  it.each([
    [
      'nb2',
      '--fixed',
      'strip,open flowers',
      '--random',
      'field',
      '--effort',
      'minutes',
      '--per',
      '60',
      '--without',
      'strip,field',
    ],
    ['poisson', '--fixed', 'strip and observer', '--zeros', '--by', 'profile', '--unchecked'],
    ['gaussian', '--fixed', 'strip', '--random', 'field', '--slope', 'hover fly by field'],
    ['binomial', '--trials', 'open flowers', '--fixed', 'mood'],
    ['nb2', '--fixed', 'field date'],
  ])('a fit to a table: %s %s %s', async (family, ...words) => {
    const table = [files.wide ?? '', '--response', 'honey bee', '--family', family]
    expect(await plainIn(['fit', ...table, ...words], names)).toEqual([])
  })

  it('the receipt of an answer', async () => {
    expect(await inOwn('ask', 'who-visits', '--receipt', join(folder, 'receipt'))).toEqual([])
  })

  it('check, of each project', async () => {
    for (const project of [files.vale, files.own, files.small]) expect(await plainIn(['check', project ?? ''], names)).toEqual([])
  })

  it('what waits, corrections, withdrawals and histories', async () => {
    expect(await inOwn('settle')).toEqual([])
    expect(await inOwn('settle', 'messy.csv:3', 'honey bee', '3')).toEqual([])
    expect(await inOwn('settle', 'messy.csv:4', 'honey bee', 'missing')).toEqual([])
    expect(await inOwn('correct', 'wide.csv:2', 'honey bee', '6', '--reason', 'read the paper sheet again')).toEqual([])
    expect(await inOwn('correct', 'wide.csv:3', 'observer', 'walker nine', '--reason', 'another hand')).toEqual([])
    expect(await inOwn('withdraw', 'wide.csv:5', '--reason', 'counted in the wrong field')).toEqual([])
    expect(await inOwn('withdraw', 'wide.csv:6', 'hover fly', '--reason', 'none of these')).toEqual([])
    for (const row of ['wide.csv:2', 'wide.csv:3', 'wide.csv:5', 'wide.csv:6', 'messy.csv:3', 'wide.csv:9'])
      expect(await plainIn(['history', row, '--in', files.own ?? ''], [...names, ...(await newNames())])).toEqual([])
  })

  it('two copies become one; a name is forgotten; backups are told and taken', async () => {
    const copy = join(folder, 'copy.thrum')
    copyFileSync(files.own ?? '', copy)
    await tell(['correct', 'wide.csv:2', 'hover fly', '1', '--reason', 'read again', '--in', copy])
    for (const other of [copy, copy, files.small ?? '']) expect(await inOwn('merge', other)).toEqual([])
    for (const what of forgettable) {
      expect(await inOwn('forget', what, 'walker 1', '--because', 'asked to')).toEqual([])
      expect(await inOwn('forget', what, 'nobody', '--because', 'asked to')).toEqual([])
    }
    // What stands instead of the name is a name, too: made of the fact's id, it can be foretold by a copy of the project.
    await tell(['forget', 'observer', 'walker 2', '--because', 'asked to', '--accept', '--in', copy])
    const instead = textsOf(await factsOf(copy))
    const forgetting = ['forget', 'observer', 'walker 2', '--because', 'asked to', '--accept', '--in', files.own ?? '']
    expect(await plainIn(forgetting, [...names, ...instead])).toEqual([])
    expect(await plainIn(['restore', files.own ?? ''], names)).toEqual([])
    const today = new Date().toISOString().slice(0, 10)
    expect(await plainIn(['restore', files.own ?? '', '--day', today], names)).toEqual([])
  })

  it('a new project, and sheets of both shapes: offered, asked about, accepted, known', async () => {
    const made = join(folder, 'made.thrum')
    expect(await plainIn(['new', made, '--title', 'Another Vale'], names)).toEqual([])
    for (const sheet of [files.wide, files.long, files.messy]) {
      const importing = ['import', sheet ?? '', '--in', made]
      expect(await plainIn(importing, names)).toEqual([])
      expect(await plainIn(importing, names, ['no'])).toEqual([])
      expect(await plainIn([...importing, '--accept'], names)).toEqual([])
      expect(await plainIn([...importing, '--accept'], names)).toEqual([])
    }
  })

  it('a sheet that was mended, taken in', async () => {
    const mended = messySheet.replace('10,ca. 12,3', '10,13,3').replace('10,-,2', '10,4,2')
    const path = join(folder, 'mended', 'messy.csv')
    mkdirSync(join(folder, 'mended'))
    writeFileSync(path, `${mended}Field B,2031-05-11,10:45,10,2,2\n`)
    const importing = ['import', path, '--in', join(folder, 'made.thrum')]
    expect(await plainIn(importing, names)).toEqual([])
    expect(await plainIn([...importing, '--accept'], names)).toEqual([])
  })

  const sheets = join(repository, 'packages/exchange/test/sheets')
  it.each(readdirSync(sheets).filter((name) => name.endsWith('.csv')))('a sheet as people write them: %s', async (name) => {
    const path = join(folder, name)
    const bytes = readFileSync(join(sheets, name))
    writeFileSync(path, bytes)
    const project = join(folder, `${name}.thrum`)
    await tell(['new', project])
    // Names of kinds are given by the mapping: they are names from then on.
    await tell(['import', path, '--in', project, '--accept'])
    const given = textsOf(await factsOf(project))
    const another = join(folder, `${name} again.thrum`)
    await tell(['new', another])
    expect(await plainIn(['import', path, '--in', another, '--accept'], [...names, ...given, bytes.toString('latin1')])).toEqual(
      [],
    )
  })

  const failing = [
    ['never'],
    ['new'],
    ['new', 'a', 'b'],
    ['new', 'no/such/folder/a'],
    ['new', 'a?b'],
    ['import'],
    ['import', 'never.csv', '--in', 'OWN'],
    ['import', 'WIDE'],
    ['import', 'WIDE', '--in', 'never.thrum'],
    ['import', 'WIDE', '--in', 'OWN', '--mapping', 'never.json'],
    ['import', 'WIDE', '--in', 'OWN', '--mapping', 'LONG'],
    ['import', 'WIDE', '--in', 'OWN', '--minutes', 'ten'],
    ['import', 'WIDE', '--in', 'OWN', '--assigned', 'strip'],
    ['import', 'OWN', '--in', 'OWN'],
    ['serve', 'a', 'b'],
    ['serve', 'never.thrum'],
    ['serve', 'OWN', '--port', 'ten'],
    ['check', 'never.thrum'],
    ['check', 'WIDE'],
    ['check', 'a', 'b'],
    ['check', '-x'],
    ['check', '--never', '1'],
    ['ask'],
    ['ask', 'never'],
    ['ask', 'who-visits'],
    ['ask', 'who-visits', '--in'],
    ['ask', 'who-visits', '--never', '1', '--in', 'OWN'],
    ['ask', 'who-visits', '--worth', '2', '--in', 'OWN'],
    ['ask', 'who-visits', '--kinds', 'wasp', '--in', 'OWN'],
    ['ask', 'who-visits', '--per', 'hour', '--in', 'OWN'],
    ['ask', 'who-visits', '--where', 'strip', '--in', 'OWN'],
    ['ask', 'who-visits', '--where', 'strip=maybe', '--in', 'OWN'],
    ['ask', 'who-visits', '--where', 'stage<soon', '--in', 'VALE'],
    ['ask', 'who-visits', '--where', 'date>=2040-01-01', '--in', 'OWN'],
    ['ask', 'who-visits', '--by', 'stage', '--in', 'OWN'],
    ['ask', 'who-visits', '--seed', 'a', '--seed', 'b', '--in', 'OWN'],
    ['ask', 'what-differs', '--in', 'OWN'],
    ['ask', 'what-differs', '--between', 'observer', '--in', 'OWN'],
    ['ask', 'what-differs', '--between', 'strip', '--worth', '1', '--in', 'OWN'],
    ['ask', 'what-differs', '--between', 'mood', '--worth', '2', '--in', 'OWN'],
    ['ask', 'what-differs', '--between', 'strip', '--levels', 'no,perhaps', '--worth', '2', '--in', 'OWN'],
    ['ask', 'what-differs', '--since', '2031-02-30', '--worth', '2', '--in', 'OWN'],
    ['ask', 'what-differs', '--between', 'kind', '--levels', 'honey bee', '--worth', '2', '--in', 'OWN'],
    [
      'ask',
      'what-differs',
      '--between',
      'strip',
      '--kinds',
      'honey bee',
      '--against',
      'honey bee',
      '--worth',
      '2',
      '--in',
      'OWN',
    ],
    ['ask', 'what-differs', '--plan', 'WIDE', '--worth', '2'],
    ['settle', 'wide.csv:3', '--in', 'OWN'],
    ['correct', 'wide.csv:2', 'honey bee', '--in', 'OWN'],
    ['correct', 'wide.csv:2', 'honey bee', '3', '--in', 'OWN'],
    ['correct', 'never.csv:2', 'honey bee', '3', '--reason', 'test', '--in', 'OWN'],
    ['correct', 'wide.csv:999', 'honey bee', '3', '--reason', 'test', '--in', 'OWN'],
    ['correct', 'wide.csv:2', 'mood', '3', '--reason', 'test', '--in', 'OWN'],
    ['withdraw', 'wide.csv:2', '--in', 'OWN'],
    ['history', '--in', 'OWN'],
    ['help', 'never'],
    ['help', 'a', 'b'],
    ['forget', 'person', '--in', 'OWN'],
    ['forget', 'observer', 'walker', '--in', 'OWN'],
    ['merge', '--in', 'OWN'],
    ['merge', 'WIDE', '--in', 'OWN'],
    ['merge', 'never.thrum', '--in', 'OWN'],
    ['restore', 'OWN', '--day', '2031-01-01'],
    ['restore', 'a', 'b'],
  ]
  it.each(failing)('failing: %s %s %s %s %s', async (...words) => {
    const argv = words.map((word) => files[word.toLowerCase()] ?? word)
    expect((await tell(argv, { say })).code).toBe(2)
    expect(await plainIn(argv, names)).toEqual([])
  })

  it('those failures are of many kinds', async () => {
    const codes = new Set<string>()
    for (const words of failing) {
      const argv = words.map((word) => files[word.toLowerCase()] ?? word)
      const { code, json } = await tell(argv, { isJson: true })
      expect(code, argv.join(' ')).toBe(2)
      codes.add((json as { readonly error: { readonly code: string } }).error.code)
    }
    expect(codes.size).toBeGreaterThan(35)
  })
})

/** Names that corrections brought in since the projects were made. */
async function newNames(): Promise<readonly string[]> {
  return textsOf(await factsOf(files.own ?? ''))
}
