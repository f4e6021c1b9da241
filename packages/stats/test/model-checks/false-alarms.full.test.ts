import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { checkCountModel, fitCountModel } from '../../src/index.ts'
import { watched } from './watched.ts'

// Recovery: counts made by the very model that is fitted. With 79 refits a p of at most 0.05 has a chance of 5 %, one-sided (4 of 80) and
// two-sided (2 of 80 at either end).
const sets = 400
const refits = 79
const threeErrors = 3 * Math.sqrt((0.05 * 0.95) / sets)
/** Whole numbers of rare rows: their p goes in steps, so that it errs on the safe side. */
const inSteps: readonly string[] = ['zeros', 'outliers']

describe('false alarms of checks', () => {
  it.each([
    ['poisson', Number.POSITIVE_INFINITY],
    ['nb2', 2],
  ] as const)(
    'recovery: %s, each check at 5 %%',
    async (family, theta) => {
      const alarms = new Map<string, number>()
      let done = 0
      for (let k = 0; k < sets; k++) {
        const { model: made, warmth, dates, fields } = watched({ seed: `${family}/${k}`, fields: 8, visits: 6, mean: 4, theta })
        const model = { ...made, family }
        const fit = fitCountModel(model)
        if (fit.kind !== 'fitted') continue
        done++
        const levels = { kind: 'levels', name: 'observer', of: fields.map((_, i) => i % 3), levels: ['a', 'b', 'c'] } as const
        const covariates = [{ kind: 'numbers', name: 'warmth', values: warmth } as const, levels]
        const asked = { rng: createRng(`checks/${k}`), covariates, dates, fields, draws: 79, refits }
        for (const check of (await checkCountModel(model, fit, asked)).checks) {
          expect(check.kind).toBe('checked')
          if (check.kind !== 'checked') continue
          const name = check.check.kind === 'covariate' ? check.check.name : check.check.kind
          alarms.set(name, (alarms.get(name) ?? 0) + Number(check.p <= 0.05 + 1e-12))
        }
      }
      expect(done).toBeGreaterThan(0.98 * sets)
      expect([...alarms.keys()].sort()).toEqual([
        'autocorrelation',
        'dispersion',
        'observer',
        'outliers',
        'time',
        'uniformity',
        'warmth',
        'zeros',
      ])
      for (const [name, count] of alarms) {
        expect(count / done, name).toBeLessThan(0.05 + threeErrors)
        if (!inSteps.includes(name)) expect(count / done, name).toBeGreaterThan(0.05 - threeErrors)
      }
    },
    600_000,
  )
})
