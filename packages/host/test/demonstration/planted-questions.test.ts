import type { Answer, Snapshot } from '@thrum/model'
import { createRng, unwatched } from '@thrum/model/ground'
import { whatDiffers } from '@thrum/questions'
import { describe, expect, it } from 'vitest'
import { answerPlanted } from '../../../../trials/demonstration-answers.ts'
import { type PlantedQuestion, plantedQuestions } from '../../src/demonstration/planted-questions.ts'
import { shippedSeed } from '../../src/demonstration/shipped-seed.ts'
import { projectOf } from './made-project.ts'

const work = { ...unwatched, rng: createRng('demonstration'), version: 'test' }
const ask = (snapshot: Snapshot, planted: PlantedQuestion): Promise<Answer> => whatDiffers.run(snapshot, planted.options, work)

const plantedAs = (id: string): PlantedQuestion => {
  const found = plantedQuestions.find((planted) => planted.id === id)
  if (found === undefined) throw new Error(`no planted question ${id}`)
  return found
}

describe('the shipped valley', () => {
  const snapshot = projectOf(shippedSeed)

  for (const planted of plantedQuestions) {
    it(`answers ${planted.id} with ${planted.verdict}, for the kind and for the question`, async () => {
      expect((await answerPlanted(snapshot, planted)).verdict).toBe(planted.verdict)
      expect((await ask(snapshot, planted)).verdict).toBe(planted.verdict)
    })
  }

  it('says of strips, which were dealt out by lot, what was caused; of the edge only what was associated', async () => {
    expect((await ask(snapshot, plantedAs('strips/bumble-bees'))).headline.id).toContain('caused')
    expect((await ask(snapshot, plantedAs('edge/small-solitary-bees'))).headline.id).toContain('associated')
  })

  it('blocks the move of hives for the fade and for the bees that fly so far anyway', async () => {
    const answer = await ask(snapshot, plantedAs('hives-moved/honey-bees'))
    const blocking = answer.cautions.filter(({ severity }) => severity === 'block')
    expect(blocking.map(({ code }) => code)).toEqual(expect.arrayContaining(['tangled', 'same-bees-hives']))
    // Published kernel, summer: exp(290 / 1078) (methods 6.2).
    const exposure = blocking.find(({ code }) => code === 'same-bees-hives')
    expect(exposure?.text.values.fold).toBeCloseTo(1.308677, 6)
    expect(answer.claims.canSay.length).toBeGreaterThan(0)
  })

  it('blocks strips in sunflower alone for want of fields, and for nothing else', async () => {
    const { blockedBy } = await answerPlanted(snapshot, plantedAs('strips-in-sunflower/bumble-bees'))
    expect(blockedBy).toEqual(['not-replicated'])
  })

  it('finds nothing tangled with strips, hour or edge', async () => {
    for (const id of ['strips/bumble-bees', 'afternoon/honey-bees', 'strips/other-kinds', 'edge/small-solitary-bees']) {
      const { cautions } = await ask(snapshot, plantedAs(id))
      expect(cautions.map(({ code }) => code).filter((code) => /tangled|observer|window|places|bees-fields/u.test(code))).toEqual(
        [],
      )
    }
  })
})

describe('recovery: ten valleys', () => {
  const snapshots = Array.from({ length: 10 }, (_, k) => projectOf(`ten ${k}`))

  for (const planted of plantedQuestions) {
    it(`${planted.id}: ${planted.verdict}`, async () => {
      const found = await Promise.all(snapshots.map((snapshot) => answerPlanted(snapshot, planted)))
      const share = found.filter(({ verdict }) => verdict === planted.verdict).length
      // Blocks hang on the design alone, so they never fail. Of ten seeds with a share of 0.95 fewer than 8 come once in 87.
      expect(share).toBeGreaterThanOrEqual(planted.verdict === 'design-blocks' ? 10 : 8)
    })
  }
})
