import { historyOfRow, mergeProject, type Project, withdraw } from '@thrum/host'
import { makeFact, withdrawn } from '@thrum/model'
import { unwatched } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { bring, copyOf, madeProject, person, told } from '../corrections/made-counts.ts'

const first = `field,plot,date,start,minutes,honey bee
Weir,edge,2031-05-04,09:10,10,12
Ings,edge,2031-05-04,11:10,10,3
`
const second = `field,plot,date,start,minutes,honey bee
Weir,edge,2031-05-04,09:10,10,14
Oxlea,edge,2031-05-06,09:00,10,7
`
const reason = 'wrong file'
const asFirst = ['Ings edge 10 honey bee 3', 'Weir edge 10 honey bee 12']
const asSecond = ['Oxlea edge 10 honey bee 7', 'Weir edge 10 honey bee 14']

async function withBoth(): Promise<Project> {
  const project = await madeProject()
  await bring(project, 'c.csv', first)
  await bring(project, 'c.csv', second, undefined, { withdrawMissing: true })
  expect(await told(project)).toEqual(asSecond)
  return project
}

describe('withdrawing a version of a file', () => {
  it('the later one takes its corrections and withdrawals along: the project says what the first file says', async () => {
    const project = await withBoth()
    const { fact } = await withdraw(project, { row: 'c.csv@2', reason })
    expect(await told(project)).toEqual(asFirst)
    expect((await historyOfRow(project, { row: 'c.csv:2' })).cells).toMatchObject([
      { stands: '12', steps: [{ takenBack: true }] },
    ])
    expect((await historyOfRow(project, { row: 'c.csv:3' })).stands).toBe(true)
    expect(await bring(project, 'c.csv', first)).toBe('known')
    await withdraw(project, { row: fact, reason: 'it was right' })
    expect(await told(project)).toEqual(asSecond)
  })

  it('another mended version may follow one that was withdrawn', async () => {
    const project = await withBoth()
    await withdraw(project, { row: 'c.csv@2', reason })
    expect(await bring(project, 'c.csv', first.replace('10,12', '10,13'))).toMatchObject({ corrections: 1, counts: 0 })
    expect(await told(project)).toEqual(['Ings edge 10 honey bee 3', 'Weir edge 10 honey bee 13'])
  })

  it('the earlier one is refused while the later stands; the later first, and then the earlier', async () => {
    const project = await withBoth()
    await expect(withdraw(project, { row: 'c.csv@1', reason })).rejects.toMatchObject({
      code: 'host/withdraw/mended',
      values: { row: 'c.csv@1', by: 'c.csv' },
    })
    await withdraw(project, { row: 'c.csv', reason })
    await withdraw(project, { row: 'c.csv', reason })
    expect(await told(project)).toEqual([])
  })

  it('where a merge withdrew the earlier one, the same file again is not said to be there', async () => {
    const here = await madeProject()
    await bring(here, 'c.csv', first)
    const there = await copyOf(here, 'there', person('tablet', Date.UTC(2031, 5, 2)))
    await bring(here, 'c.csv', second)
    const { fact } = await withdraw(there, { row: 'c.csv', reason })
    await mergeProject(here, there.path, unwatched)
    expect(await told(here)).toEqual(['Oxlea edge 10 honey bee 7'])
    await expect(bring(here, 'c.csv', second)).rejects.toMatchObject({
      code: 'host/mended/earlier-withdrawn',
      values: { withdrawal: fact },
    })
  })
})

it('two withdrawals that name each other are told, and end', async () => {
  const project = await madeProject()
  await bring(project, 'c.csv', first)
  const { of } = await withdraw(project, { row: 'c.csv:2', reason })
  const ids = ['00000000-withdrawal-1', '00000000-withdrawal-2'] as const
  await project.log.append([
    makeFact(withdrawn, { of: ids[1], reason }, project.author, { id: ids[0] }),
    makeFact(withdrawn, { of: ids[0], reason }, project.author, { id: ids[1] }),
    makeFact(withdrawn, { of, reason }, project.author, { id: '00000000-withdrawal-3' }),
  ])
  expect((await historyOfRow(project, { row: ids[0] })).withdrawals).toHaveLength(2)
  expect((await historyOfRow(project, { row: of })).stands).toBe(false)
})
