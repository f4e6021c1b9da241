import { correctCell, forget, historyOfRow, mergeProject, offerForget, type Project, settleCell, withdraw } from '@thrum/host'
import { unwatched } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { bytesBeside } from '../backup/days.ts'
import { bring, copyOf, madeProject, mappingOf, offer, person, told } from '../corrections/made-counts.ts'

const first = `field,plot,date,start,minutes,observer,honey bee
Weir,edge,2031-05-04,09:10,10,Berno Madeup,12
Weir,centre,2031-05-04,10:10,10,Secret Person,about 3-4 (Secret Person)
Ings,edge,2031-05-04,11:10,10,Berno Madeup,3
`
const second = first.replace('10,Berno Madeup,12', '12,Berno Madeup,12').concat('Oxlea,edge,2031-05-06,09:00,10,Berno Madeup,7\n')
const because = 'asked to'
const forgets = async (project: Project, name: string) =>
  await forget(project, await offerForget(project, { what: 'fact', name, because }))
async function bytesOf(project: Project): Promise<string> {
  await project.close()
  return bytesBeside(project.path).toLowerCase()
}

describe('what is said of a forgotten row', () => {
  it('goes with it: corrections, reasons, withdrawals, and the cell as it was written', async () => {
    const project = await madeProject()
    await bring(project, 'sheets.csv', first)
    const reason = 'typo by Secret Person'
    await correctCell(project, { row: 'sheets.csv:3', column: 'observer', value: 'Secret Person jun.', reason })
    await settleCell(project, { row: 'sheets.csv:3', column: 'honey bee', value: '4' })
    const { fact } = await withdraw(project, { row: 'sheets.csv:3', reason })
    await withdraw(project, { row: fact, reason })
    const plan = await offerForget(project, { what: 'fact', name: 'sheets.csv:3', because })
    expect(plan.standsIn.map(({ where, number }) => [where, number])).toContainEqual(['amended', 1])
    expect(plan.standsIn.map(({ where, number }) => [where, number])).toContainEqual(['withdrawn', 2])
    await forget(project, plan)
    const { conflicts, waitingFacts } = await project.snapshot()
    expect({ conflicts, waitingFacts }).toEqual({ conflicts: [], waitingFacts: [] })
    expect(await bytesOf(project)).not.toContain('secret')
  })

  it('goes with a whole file as well, with what it said as a mended version', async () => {
    const project = await madeProject()
    await bring(project, 'sheets.csv', first)
    await bring(project, 'sheets.csv', first.replace('Berno Madeup,3', 'Secret Orla,3'))
    expect((await project.snapshot()).tables.count.columns.observer.dictionary).toContain('Secret Orla')
    await forgets(project, 'sheets.csv')
    expect((await project.snapshot()).tables.count.columns.observer.dictionary).not.toContain('Secret Orla')
    expect(await told(project)).toHaveLength(3)
    await forgets(project, 'sheets.csv')
    expect(await told(project)).toEqual([])
    expect(await bytesOf(project)).not.toContain('secret')
  })
})

describe('a forgotten row in a mended file', () => {
  it('is told, stays forgotten, and the file that has it is not kept', async () => {
    const project = await madeProject()
    await bring(project, 'sheets.csv', first)
    await forgets(project, 'sheets.csv:3')
    const offered = await offer(project, 'sheets.csv', second, mappingOf(first))
    expect(offered).toMatchObject({ kind: 'mended', plan: { added: [3], forgottenLines: [3], withdrawnLines: [], gone: [] } })
    expect(await bring(project, 'sheets.csv', second, mappingOf(first))).toMatchObject({ corrections: 1, counts: 1, kept: false })
    expect(await told(project)).toEqual(['Ings edge 10 honey bee 3', 'Oxlea edge 10 honey bee 7', 'Weir edge 12 honey bee 12'])
    await expect(historyOfRow(project, { row: 'sheets.csv:3' })).rejects.toMatchObject({ code: 'host/row/forgotten' })
    // Another version, in another order, by another key.
    const [head, ...lines] = second.trimEnd().split('\n')
    const third = [head, ...lines.reverse(), ''].join('\n')
    const byKey = mappingOf(first, { key: ['field', 'plot'] })
    expect(await bring(project, 'sheets.csv', third, byKey)).toMatchObject({ corrections: 0, counts: 0, kept: false })
    expect(await bytesOf(project)).not.toContain('secret')
  })

  it('is recognised in a copy that learned of it by a merge', async () => {
    const here = await madeProject()
    await bring(here, 'sheets.csv', first)
    const there = await copyOf(here, 'there', person('tablet', Date.UTC(2031, 5, 2)))
    await bring(here, 'sheets.csv', second, mappingOf(first))
    await forgets(there, 'sheets.csv:3')
    await mergeProject(here, there.path, unwatched)
    const third = second.replace('Berno Madeup,7', 'Berno Madeup,8')
    expect(await bring(here, 'sheets.csv', third, mappingOf(first))).toMatchObject({ corrections: 1, counts: 0, kept: false })
    await there.close()
    expect(await bytesOf(here)).not.toContain('secret')
  })
})

describe('a file that is called after somebody forgotten', () => {
  it('is still the same file: a mended version adds only what is new', async () => {
    const project = await madeProject()
    const file = 'Secret Person 2031.csv'
    await bring(project, file, first)
    const plan = await offerForget(project, { what: 'observer', name: 'Secret Person', because })
    await forget(project, plan)
    expect(await bring(project, file, second, mappingOf(first))).toMatchObject({ corrections: 1, counts: 1 })
    expect(await told(project)).toHaveLength(4)
    const more = second.replace('Berno Madeup,7', 'Berno Madeup,8')
    expect(await bring(project, 'other.csv', more, mappingOf(first), { mends: file })).toMatchObject({
      corrections: 1,
      counts: 0,
    })
  })
})
