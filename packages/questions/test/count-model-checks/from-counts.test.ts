import { createRng } from '@thrum/model/ground'
import { checksSaying, questionsWords, suspectFigure } from '@thrum/questions'
import { checkCountModel, fitCountModel, influenceOf, matrixOfColumns, suspectsOf } from '@thrum/stats'
import { expect, it } from 'vitest'

it('recovery: from counts to figures, the planted field and the planted warmth are told', async () => {
  const rows = Array.from({ length: 48 }, (_, i) => ({ field: Math.floor(i / 6), visit: i % 6, warmth: (i * 7) % 11 }))
  const counts = rows.map(({ field, warmth }) => (field === 3 ? 14 : 2) + (warmth > 6 ? 9 : 0) + ((field + warmth) % 2))
  const model = {
    family: 'poisson',
    counts,
    design: matrixOfColumns(48, [rows.map(() => 1), rows.map(({ field }) => field % 2)]),
    groupings: [{ name: 'field', of: Int32Array.from(rows, ({ field }) => field), levels: 8 }],
  } as const
  const fit = fitCountModel(model)
  if (fit.kind !== 'fitted') throw new Error(fit.kind)
  const fields = { name: 'field', of: rows.map(({ field }) => field), levels: rows.slice(0, 8).map((_, k) => `field ${k}`) }
  const checks = await checkCountModel(model, fit, {
    rng: createRng('figures'),
    covariates: [{ kind: 'numbers', name: 'warmth', values: rows.map(({ warmth }) => warmth) }],
    dates: rows.map(({ visit }) => 20_230 + 3 * visit),
    fields: fields.of,
    draws: 100,
    refits: 249,
  })
  const influence = await influenceOf(model, fit, [{ name: 'strip / no strip', weights: [0, 1] }], [fields])
  const suspects = suspectsOf(checks, influence)
  const figures = suspects.map(suspectFigure)
  const along = figures.find(({ title }) => title.id === 'questions/model-checks/found/along-at')
  expect(along?.title.values).toMatchObject({ where: { values: { name: 'warmth' } } })
  const without = figures.find(({ title }) => title.id === 'questions/model-checks/without/refitted')
  expect(without?.title.values).toMatchObject({ by: 'field', level: 'field 3', sum: 'strip / no strip' })
  expect(without?.rows[0]).toMatchObject({ role: 'headline', n: 48 })
  for (const { rows: lines, title } of figures) {
    expect(questionsWords[title.id]).toBeDefined()
    expect(lines.length).toBeGreaterThan(0)
  }
  expect(checksSaying(checks).values).toMatchObject({ looked: 7, failed: 0, stopped: 'no' })
})
