import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { createProject } from '@thrum/host'
import { createLogicalClock } from '@thrum/model'
import { backupProject } from '@thrum/store/sqlite'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { tell, testFolder } from '../in-process.ts'

const sheet = `field,plot,date,start,minutes,observer,honey bee,hover fly
Weir,edge,2031-05-04,09:10,10,Orla Invented,12,3
Weir,centre,2031-05-04,10:10,10,Berno Madeup,14,-
Ings,edge,2031-05-04,11:10,10,Berno Madeup,3-4,0
`

const home = process.env.THRUM_HOME
let folder = ''
let project = ''
const path = (name: string): string => join(folder, name)
const plain = (text: string): string => text.replaceAll(/\s+/gu, ' ')

async function run(...argv: string[]) {
  const told = await tell([...argv, '--in', project])
  const json = (await tell([...argv, '--in', project], { isJson: true })).json as { readonly [key: string]: unknown }
  return { code: told.code, text: plain(`${told.out} ${told.notes}`), json }
}
/** Once, with what it printed. */
async function once(...argv: string[]) {
  const told = await tell([...argv, '--in', project])
  return { code: told.code, text: plain(`${told.out} ${told.notes}`), json: told.json as { readonly [key: string]: unknown } }
}

beforeAll(() => {
  process.env.THRUM_BY = 'orla'
})
afterAll(() => {
  delete process.env.THRUM_BY
  if (home === undefined) delete process.env.THRUM_HOME
  else process.env.THRUM_HOME = home
})
beforeEach(async () => {
  folder = testFolder()
  process.env.THRUM_HOME = path('home')
  project = path('vale.thrum')
  writeFileSync(path('counts.csv'), sheet)
  await tell(['new', project])
  expect((await once('import', path('counts.csv'), '--accept')).code).toBe(0)
})

describe('thrum correct, withdraw, settle, history', () => {
  it('correct tells from what to what, and how to undo it; history tells who, when and why', async () => {
    const made = await once('correct', 'counts.csv:2', 'honey bee', '21', '--reason', 'digits swapped')
    expect(made).toMatchObject({ code: 0, json: { from: '12', to: '21', row: 'counts.csv:2' } })
    expect(made.text).toContain('counts.csv:2, honey bee: 12 is now 21. What was written before is kept.')
    const history = await run('history', 'counts.csv:2')
    expect(history.text).toContain('As it came, line 2 of counts.csv: field: Weir')
    expect(history.text).toMatch(
      /honey bee: 12 in the file - 21 by orla, \d{4}-\d\d-\d\d \d\d:\d\d UTC: "digits swapped" \[[0-9a-f-]{36}\] 21 stands\./u,
    )
    expect(history.json).toMatchObject({ stands: true, cells: [{ column: 'honey bee', brought: '12', stands: '21' }] })
    const undone = await once('withdraw', String(made.json.fact), '--reason', 'was right')
    expect(undone.text).toContain('The correction is undone: what stood before stands again.')
  })

  it('a number below zero is a value, not an option', async () => {
    expect((await once('correct', 'counts.csv:2', 'temperature', '-3.5', '--reason', 'frost')).json).toMatchObject({ to: '-3.5' })
  })

  it('settle lists what waits and settles it', async () => {
    const list = await run('settle')
    expect(list.text).toContain(
      '2 cells wait for a person: - counts.csv:3 "hover fly" (Weir, centre, 2031-05-04): "-" (a dash can mean',
    )
    expect(list.json.cells).toHaveLength(2)
    expect((await once('settle', 'counts.csv:3', 'hover fly', 'not-looked-for')).text).toContain(
      '"-" (waits) is settled as not looked for.',
    )
    expect((await once('settle', 'counts.csv:4', 'honey bee', '3')).code).toBe(0)
    expect((await run('settle')).text).toContain('Nothing waits.')
  })

  it('withdraw takes a count, a tally or a file, and check counts what stands', async () => {
    expect((await once('withdraw', 'counts.csv:2', 'hover fly', '--reason', 'a wasp')).text).toContain(
      'The tally of hover fly in counts.csv:2 is withdrawn.',
    )
    expect((await once('withdraw', 'counts.csv:2', '--reason', 'twice')).text).toContain(
      'counts.csv:2 (Weir, edge, 2031-05-04) is withdrawn, with its 2 tallies.',
    )
    expect((await run('check')).text).toContain('2 counts in 2 fields')
    expect((await once('withdraw', 'counts.csv', '--reason', 'wrong columns')).text).toContain(
      'counts.csv is withdrawn with all its rows.',
    )
  })

  it('a beginning that two columns share is no name', async () => {
    const [one, other] = ['A', 'B'].map((end) => `how the field edge was kept in ${'x'.repeat(50)}${end}`)
    writeFileSync(
      path('two.csv'),
      `field,date,start,minutes,${one},${other},honey bee\nWeir,2031-05-05,09:10,10,a,b,3\nIngs,2031-05-05,09:10,10,b,a,3\n`,
    )
    writeFileSync(
      path('two.csv.mapping.json'),
      JSON.stringify({
        version: 1,
        shape: 'wide',
        constants: { unit: 'individuals' },
        columns: [
          ['field', 'field'],
          ['date', 'date'],
          ['start', 'start'],
          ['minutes', 'minutes'],
          [one, 'factor'],
          [other, 'factor'],
          ['honey bee', 'tally'],
        ].map(([header, as]) => ({ header, as })),
      }),
    )
    expect((await once('import', path('two.csv'), '--accept')).code).toBe(0)
    expect((await once('correct', 'two.csv:2', 'how the field edge…', 'c', '--reason', 'seen')).text).toContain(
      'how the field edge',
    )
    expect((await once('correct', 'two.csv:2', 'how the field edge…', 'c', '--reason', 'seen')).code).toBe(2)
    expect((await once('correct', 'two.csv:2', one ?? '', 'c', '--reason', 'seen')).code).toBe(0)
  })

  it('a name too long to type is told by its beginning, which settles its cell', async () => {
    const kind = `fly with $(no command) ${'x'.repeat(900)}`
    writeFileSync(path('long.csv'), `field,date,start,minutes,${kind}\nWeir,2031-05-05,09:10,10,3-4\n`)
    expect((await once('import', path('long.csv'), '--accept')).code).toBe(0)
    await once('settle', 'counts.csv:3', 'hover fly', 'missing')
    await once('settle', 'counts.csv:4', 'honey bee', 'missing')
    const { out } = await tell(['settle', '--in', project])
    const command = /^ {4}thrum settle long\.csv:2 '(?<name>.*)' NUMBER$/mu.exec(out)
    const name = command?.groups?.name ?? ''
    expect(name).toMatch(/^fly with \$\(no command\) x+…$/u)
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(120)
    const list = (await run('settle')).json.cells as readonly { readonly column: string }[]
    expect(list[0]?.column.length).toBeGreaterThan(name.length)
    expect((await once('settle', 'long.csv:2', name, '3')).code).toBe(0)
    expect((await once('history', 'long.csv:2', name)).json).toMatchObject({ cells: [{ stands: '3' }] })
  })

  it.each([
    [['correct', 'counts.csv:2', 'honey bee', '21'], 'host/correct/no-reason'],
    [['correct', 'counts.csv:2', 'honey bee'], 'cli/correct/usage'],
    [['correct', 'counts.csv:9', 'honey bee', '1', '--reason', 'r'], 'host/row/no-such-line'],
    [['withdraw', '--reason', 'r'], 'cli/withdraw/usage'],
    [['settle', 'counts.csv:2'], 'cli/settle/usage'],
    [['settle', 'counts.csv:2', 'honey bee', '2'], 'host/settle/not-waiting'],
    [['history'], 'cli/history/usage'],
    [['forget', 'name', 'Orla', '--because', 'b'], 'cli/forget/usage'],
    [['forget', 'observer', 'Orla'], 'host/forget/no-reason'],
    [['forget', 'observer', '…', '--because', 'b'], 'host/forget/no-name'],
    [['merge'], 'cli/merge/usage'],
    [['restore', 'a', 'b'], 'cli/restore/usage'],
  ])('%j is refused with %s, its words and what to do', async (argv, code) => {
    const { json, code: exit, text } = await run(...argv)
    expect(exit).toBe(2)
    expect(json).toMatchObject({ error: { code } })
    const { error } = json as { readonly error: { readonly text: string; readonly remedy: string } }
    expect(text).toContain(plain(error.text))
    expect(text).toContain(plain(error.remedy))
    expect(text).not.toMatch(/[{}]|undefined|host\/|cli\//u)
  })
})

describe('thrum import of a mended file', () => {
  const mended = sheet
    .replace('Invented,12,3', 'Invented,13,3')
    .replace('3-4', '3')
    .concat('Oxlea,edge,2031-05-06,09:00,10,Orla Invented,7,1\n')

  it('is shown first, taken with --accept, and adds nothing again', async () => {
    writeFileSync(path('counts.csv'), mended)
    const shown = await run('import', path('counts.csv'))
    expect(shown.text).toMatch(
      /counts\.csv is another version of counts\.csv, which was brought on \S+\. Its rows are matched by field, plot, date, start\./u,
    )
    expect(shown.text).toContain(
      'One row is as before and adds nothing. 2 cells changed and become corrections: - line 2, honey bee: 12 → 13 - line 4, honey bee: "3-4" (waits) → 3 One row is new: line 5.',
    )
    expect(shown.text).toContain('Nothing is changed yet.')
    expect(shown.json).toMatchObject({
      state: 'offered',
      mended: { equal: 1, added: 1, key: ['field', 'plot', 'date', 'start'] },
    })
    expect((await once('import', path('counts.csv'), '--accept')).text).toContain('2 corrections, one new count')
    expect((await run('import', path('counts.csv'), '--accept')).text).toContain(
      'was brought before with this mapping. Nothing was added.',
    )
    expect((await run('check')).text).toContain('4 counts in 3 fields')
  })

  it('the command that accepts it says again what was said of the file', async () => {
    writeFileSync(path('second look.csv'), mended)
    const argv = ['import', path('second look.csv'), '--mends', 'counts.csv', '--withdraw-missing']
    expect((await run(...argv)).text).toContain('--mends counts.csv --withdraw-missing --accept')
    const mapping = path('my mapping.json')
    writeFileSync(mapping, readFileSync(path('counts.csv.mapping.json')))
    expect((await run('import', path('second look.csv'), '--separate', '--mapping', mapping)).text).toContain(
      `--mapping "${mapping}" --separate --accept`,
    )
  })

  it('takes the mapping of the earlier version where the table has none beside it', async () => {
    const elsewhere = testFolder()
    writeFileSync(
      path('counts.csv.mapping.json'),
      readFileSync(path('counts.csv.mapping.json'), 'utf8').replace('"individuals"', '"visits"'),
    )
    writeFileSync(join(elsewhere, 'counts.csv'), mended)
    const { json } = await once('import', join(elsewhere, 'counts.csv'))
    expect(json).toMatchObject({ state: 'offered', mended: { added: 1 } })
    expect(readFileSync(join(elsewhere, 'counts.csv.mapping.json'), 'utf8')).toContain('"individuals"')
  })

  it('without columns that tell watches apart it is refused, and says what to do', async () => {
    writeFileSync(path('few.csv'), 'field,minutes,honey bee\nWeir,10,1\nWeir,10,2\n')
    await once('import', path('few.csv'), '--accept')
    writeFileSync(path('few.csv'), 'field,minutes,honey bee\nWeir,10,1\nWeir,10,3\n')
    const refused = await run('import', path('few.csv'), '--accept')
    expect(refused).toMatchObject({ code: 2, json: { error: { code: 'exchange/mended/no-key' } } })
    expect((await once('import', path('few.csv'), '--separate', '--accept')).code).toBe(0)
  })

  it('rows that are gone are withdrawn only if said', async () => {
    writeFileSync(path('counts.csv'), sheet.split('\n').slice(0, 3).join('\n'))
    expect((await run('import', path('counts.csv'))).text).toContain(
      'One row is no longer in the file: counts.csv:4. It stays as it is, unless you say --withdraw-missing.',
    )
    expect((await once('import', path('counts.csv'), '--withdraw-missing', '--accept')).text).toContain('one withdrawal')
    expect((await run('check')).text).toContain('2 counts in one field')
  })
})

describe('thrum forget, merge, restore', () => {
  it('forget shows first, then forgets in every byte, and merging forgets too', async () => {
    await backupProject(project, path('other.copy'))
    const shown = await run('forget', 'observer', 'Orla Invented', '--because', 'asked to')
    expect(shown.text).toContain('This cannot be undone.')
    expect(readFileSync(project, 'latin1')).toContain('Orla Invented')
    const done = await once('forget', 'observer', 'Orla Invented', '--because', 'asked to', '--accept')
    expect(done.text).toMatch(
      /The name is forgotten; observer withheld [0-9a-f]{6} stands instead\. One file as it came was dropped\./u,
    )
    expect(readFileSync(project, 'latin1')).not.toContain('Invented')
    expect((await tell(['merge', project, '--in', path('other.copy')])).out).toContain('One thing was to be forgotten')
    expect(readFileSync(path('other.copy'), 'latin1')).not.toContain('Invented')
  })

  it('merge says what came; another project is refused', async () => {
    await backupProject(project, path('other.copy'))
    await tell(['correct', 'counts.csv:2', 'honey bee', '30', '--reason', 'r', '--in', path('other.copy')])
    await once('correct', 'counts.csv:2', 'honey bee', '31', '--reason', 'r')
    const merged = await once('merge', path('other.copy'))
    expect(merged.text).toContain('One cell was corrected in both copies, to different values. What to decide is listed by:')
    expect((await run('settle')).text).toContain('counts.csv:2 "honey bee" (Weir, edge, 2031-05-04): 30 by orla on')
    await tell(['new', path('second.thrum')])
    expect(await once('merge', path('second.thrum'))).toMatchObject({ code: 2 })
  })

  it('restore lists and restores what stood before the first writing of a day', async () => {
    const began = { now: () => Date.UTC(2020, 0, 5), monotonic: () => 0, zone: () => 'UTC' }
    project = path('old.thrum')
    // Begun on another day: its clock says so.
    await (await createProject(project, 'Old', { by: 'orla', device: 'desk', clock: createLogicalClock(began, 'desk') })).close()
    expect((await run('restore', project)).text).toContain('There is no backup of')
    await once('import', path('counts.csv'), '--accept')
    const [backup] = readdirSync(path('backups'))
    const day = /^old\.(\d{4}-\d\d-\d\d)\.thrum$/u.exec(backup ?? '')?.[1] ?? 'no day'
    const listed = await run('restore', project)
    expect(listed.text).toContain(`${day}: one fact, the latest of 2020-01-05`)
    expect(listed.json.backups).toMatchObject([{ day, facts: 1 }])
    const restored = await once('restore', project, '--day', day)
    expect(restored.text).toContain(`${project} is as it was before the first writing of ${day}, with one fact.`)
    expect(restored.text).toContain('5 facts of it are not in the backup.')
    expect((await run('check')).text).toContain('0 counts')
    expect((await once('merge', String(restored.json.before))).text).toContain('3 counts more than before.')
    expect((await once('restore', project, '--day', '2031-01-01')).text).toContain(`There are backups of: ${day}.`)
  })

  it('a project of a newer layout is read and not written', async () => {
    const db = new DatabaseSync(project)
    db.exec('pragma user_version = 9')
    db.close()
    expect((await run('history', 'counts.csv:2')).code).toBe(0)
    const refused = await run('correct', 'counts.csv:2', 'honey bee', '1', '--reason', 'r')
    expect(refused).toMatchObject({ code: 2, json: { error: { code: 'host/read-only' } } })
    expect(refused.text).toContain('newer Thrum (layout 9')
    expect(readdirSync(folder).filter((name) => name.includes('backup'))).toEqual([])
  })
})
