import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { unwatched } from '@thrum/model/ground'
import { createSpeaker, withTexts } from '@thrum/report'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Asking, ask, createDemonstration, english, openProject, type Project } from '../src/index.ts'

// Answer, JSON version 1 (decision 0004) and the union of figures (decision 0008): a change of a key or a type breaks these.

let folder = ''
let project: Project
const asking = (question: string, options: Parameters<typeof ask>[2]): Promise<Asking> =>
  ask(project, question, options, unwatched)

/** Keys and types of a value, without its numbers and words: sayings, lists and unions by their members. */
function shapeOf(value: unknown): unknown {
  if (value === null) return 'null'
  if (Array.isArray(value))
    return [...new Set(value.map((item) => JSON.stringify(shapeOf(item))))].sort().map((item) => JSON.parse(item))
  if (typeof value !== 'object') return typeof value
  const keys = Object.keys(value)
  if (keys.length === 2 && keys.includes('id') && keys.includes('values')) return 'saying'
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, shapeOf(item)]))
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'thrum-answer-json-'))
  process.env.THRUM_HOME = folder
  await createDemonstration(join(folder, 'vale.thrum'))
  project = await openProject(join(folder, 'vale.thrum'), 'read')
})

afterAll(async () => {
  await project.close()
  rmSync(folder, { recursive: true, force: true })
})

const strips = { kinds: 'bumble bee', between: 'strip', levels: 'no strip,strip', worth: '2' }

describe('answer, JSON version 1', () => {
  it('golden: keys and types of a contrast', async () => {
    const { answer } = await asking('what-differs', strips)
    const { figures, receipt, ...rest } = answer
    expect(shapeOf(rest)).toEqual({
      version: 'number',
      question: 'string',
      asked: 'saying',
      verdict: 'string',
      evidence: 'string',
      headline: 'saying',
      claims: { canSay: ['saying'], cannotSay: ['saying'] },
      estimates: [
        expect.objectContaining({
          id: 'string',
          label: 'saying',
          value: 'number',
          interval: { low: 'number', high: 'number', level: 'number' },
          scale: 'string',
          unit: 'saying',
          n: 'number',
          counts: 'string',
          method: 'saying',
          role: 'string',
          verdict: 'null',
        }),
        expect.objectContaining({ verdict: 'string' }),
      ],
      cautions: expect.arrayContaining([
        { code: 'string', severity: 'string', text: 'saying', evidence: ['string'], evidenceRows: 'number', cure: 'saying' },
      ]),
      method: {
        name: 'saying',
        equation: 'string',
        choices: ['saying'],
        checks: ['saying'],
        references: [{ source: 'string', trust: 'string' }],
      },
      next: ['saying'],
      analyses: [{ comparison: 'saying', fields: 'number', hangs: 'boolean', told: 'saying', analyses: expect.any(Array) }],
    })
    expect(answer.analyses?.[0]?.analyses.map((own) => Object.keys(own).sort().join(' '))).toContain(
      'id interval label told value verdict',
    )
    expect(answer.version).toBe(1)
    expect(Object.keys(receipt).sort()).toEqual(['digest', 'options', 'random', 'rows', 'seed', 'thrum'])
    expect(figures.map(({ kind }) => kind)).toEqual(['intervals', 'intervals', 'rates-by-level'])
  })

  it('the union of figures is data: intervals, rates by level, strips', async () => {
    const { answer } = await asking('what-differs', {
      kinds: 'honey bee',
      since: '2032-07-23',
      where: 'crop=sunflower,season=2032',
      worth: '2',
    })
    const kinds = answer.figures.map((figure) => ({ kind: figure.kind, keys: Object.keys(figure).sort() }))
    expect(kinds).toContainEqual({ kind: 'intervals', keys: ['band', 'kind', 'rows', 'scale', 'title', 'unit'] })
    const shown = (await asking('what-differs', strips)).answer.figures.map((figure) => Object.keys(figure).sort())
    expect(shown).toContainEqual(['band', 'kind', 'rows', 'scale', 'title', 'told', 'unit'])
    expect(kinds).toContainEqual({ kind: 'rates-by-level', keys: ['kind', 'points', 'title', 'unit'] })
    expect(kinds).toContainEqual({ kind: 'strips', keys: ['axis', 'kind', 'strips', 'title'] })
  })

  it('is plain data: what is read back from its JSON is the same, and no number is hidden in it', async () => {
    for (const options of [strips, { ...strips, crop: 'sunflower' }]) {
      const { answer } = await asking('what-differs', options)
      expect(JSON.parse(JSON.stringify(answer))).toEqual(answer)
      for (const { n, value, interval } of answer.estimates) {
        expect(n).toBeGreaterThan(0)
        for (const number of [value, interval.low, interval.high]) expect(number === null || Number.isFinite(number)).toBe(true)
      }
      expect(answer.claims.canSay.length).toBeGreaterThan(0)
    }
  })

  it('same facts, options and seed: the same bytes; every sentence has its English beside it', async () => {
    const [one, two] = [(await asking('what-differs', strips)).answer, (await asking('what-differs', strips)).answer]
    expect(JSON.stringify(one)).toBe(JSON.stringify(two))
    const said = withTexts(one.headline, createSpeaker(english)) as { readonly text: string }
    expect(said.text).toMatch(/strip caused, under these conditions, [\d.]+ times/u)
  })

  it('an audit never looks at what was counted: is-design-sound gives no rate', async () => {
    const { answer } = await asking('is-design-sound', { between: 'strip', kinds: 'bumble bee' })
    expect(answer.estimates.every(({ id }) => id.startsWith('inflation/'))).toBe(true)
  })

  it('S has no silent default', async () => {
    const { worth: _, ...without } = strips
    await expect(asking('what-differs', without)).rejects.toMatchObject({
      code: 'questions/worth-needed',
      values: { suggested: 2 },
    })
    await expect(asking('what-differs', { ...without, kinds: 'all kinds' })).rejects.toMatchObject({ values: { suggested: 1.5 } })
  })
})
