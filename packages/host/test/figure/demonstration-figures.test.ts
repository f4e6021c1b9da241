import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Answer } from '@thrum/model'
import { unwatched } from '@thrum/model/ground'
import { createSpeaker } from '@thrum/report'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { drawAnswer } from '../../../report/src/figure/draw-answer.ts'
import { words } from '../../../report/src/figure/words.en.ts'
import { outside, overlaps, textsOf } from '../../../report/test/figure/drawing.ts'
import { ask, createDemonstration, english, openProject, plantedQuestions } from '../../src/index.ts'

const say = createSpeaker({ ...english, ...words })
const answers = new Map<string, Answer>()
let folder = ''

const asked = [
  { id: 'visits', question: 'who-visits', options: {} },
  { id: 'visits by stage', question: 'who-visits', options: { by: 'stage' } },
  { id: 'visits by field', question: 'who-visits', options: { by: 'field' } },
  { id: 'kinds', question: 'what-differs', options: { between: 'kind', kinds: ['bumble bee', 'honey bee'], worth: 2 } },
  ...plantedQuestions.map(({ id, question, options }) => ({ id, question, options: { ...options } })),
]

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'thrum-figures-'))
  process.env.THRUM_HOME = folder
  const path = join(folder, 'ostrel-vale.thrum')
  await createDemonstration(path)
  const project = await openProject(path, 'write')
  try {
    for (const { id, question, options } of asked) answers.set(id, (await ask(project, question, options, unwatched)).answer)
  } finally {
    await project.close()
  }
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

const answerOf = (id: string): Answer => {
  const answer = answers.get(id)
  if (answer === undefined) throw new Error(`no answer to ${id}`)
  return answer
}

describe('figures of the demonstration', () => {
  it.each(asked)('$id: no text on another and nothing beyond the page, from a phone to a desk', ({ id }) => {
    for (const width of [390, 720, 1280]) {
      const { svg, height } = drawAnswer(answerOf(id), { say, theme: 'light', width })
      expect(overlaps(svg), `overlaps at ${width}`).toEqual([])
      expect(outside(svg, width, height), `outside at ${width}`).toEqual([])
    }
  })

  it.each(asked)('$id: the same bytes twice, and a table for each figure', ({ id }) => {
    const answer = answerOf(id)
    const draw = () => drawAnswer(answer, { say, theme: 'dark', width: 720 })
    expect(draw()).toEqual(draw())
    expect(draw().tables).toHaveLength(answer.figures.length)
    for (const { table } of draw().tables) {
      expect(table.rows.length).toBeGreaterThan(0)
      for (const row of table.rows) expect(row).toHaveLength(table.head.length)
    }
  })

  it('holds the headline, a letter for each figure, the words of the band and the state of the data', () => {
    const answer = answerOf('hives-moved/honey-bees')
    const { svg, alt } = drawAnswer(answer, { say, theme: 'light', width: 1280 })
    const lines = textsOf(svg).map(({ text }) => text)
    expect(lines.join(' ')).toContain(say(answer.headline))
    expect(lines).toEqual(expect.arrayContaining(['a', 'b', 'c', 'd', 'too small to act on', 'before', 'after']))
    expect(lines.at(-1)).toContain(answer.receipt.digest.slice(0, 12))
    expect(alt).toContain('Nowhere do two levels lie over the same stretch.')
  })

  it('every estimate of a figure is printed beside its mark', () => {
    const { svg } = drawAnswer(answerOf('strips/bumble-bees'), { say, theme: 'light', width: 720 })
    const lines = textsOf(svg).map(({ text }) => text)
    const [headline] = answerOf('strips/bumble-bees').estimates
    expect(lines).toContain(Number.parseFloat((headline?.value ?? 0).toPrecision(3)).toString())
  })

  it('a figure with nothing to draw takes no room beside others', () => {
    const answer = answerOf('visits')
    const emptied = {
      ...answer,
      figures: answer.figures.map((own, k) => (k === 1 && own.kind === 'intervals' ? { ...own, rows: [] } : own)),
    }
    expect(drawAnswer(emptied, { say, theme: 'light', width: 390 }).tables).toHaveLength(2)
  })

  it('an answer without figures says so', () => {
    const answer = { ...answerOf('visits'), figures: [] }
    expect(textsOf(drawAnswer(answer, { say, theme: 'light', width: 390 }).svg).map(({ text }) => text)).toContain(
      'This answer has no figure.',
    )
  })
})
