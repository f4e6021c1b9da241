import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { refitter } from '../../src/count-model-inference/refit.ts'
import { type CountModel, countSimulator, fitCountModel } from '../../src/index.ts'
import { madeCounts } from '../count-model/made-counts.ts'
import { expectNear, kindOf } from '../near.ts'
import { cbpp, fitted, salamanders } from './published-models.ts'

describe('a refit', () => {
  it.each([
    ['cbpp', cbpp],
    ['salamanders', salamanders],
  ] as const)('identity: %s: to the counts themselves it is the fit', (_, model) => {
    const fit = fitted(model)
    const again = kindOf(refitter(model, fit)(Float64Array.from(model.counts)), 'fitted')
    expectNear(again.logLikelihood, fit.logLikelihood, 1e-6)
    fit.coefficients.forEach((value, j) => {
      expectNear(again.coefficients[j] as number, value, 1e-3 * (fit.standardErrors[j] as number))
    })
  })

  it.each([
    ['no variance between fields', { fieldSd: 0 }],
    ['no overdispersion', { theta: Number.POSITIVE_INFINITY }],
    ['neither', { fieldSd: 0, theta: Number.POSITIVE_INFINITY }],
    ['typical', {}],
    ['crossed', { dateSd: 0.4 }],
  ] as const)('identity: %s: to drawn counts it is as good as a whole fit, and hangs on none before', (name, asked) => {
    const made = madeCounts({ seed: `refit ${name}`, ...asked })
    const model: CountModel = { family: 'nb2', ...made }
    const fit = fitted(model)
    const simulator = countSimulator(model, fit)
    const refit = refitter(model, fit)
    const rng = createRng('refits')
    for (let r = 0; r < 15; r++) {
      const counts = simulator.draw(rng.fork(`${r}`), 'anew')
      const whole = fitCountModel({ ...model, counts })
      const again = refit(counts)
      if (whole.kind === 'fitted' && again.kind === 'fitted') expectNear(again.logLikelihood, whole.logLikelihood, 1e-5)
      const fresh = refitter(model, fit)(counts)
      if (fresh.kind !== 'fitted' || again.kind !== 'fitted') expect(fresh).toEqual(again)
      else
        expect([fresh.end, fresh.logLikelihood, fresh.predictor()]).toEqual([again.end, again.logLikelihood, again.predictor()])
    }
  })

  it('refuses by name: nothing at all, everything of all trials, a level without an insect', () => {
    const refit = refitter(cbpp, fitted(cbpp))
    const n = cbpp.counts.length
    expect(refit(new Float64Array(n)).kind).toBe('all-zero')
    expect(refit(Float64Array.from(cbpp.trials ?? [])).kind).toBe('all-trials')
    const without = Float64Array.from(cbpp.counts, (count, i) => (cbpp.design.values[i * 4 + 3] === 1 ? 0 : count))
    expect(refit(without).kind).toBe('separated')
  })
})
