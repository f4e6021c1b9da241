import { join } from 'node:path'
import { createLogicalClock, foldFacts, makeFact, questionLookedAt, type Snapshot, worthSet } from '@thrum/model'
import { ThrumError, unwatched } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { ask, createDemonstration, judgeWorth, openProject, type Project } from '../../src/index.ts'
import { fromLog } from '../../src/question/ask.ts'
import { askedKey } from '../../src/question/asked-key.ts'
import { testFolder } from '../folder.ts'

const strips = { between: 'strip', levels: 'no strip,strip', kinds: 'bumble bee' }

async function demonstration(mode: 'write' | 'read' = 'write'): Promise<Project> {
  const path = join(testFolder(), 'vale.thrum')
  await createDemonstration(path)
  return openProject(path, mode)
}

async function codeOf(run: Promise<unknown>): Promise<string> {
  try {
    await run
  } catch (error) {
    if (error instanceof ThrumError) return error.code
    throw error
  }
  return 'none'
}

describe('what is known of S', () => {
  const question = 'what-differs'
  const asked = askedKey({ between: 'strip' })
  let now = 0
  const clock = createLogicalClock({ now: () => (now += 1000), monotonic: () => now, zone: () => 'UTC' }, 'tablet')
  const author = { by: 'walker', device: 'tablet', clock }
  const set = (worth: number, of = asked) => makeFact(worthSet, { question, asked: of, worth }, author)
  const look = (digest = 'd', of = asked) => makeFact(questionLookedAt, { question, asked: of, digest, verdict: 'shown' }, author)
  const after = (...facts: readonly ReturnType<typeof set>[]): Snapshot => foldFacts(facts)

  it.each([
    ['never set, none given', after(), undefined, { worth: null, afterLooking: false, isNew: false }],
    ['never set, given now', after(), 2, { worth: 2, afterLooking: false, isNew: true }],
    ['set before', after(set(2)), undefined, { worth: 2, afterLooking: false, isNew: false }],
    ['set before, the same given', after(set(2)), 2, { worth: 2, afterLooking: false, isNew: false }],
    ['set before, another given, not looked at yet', after(set(2)), 3, { worth: 3, afterLooking: false, isNew: true }],
    ['set, then looked at', after(set(2), look()), undefined, { worth: 2, afterLooking: false, isNew: false }],
    ['set, looked at, the same given', after(set(2), look()), 2, { worth: 2, afterLooking: false, isNew: false }],
    ['set, looked at, another given', after(set(2), look()), 3, { worth: 3, afterLooking: true, isNew: true }],
    ['looked at, then set', after(look(), set(2)), undefined, { worth: 2, afterLooking: true, isNew: false }],
    ['set, looked at, set anew', after(set(2), look(), set(3)), undefined, { worth: 3, afterLooking: true, isNew: false }],
    [
      'set and looked at for another question',
      after(set(2, 'else'), look('d', 'else')),
      3,
      { worth: 3, afterLooking: false, isNew: true },
    ],
  ])('%s', (_, snapshot, given, judged) => {
    expect(judgeWorth(snapshot, question, asked, given)).toEqual(judged)
  })

  it.each([
    ['both', ['worthSet', 'looks'], { worth: 2, worthSet: 'after-looking', looks: 3 }],
    ['one without looks', ['worthSet'], { worth: 2, worthSet: 'after-looking' }],
    ['one without S', ['looks'], { looks: 3 }],
    ['neither', [], {}],
  ])('a question is handed what it declares: %s', (_, names, filled) => {
    const declared = Object.fromEntries(
      names.map((name) => [name, { type: 'text', explained: 'questions/option/worth' }] as const),
    )
    expect(fromLog(declared, { worth: 2, afterLooking: true, isNew: false }, 3)).toEqual(filled)
  })

  it('one question asked is one, whatever it is held against and in whatever order it is put', () => {
    expect(askedKey({ between: 'strip', kinds: ['a'], worth: 2, expect: 'more', worthSet: 'x', looks: 3 })).toBe(
      askedKey({ kinds: ['a'], between: 'strip' }),
    )
    expect(askedKey({ between: 'strip' })).not.toBe(askedKey({ between: 'position' }))
  })
})

describe('ask', () => {
  it('writes S once, and one look for each state of the data', async () => {
    const project = await demonstration()
    const told = async () => {
      const { worths, looks, digest } = await project.snapshot()
      return { worths: worths.map(({ worth }) => worth), looks: looks.length, digest }
    }
    const { digest } = await told()
    await ask(project, 'what-differs', { ...strips, worth: '2' }, unwatched)
    expect(await told()).toEqual({ worths: [2], looks: 1, digest })
    await ask(project, 'what-differs', { ...strips, worth: '2' }, unwatched)
    await ask(project, 'what-differs', strips, unwatched)
    expect(await told()).toEqual({ worths: [2], looks: 1, digest })
    await ask(project, 'what-differs', { ...strips, kinds: 'honey bee', worth: '2' }, unwatched)
    expect(await told()).toEqual({ worths: [2, 2], looks: 2, digest })
    await ask(project, 'who-visits', {}, unwatched)
    await ask(project, 'who-visits', {}, unwatched)
    expect((await told()).looks).toBe(3)
    await project.close()
  })

  it('S is remembered for the question it was set for, and a late change is said', async () => {
    const project = await demonstration()
    expect(await codeOf(ask(project, 'what-differs', strips, unwatched))).toBe('questions/worth-needed')
    const first = await ask(project, 'what-differs', { ...strips, worth: '2' }, unwatched)
    expect(first.answer.receipt.options).toMatchObject({ worth: 2, worthSet: 'before-looking' })
    const again = await ask(project, 'what-differs', strips, unwatched)
    expect(JSON.stringify(again.answer)).toBe(JSON.stringify(first.answer))
    const changed = await ask(project, 'what-differs', { ...strips, worth: '1.5' }, unwatched)
    expect(changed.answer.receipt.options).toMatchObject({ worth: 1.5, worthSet: 'after-looking' })
    expect(JSON.stringify(changed.answer.headline)).toContain('questions/headline/worth-after-look')
    // Once changed after a look, it stays so.
    expect((await ask(project, 'what-differs', strips, unwatched)).answer.receipt.options).toMatchObject({
      worthSet: 'after-looking',
    })
    await project.close()
  })

  it('a question that failed leaves no trace: neither S nor a look', async () => {
    const project = await demonstration()
    expect(await codeOf(ask(project, 'what-differs', { ...strips, levels: 'no strip,perhaps', worth: '2' }, unwatched))).toBe(
      'survey/factor/no-such-level',
    )
    const { worths, looks } = await project.snapshot()
    expect([worths, looks]).toEqual([[], []])
    await project.close()
  })

  it('a project opened for reading is answered alike, and stays as it was', async () => {
    const writable = await demonstration()
    const there = await ask(writable, 'what-differs', { ...strips, worth: '2' }, unwatched)
    await writable.close()
    const project = await demonstration('read')
    const here = await ask(project, 'what-differs', { ...strips, worth: '2' }, unwatched)
    expect(JSON.stringify(here.answer)).toBe(JSON.stringify(there.answer))
    const { worths, looks } = await project.snapshot()
    expect([worths, looks]).toEqual([[], []])
    await project.close()
  })

  it('the seed given is the seed told; another seed changes nothing but what is drawn', async () => {
    const project = await demonstration('read')
    const [one, two] = [
      await ask(project, 'what-differs', { ...strips, worth: '2' }, unwatched, 'one'),
      await ask(project, 'what-differs', { ...strips, worth: '2' }, unwatched, 'two'),
    ]
    expect([one.answer.receipt.seed, two.answer.receipt.seed]).toEqual(['one', 'two'])
    expect(two.answer.estimates).toEqual(one.answer.estimates)
    await project.close()
  })

  it.each([
    ['never', {}, 'host/no-such-question'],
    ['who-visits', { never: '1' }, 'model/options/unknown'],
    ['who-visits', { per: 'hour' }, 'model/options/no-such-choice'],
  ])('%s %j: %s', async (id, options, code) => {
    const project = await demonstration('read')
    expect(await codeOf(ask(project, id, options, unwatched))).toBe(code)
    await project.close()
  })
})
