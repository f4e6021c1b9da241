import { join } from 'node:path'
import { unwatched } from '@thrum/model/ground'
import { describe, expect, it, onTestFinished } from 'vitest'
import { askingState, isDemonstration, pinQuestion } from '../../src/desk/index.ts'
import { ask, createDemonstration, createProject, openProject, type Project } from '../../src/index.ts'
import { testFolder } from '../folder.ts'

const strips = { between: 'strip', kinds: 'bumble bee', worth: '2' }

async function demonstration(mode: 'write' | 'read' = 'write'): Promise<Project> {
  const path = join(testFolder(), 'vale.thrum')
  await createDemonstration(path)
  const project = await openProject(path, mode)
  onTestFinished(() => project.close())
  return project
}

describe('askingState', () => {
  it('asking twice is one answer, and writes once', async () => {
    const project = await demonstration()
    const before = askingState(await project.snapshot(), 'what-differs', strips)
    await ask(project, 'what-differs', strips, unwatched)
    const after = askingState(await project.snapshot(), 'what-differs', strips)
    expect([before.writes, after.writes]).toEqual([true, false])
    expect(after).toMatchObject({ asked: before.asked, key: before.key })
  })

  it('S changed after looking is another answer, and has to be written', async () => {
    const project = await demonstration()
    await ask(project, 'what-differs', strips, unwatched)
    const known = askingState(await project.snapshot(), 'what-differs', strips)
    const other = askingState(await project.snapshot(), 'what-differs', { ...strips, worth: '1.5' })
    expect(other).toMatchObject({ asked: known.asked, writes: true })
    expect(other.key).not.toBe(known.key)
  })

  it('another seed is another answer; a question that is not judged writes nothing', async () => {
    const project = await demonstration()
    const snapshot = await project.snapshot()
    const [one, other] = ['a', 'b'].map((seed) => askingState(snapshot, 'who-visits', {}, seed))
    expect(one?.key).not.toBe(other?.key)
    expect([one?.writes, other?.writes]).toEqual([false, false])
  })
})

describe('pinQuestion', () => {
  it('pins once, changes what is pinned, and lets go', async () => {
    const project = await demonstration()
    const pinned = async () => (await project.snapshot()).pins.map(({ options }) => options)
    const facts = () => project.log.factCount()
    const before = await facts()
    const asked = await pinQuestion(project, { question: 'what-differs', options: strips, pinned: true })
    expect(await pinned()).toEqual([{ between: 'strip', kinds: ['bumble bee'], worth: 2 }])
    await pinQuestion(project, { question: 'what-differs', options: strips, pinned: true })
    expect(await facts()).toBe(before + 1)
    expect(await pinQuestion(project, { question: 'what-differs', options: { ...strips, worth: '3' }, pinned: true })).toBe(asked)
    expect(await pinned()).toMatchObject([{ worth: 3 }])
    await pinQuestion(project, { question: 'what-differs', options: strips, pinned: false })
    await pinQuestion(project, { question: 'what-differs', options: strips, pinned: false })
    expect([await pinned(), await facts()]).toEqual([[], before + 3])
  })

  it('refuses a question that is not there, and a project that takes no writing', async () => {
    const project = await demonstration('read')
    const pin = (question: string) => pinQuestion(project, { question, options: {}, pinned: true })
    await expect(pin('who-visits')).rejects.toMatchObject({ code: 'host/read-only' })
    const own = await demonstration()
    await expect(pinQuestion(own, { question: 'never', options: {}, pinned: true })).rejects.toMatchObject({
      code: 'host/no-such-question',
    })
  })
})

describe('isDemonstration', () => {
  it('tells the demonstration from a project of one’s own', async () => {
    expect(isDemonstration(await (await demonstration()).snapshot())).toBe(true)
    const own = await createProject(join(testFolder(), 'own.thrum'), 'Ostrel Vale')
    onTestFinished(() => own.close())
    expect(isDemonstration(await own.snapshot())).toBe(false)
  })
})
