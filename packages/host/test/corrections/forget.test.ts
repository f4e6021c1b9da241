import { mkdirSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import {
  correctCell,
  type Forgettable,
  forget,
  historyOfRow,
  mergeProject,
  offerForget,
  openProject,
  type Project,
} from '@thrum/host'
import { fieldDescribed, makeFact } from '@thrum/model'
import { unwatched } from '@thrum/model/ground'
import { backupProject } from '@thrum/store/sqlite'
import { describe, expect, it } from 'vitest'
import { bytesBeside } from '../backup/days.ts'
import { bring, copyOf, madeProject, mappingOf, person, testFolder, told } from './made-counts.ts'

const sheet = `field,plot,date,start,minutes,observer,note,honey bee
Weir,edge,2031-05-04,09:10,10,Orla Invented,,12
Weir,centre,2031-05-04,10:10,10,Berno Madeup,counted with orla invented,14
Ings,edge,2031-05-04,11:10,10,"Orla Invented, Berno Madeup",,3
`

async function withCounts(): Promise<Project> {
  const project = await madeProject()
  await bring(project, 'counts.csv', sheet)
  return project
}

const because = 'asked to'
async function forgets(project: Project, what: Forgettable, name: string) {
  return await forget(project, await offerForget(project, { what, name, because }))
}

describe('forgetting a person', () => {
  it('the name is in no byte of the project; who counted together still does; other names stay', async () => {
    const project = await withCounts()
    await correctCell(project, {
      row: 'counts.csv:2',
      column: 'observer',
      value: 'Orla Invented jun.',
      reason: 'Orla Invented said so',
    })
    const plan = await offerForget(project, { what: 'observer', name: 'orla invented', because: 'Orla Invented asked' })
    expect(plan.files).toEqual(['counts.csv'])
    expect(plan.standsIn.map(({ where, column }) => `${where} ${column}`)).toEqual([
      'count observer',
      'count note',
      'amended null',
    ])
    expect(await forget(project, plan)).toMatchObject({ added: true, filesDropped: 1 })
    const { observer, note } = (await project.snapshot()).tables.count.columns
    const words = observer.dictionary.join('|')
    expect(words).toMatch(
      /^observer withheld ([0-9a-f]{6})\|Berno Madeup\|observer withheld \1, Berno Madeup\|observer withheld \1 jun\.$/u,
    )
    expect(note.dictionary[0]).toMatch(/^counted with observer withheld/u)
    await project.close()
    expect(bytesBeside(project.path)).toContain('Berno Madeup')
    expect(bytesBeside(project.path).toLowerCase()).not.toContain('invented')
  })

  it('is forgotten by every copy that merges, whichever takes from which, and by backups beside', async () => {
    const here = await withCounts()
    const there = await copyOf(here, 'there', person('tablet', Date.UTC(2031, 5, 2)))
    const folder = testFolder()
    await backupProject(here.path, join(folder, 'third.thrum'))
    const third = await openProject(join(folder, 'third.thrum'), 'write', { author: person('phone', Date.UTC(2031, 5, 3)) })
    await correctCell(there, { row: 'counts.csv:4', column: 'note', value: 'Orla Invented was late', reason: 'diary' })
    const beside = `${basename(here.path, '.thrum')}.2031-05-30.thrum`
    const backups = join(dirname(here.path), 'backups')
    mkdirSync(backups)
    await backupProject(here.path, join(backups, beside))
    expect(await forgets(here, 'observer', 'Orla Invented')).toMatchObject({ copies: [beside], copiesLeft: [] })
    // There takes from here; the third takes from there, which brings it the correction too.
    expect(await mergeProject(there, here.path, unwatched)).toMatchObject({ kinds: [{ kind: 'redacted', facts: 1 }] })
    expect(await mergeProject(third, there.path, unwatched)).toMatchObject({ counts: 0 })
    await mergeProject(here, third.path, unwatched)
    expect((await here.snapshot()).digest).toBe((await there.snapshot()).digest)
    expect(await told(third)).toEqual(await told(here))
    for (const project of [here, there, third]) await project.close()
    expect(bytesBeside(here.path).toLowerCase()).not.toContain('invented')
    expect(bytesBeside(third.path).toLowerCase()).not.toContain('invented')
  })

  it('the same file again, and a mended one, bring nothing of it back; the file is not kept', async () => {
    const project = await withCounts()
    await forgets(project, 'observer', 'Orla Invented')
    expect(await bring(project, 'counts.csv', sheet)).toBe('known')
    const mended = sheet.replace(',,3\n', ',,4\n')
    expect(await bring(project, 'counts.csv', mended, mappingOf(sheet))).toEqual({
      corrections: 1,
      counts: 0,
      tallies: 0,
      withdrawn: 0,
      kept: false,
    })
    expect(await told(project)).toContain('Ings edge 10 honey bee 4')
    expect((await historyOfRow(project, { row: 'counts.csv:4' })).line).toBeNull()
    await project.close()
    expect(bytesBeside(project.path).toLowerCase()).not.toContain('invented')
  })

  it('goes from a mapping too, and the file under that mapping is still known', async () => {
    const project = await madeProject()
    const one = 'field,date,start,minutes,honey bee\nWeir,2031-05-04,09:10,10,12\n'
    const mapping = { ...mappingOf(one), constants: { observer: 'Orla Invented' } }
    await bring(project, 'one.csv', one, mapping)
    await forgets(project, 'observer', 'Orla Invented')
    expect(await bring(project, 'one.csv', one, mapping)).toBe('known')
    expect((await project.snapshot()).tables.count.columns.observer.dictionary[0]).toMatch(/^observer withheld/u)
  })

  it('a kind that is called so stays, and is told', async () => {
    const project = await madeProject()
    await bring(project, 'counts.csv', sheet.replace('honey bee', 'rose bee').replaceAll('Orla Invented', 'Rose'))
    const plan = await offerForget(project, { what: 'observer', name: 'Rose', because })
    expect(plan.stays).toEqual(['rose bee'])
    await forget(project, plan)
    expect((await project.snapshot()).kinds.map(({ name }) => name)).toEqual(['rose bee'])
  })
})

describe('forgetting a place, a row, a file', () => {
  it('the field stays, without its point', async () => {
    const project = await withCounts()
    const weir = makeFact(
      fieldDescribed,
      { field: 'Weir', crop: 'sweet cherry', latitude: 12.3456789, longitude: 9.87654321 },
      project.author,
    )
    await project.log.append([weir])
    await forgets(project, 'place', 'Weir')
    expect((await project.snapshot()).fields.find(({ name }) => name === 'Weir')).toMatchObject({
      crop: 'sweet cherry',
      point: null,
    })
    await expect(offerForget(project, { what: 'place', name: 'Wier', because })).rejects.toMatchObject({
      code: 'host/forget/no-field',
    })
    await project.close()
    expect(bytesBeside(project.path)).not.toContain('12.3456789')
  })

  it('a row is emptied with its tallies and its line of the file; a file is emptied whole', async () => {
    const project = await withCounts()
    await forgets(project, 'fact', 'counts.csv:4')
    expect(await told(project)).toEqual(['Weir centre 10 honey bee 14', 'Weir edge 10 honey bee 12'])
    await forgets(project, 'fact', 'counts.csv')
    expect(await told(project)).toEqual([])
    await expect(bring(project, 'counts.csv', sheet)).rejects.toMatchObject({ code: 'host/not-counted' })
  })
})

describe('merging', () => {
  it('refuses another project, and itself', async () => {
    const project = await withCounts()
    const other = await madeProject()
    await expect(mergeProject(project, other.path, unwatched)).rejects.toMatchObject({ code: 'host/merge/other-project' })
    await expect(mergeProject(project, project.path, unwatched)).rejects.toMatchObject({ code: 'store/same-file' })
  })

  it('says what came, and twice is once', async () => {
    const here = await withCounts()
    const there = await copyOf(here, 'there', person('tablet', Date.UTC(2031, 5, 2)))
    await bring(there, 'more.csv', sheet.replaceAll('2031-05', '2031-06').replaceAll('Weir', 'Mill'))
    await correctCell(here, { row: 'counts.csv:2', column: 'honey bee', value: '13', reason: 'r' })
    await correctCell(there, { row: 'counts.csv:2', column: 'honey bee', value: '14', reason: 'r' })
    expect(await mergeProject(here, there.path, unwatched)).toMatchObject({
      counts: 3,
      contested: 1,
      attachments: 1,
      heldBack: 0,
    })
    expect(await mergeProject(here, there.path, unwatched)).toMatchObject({
      added: 0,
      replaced: 0,
      attachments: 0,
      counts: 0,
      contested: 0,
    })
  })
})
