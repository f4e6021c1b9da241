import { correctCell } from '@thrum/host'
import { factorDescribed, makeFact, questionLookedAt, worthSet } from '@thrum/model'
import { expect, it } from 'vitest'
import { madeProject } from './made-counts.ts'

it('of a fact that a person recorded, what can be corrected is what the project then says; the rest is refused', async () => {
  const project = await madeProject()
  const asked = { question: 'what-differs', asked: 'strips' }
  const factor = makeFact(factorDescribed, { factor: 'stirp', assigned: 'at random' }, project.author)
  const worth = makeFact(worthSet, { ...asked, worth: 20 }, project.author)
  const look = makeFact(questionLookedAt, { ...asked, digest: 'd', verdict: null }, project.author)
  await project.log.append([factor, worth, look])
  const correct = (row: string, column: string, value: string) => correctCell(project, { row, column, value, reason: 'slip' })
  await correct(factor.id, 'factor', 'strip')
  await correct(worth.id, 'worth', '2')
  const { assigned, worths } = await project.snapshot()
  expect([...assigned]).toEqual([['strip', 'at random']])
  expect(worths).toMatchObject([{ ...asked, worth: 2 }])

  const described: string[] = []
  for await (const facts of project.log.factsAfter(0, { kinds: ['project-described'] }))
    described.push(...facts.map(({ id }) => id))
  for (const [row, column, value, code] of [
    [worth.id, 'asked', 'hedges', 'host/correct/names-it'],
    [worth.id, 'question', 'who-visits', 'host/correct/names-it'],
    [described[0] ?? '', 'project', 'another-project', 'host/correct/names-it'],
    [look.id, 'digest', 'e', 'host/correct/not-this-fact'],
  ] as const) {
    await expect(correct(row, column, value)).rejects.toMatchObject({ code })
  }
  await correct(described[0] ?? '', 'title', 'Another Vale')
  expect((await project.snapshot()).project?.title).toBe('Another Vale')
})
