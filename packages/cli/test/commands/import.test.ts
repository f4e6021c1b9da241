import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { openProject } from '@thrum/host'
import { beforeEach, describe, expect, it } from 'vitest'
import { tell, testFolder } from '../in-process.ts'
import { longSheet, messySheet, wideSheet } from '../sheets.ts'

let folder = ''
let project = ''
beforeEach(async () => {
  folder = testFolder()
  process.env.THRUM_HOME = join(folder, 'home')
  process.env.THRUM_BY = 'walker'
  project = join(folder, 'own.thrum')
  await tell(['new', project])
})

function sheet(text: string, name = 'counts.csv'): string {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}

async function digest(): Promise<string> {
  const open = await openProject(project, 'read')
  try {
    return (await open.snapshot()).digest
  } finally {
    await open.close()
  }
}

/** Nobody says how long each watch lasted. */
const untimed = wideSheet().replace(',minutes', '').replaceAll(',10,200,', ',200,')

const bring = (path: string, ...more: readonly string[]) => tell(['import', path, '--in', project, ...more], { isJson: true })
const stateOf = ({ json }: { readonly json: unknown }): string => (json as { readonly state: string }).state
const mappingOf = (path: string) => JSON.parse(readFileSync(`${path}.mapping.json`, 'utf8'))

describe('import', () => {
  it('shows what each row becomes, and writes nothing until it is accepted', async () => {
    const path = sheet(wideSheet())
    const before = await digest()
    const offered = await bring(path)
    expect([offered.code, stateOf(offered)]).toEqual([0, 'offered'])
    expect(offered.json).toMatchObject({ rows: { read: 32, accepted: 32, waiting: 0, refused: 0 }, counts: 32 })
    expect(await digest()).toBe(before)

    const accepted = await bring(path, '--accept')
    expect([accepted.code, stateOf(accepted)]).toEqual([0, 'accepted'])
    expect(await digest()).not.toBe(before)
  })

  it('the same file again adds nothing', async () => {
    const path = sheet(wideSheet())
    await bring(path, '--accept')
    const once = await digest()
    const again = await bring(path, '--accept')
    expect([again.code, stateOf(again)]).toEqual([0, 'known'])
    expect(await digest()).toBe(once)
  })

  it('the same file brought into two copies of a project is the same facts', async () => {
    const path = sheet(wideSheet())
    const copy = join(folder, 'copy.thrum')
    writeFileSync(copy, readFileSync(project))
    await bring(path, '--accept')
    const here = await digest()
    process.env.THRUM_HOME = join(folder, 'another-device')
    await tell(['import', path, '--in', copy, '--accept'])
    project = copy
    expect(await digest()).toBe(here)
  })

  it.each([
    ['no minutes', untimed, 'exchange/sheet/effort-unmapped'],
    ['means, not counts', wideSheet().replace(/,(\d+),(\d+)$/gmu, ',$1.37,$2.21'), 'exchange/sheet/not-counts'],
    ['no header', 'a\n', null],
    ['nothing', '', 'exchange/file/empty'],
  ])('a file with %s is refused as a whole, and nothing is written', async (_, text, code) => {
    const before = await digest()
    const refused = await bring(sheet(text), '--accept')
    expect(refused.code).toBe(2)
    if (code !== null) expect(refused.json).toMatchObject({ error: { code } })
    expect(await digest()).toBe(before)
  })

  it('what cannot be read as a number waits: counted, and in no estimate', async () => {
    const brought = await bring(sheet(messySheet), '--accept')
    expect(brought.json).toMatchObject({ rows: { read: 7, waiting: 5 } })
    const { json } = await tell(['ask', 'who-visits', '--in', project, '--kinds', 'honey bee'], { isJson: true })
    expect(JSON.stringify(json)).toContain('"waiting"')
  })

  it('a long sheet becomes watches, a row a kind', async () => {
    expect((await bring(sheet(longSheet()), '--accept')).json).toMatchObject({ rows: { read: 24 }, counts: 12, tallies: 24 })
  })

  it('a person asked before it is told what counts, and may decline', async () => {
    const path = sheet(wideSheet())
    const before = await digest()
    const declined = await tell(['import', path, '--in', project], { replies: ['no'] })
    expect(declined.code).toBe(0)
    expect(declined.out).toContain('Accept these counts? (yes or no)')
    expect(declined.out).toContain('Nothing counts yet.')
    expect(await digest()).toBe(before)
    await tell(['import', path, '--in', project], { replies: ['yes'] })
    expect(await digest()).not.toBe(before)
  })
})

describe('the mapping beside a sheet', () => {
  it('is kept, used again, and amended by what is said on the line', async () => {
    const path = sheet(untimed)
    expect((await bring(path)).code).toBe(2)
    expect(existsSync(`${path}.mapping.json`)).toBe(true)
    const said = await bring(path, '--minutes', '10', '--assigned', 'strip=at random')
    expect(said.code).toBe(0)
    expect(mappingOf(path)).toMatchObject({ constants: { minutes: 10 }, assigned: { strip: 'at random' } })
    // What was said once need not be said again.
    expect((await bring(path, '--accept')).code).toBe(0)
    expect(mappingOf(path)).toMatchObject({ constants: { minutes: 10 } })
  })

  it('changed by a person, it decides', async () => {
    const path = sheet(wideSheet())
    await bring(path)
    const mapping = mappingOf(path)
    for (const column of mapping.columns) if (column.header === 'hover fly') column.kind = 'drone fly'
    writeFileSync(`${path}.mapping.json`, JSON.stringify(mapping))
    const { json } = await bring(path, '--accept')
    expect(JSON.stringify((json as { kinds: unknown }).kinds)).toContain('drone fly')
  })

  it.each([
    ['{', 'cli/import/mapping-not-json'],
    ['{"columns": 3}', 'exchange/mapping/misshapen'],
  ])('that cannot be used (%s) is told, and left as it is', async (text, code) => {
    const path = sheet(wideSheet())
    writeFileSync(`${path}.mapping.json`, text)
    expect((await bring(path, '--accept')).json).toMatchObject({ error: { code } })
    expect(readFileSync(`${path}.mapping.json`, 'utf8')).toBe(text)
  })

  it.each([
    [['--minutes', 'ten'], 'model/options/not-a-number'],
    [['--minutes', '0'], 'model/options/not-a-number'],
    [['--year', ''], 'model/options/not-a-number'],
    [['--assigned', 'strip'], 'cli/import/assigned'],
    [['--assigned', 'sown=chosen'], 'cli/import/assigned-unknown'],
    [['--unit', 'kilograms'], 'exchange/mapping/misshapen'],
    [['--mapping', 'never.json'], 'cli/import/no-mapping'],
  ])('%j is refused: %s', async (words, code) => {
    const refused = await bring(sheet(wideSheet()), ...words)
    expect([refused.code, (refused.json as { error: { code: string } }).error.code]).toEqual([2, code])
  })
})

describe('names that would act on a terminal', () => {
  const esc = '\u001b'
  const hostile = wideSheet()
    .replaceAll('Field A', `Fie${esc}[31mld A`)
    .replaceAll('Field B', 'Fi\u202eeld B')
    .replaceAll('Field C', '<b>{Field}</b> C')
    .replace('hover fly', `hover${esc}]0;title\u0007 fly`)

  it('are harmless in all that is printed, and come back in the machine form as they were', async () => {
    const path = sheet(hostile)
    const printed = []
    for (const argv of [
      ['import', path, '--in', project, '--accept'],
      ['check', project],
      ['ask', 'who-visits', '--by', 'field', '--in', project],
      ['ask', 'what-differs', '--between', 'strip', '--worth', '2', '--in', project],
      ['history', 'counts.csv:2', '--in', project],
      ['ask', 'who-visits', '--kinds', `${esc}[2J`, '--in', project],
    ]) {
      const { out, notes } = await tell(argv)
      printed.push(out, notes)
    }
    const all = printed.join('\n')
    expect(all.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/u)
    expect(all).toContain('\\u001b[31m')
    expect(all).toContain('<b>{Field}</b> C')
  })
})

describe('where a file cannot be', () => {
  it('a mapping that cannot be kept: told, and nothing is written', async () => {
    const path = sheet(wideSheet())
    const before = await digest()
    const refused = await bring(path, '--accept', '--mapping', join(path, 'never.json'))
    expect(refused.json).toMatchObject({ error: { code: 'cli/import/no-mapping' } })
    mkdirSync(`${path}.mapping.json`)
    expect((await bring(path, '--accept')).json).toMatchObject({ error: { code: 'cli/import/no-mapping' } })
    expect(await digest()).toBe(before)
  })

  it('a receipt that cannot be written is told behind the answer', async () => {
    const path = sheet(wideSheet())
    await bring(path, '--accept')
    const told = await tell(['ask', 'who-visits', '--in', project, '--receipt', path])
    expect([told.code, told.notes.split('\n')[0]?.slice(0, 36)]).toEqual([
      2,
      'The receipt cannot be written to '.padEnd(33).concat(path).slice(0, 36),
    ])
    expect(told.out).toContain('Most frequent')
  })

  it('a folder, or nothing at all', async () => {
    mkdirSync(join(folder, 'sub'))
    for (const path of [join(folder, 'sub'), join(folder, 'never.csv')])
      expect((await bring(path)).json).toMatchObject({ error: { code: 'cli/import/no-file' } })
  })
})
