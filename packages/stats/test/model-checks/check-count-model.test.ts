import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { type Check, type CheckMade, checkCountModel, holm, matrixOfColumns, suspectsOf } from '../../src/index.ts'
import { fitted, type Watched, watched } from './watched.ts'

const nameOf = ({ check }: Check): string => (check.kind === 'covariate' ? check.name : check.kind)

async function checksOf(made: Watched, family: 'poisson' | 'nb2'): Promise<ReadonlyMap<string, CheckMade>> {
  const { model: plain, warmth, dates, fields } = watched(made)
  const { model, fit } = fitted(plain, family)
  const asked = {
    rng: createRng('checks'),
    covariates: [{ kind: 'numbers', name: 'warmth', values: warmth } as const],
    dates,
    fields,
  }
  const { checks, looked, kind } = await checkCountModel(model, fit, { ...asked, draws: 200, refits: 249 })
  expect(kind).toBe('finished')
  expect(looked).toBe(7)
  const made7 = checks.flatMap((check) => (check.kind === 'checked' ? [[nameOf(check), check] as const] : []))
  expect(made7.map(([, check]) => check.holm)).toEqual(holm(made7.map(([, check]) => check.p)))
  return new Map(made7)
}

describe('what is wrong is found', () => {
  it('recovery: counts of the model itself raise no suspect', async () => {
    const checks = await checksOf({ seed: 'true', fields: 10, visits: 8 }, 'poisson')
    for (const check of checks.values()) expect(check.holm).toBeGreaterThan(0.05)
  })

  it('recovery: Poisson fitted to NB2 counts, dispersion', async () => {
    const checks = await checksOf({ seed: 'scattered', theta: 1.5 }, 'poisson')
    expect(checks.get('dispersion')).toMatchObject({ verdict: 'suspect', side: 'above' })
    expect(checks.get('dispersion')?.statistic).toBeGreaterThan(checks.get('dispersion')?.expected.high ?? 0)
  })

  it('recovery: a covariate left out of an NB2 model, by its own check alone', async () => {
    const checks = await checksOf({ seed: 'warm', warmth: 0.7, fields: 12 }, 'nb2')
    const warmth = checks.get('warmth')
    expect(warmth?.verdict).toBe('suspect')
    // More are counted than expected where it is warm, fewer where it is cold.
    const first = warmth?.lines[0]
    const last = warmth?.lines.at(-1)
    expect(first?.found).toBeLessThan(first?.least ?? 0)
    expect(last?.found).toBeGreaterThan(last?.most ?? 0)
    expect(warmth?.points?.at.length).toBe(96)
    expect(checks.get('time')?.verdict).toBe('fine')
    expect(checks.get('autocorrelation')?.verdict).toBe('fine')
  })

  it('recovery: zeros of another origin', async () => {
    const checks = await checksOf({ seed: 'zeros', extraZeros: 0.25, mean: 8 }, 'nb2')
    expect(checks.get('zeros')).toMatchObject({ verdict: 'suspect', side: 'above' })
    expect(checks.get('warmth')?.verdict).toBe('fine')
  })

  it('recovery: visits that follow one another go astray together', async () => {
    const checks = await checksOf({ seed: 'swing', fields: 12, visits: 20, swing: 0.7, goesOn: 0.8 }, 'nb2')
    expect(checks.get('autocorrelation')).toMatchObject({ verdict: 'suspect', side: 'above' })
    expect(checks.get('warmth')?.verdict).toBe('fine')
  })

  it('recovery: one count far outside, named', async () => {
    const { model: plain } = watched({ seed: 'far' })
    const counts = Array.from(plain.counts)
    counts[17] = 90
    const { model, fit } = fitted({ ...plain, counts }, 'poisson')
    const { checks } = await checkCountModel(model, fit, { rng: createRng('far'), refits: 99 })
    const outliers = checks.find(({ check }) => check.kind === 'outliers')
    expect(outliers).toMatchObject({ kind: 'checked', rows: [17], lines: [{ found: 1 }, { found: 0 }] })
  })

  it('recovery: levels of which one holds more', async () => {
    const { model: plain, visits } = watched({ seed: 'levels', fields: 8, visits: 9, fieldSd: 0 })
    const of = visits.map((i) => i % 3)
    const counts = Array.from(plain.counts, (count, i) => (of[i] === 2 ? 2 * count + 2 : count))
    const { model, fit } = fitted({ ...plain, counts }, 'nb2')
    const observer = { kind: 'levels', name: 'observer', of, levels: ['first', 'second', 'third'] } as const
    const { checks } = await checkCountModel(model, fit, { rng: createRng('l'), covariates: [observer], refits: 249 })
    const found = checks.find(({ check }) => check.kind === 'covariate')
    expect(found).toMatchObject({ kind: 'checked', verdict: 'suspect' })
    if (found?.kind !== 'checked') return
    expect(found.lines.map(({ label }) => (label.kind === 'level' ? label.level : ''))).toEqual(['first', 'second', 'third'])
    expect(found.lines.map(({ found: counted, most }) => counted > most)).toEqual([false, false, true])
    expect(suspectsOf({ checks }, null)[0]).toMatchObject({ kind: 'check' })
  })
})

describe('checkCountModel', () => {
  it('gives the same for the same stream, whatever else is asked', async () => {
    const { model: plain, warmth } = watched({ seed: 'same' })
    const { model, fit } = fitted(plain, 'poisson')
    const asked = { rng: createRng('same'), draws: 40, refits: 60 }
    const alone = await checkCountModel(model, fit, asked)
    const more = await checkCountModel(model, fit, {
      ...asked,
      covariates: [{ kind: 'numbers', name: 'warmth', values: warmth }],
    })
    const pOf = (checks: readonly Check[]): readonly (readonly [string, number])[] =>
      checks.flatMap((check) => (check.kind === 'checked' ? [[nameOf(check), check.p] as const] : []))
    expect(pOf(more.checks).filter(([name]) => name !== 'warmth')).toEqual(pOf(alone.checks))
  })

  it('p is never 0 and never above 1', async () => {
    const { model, fit } = fitted(watched({ seed: 'far off', theta: 0.5 }).model, 'poisson')
    const { checks } = await checkCountModel(model, fit, { rng: createRng('p'), draws: 50, refits: 50 })
    for (const check of checks) {
      expect(check.kind).toBe('checked')
      if (check.kind !== 'checked') continue
      expect(check.p).toBeGreaterThanOrEqual(1 / 51)
      expect(check.p).toBeLessThanOrEqual(1)
    }
  })

  it('stops between refits and says so', async () => {
    const { model, fit } = fitted(watched({ seed: 'stopped' }).model, 'poisson')
    const signal = { aborted: false }
    const { kind, checks, refits } = await checkCountModel(
      model,
      fit,
      { rng: createRng('x'), draws: 40 },
      {
        signal,
        onProgress: ({ done, unit }) => {
          signal.aborted = unit === 'refit' && done >= 20
        },
        breathe: () => Promise.resolve(),
      },
    )
    expect(kind).toBe('stopped')
    expect(refits).toMatchObject({ asked: 499, fitted: 20 })
    expect(checks.filter((check) => check.kind === 'not-checked' && check.because === 'few-refits').length).toBe(3)
  })
})

describe('degenerate input', () => {
  it('one row: nothing is checked, and why', async () => {
    const { model, fit } = fitted({ counts: [3], design: matrixOfColumns(1, [[1]]) }, 'poisson')
    const { checks, looked } = await checkCountModel(model, fit, { rng: createRng('1'), dates: [1], fields: [0] })
    expect(looked).toBe(0)
    for (const check of checks) expect(check).toMatchObject({ kind: 'not-checked', because: 'few-rows' })
  })

  it('one field, a field with one visit, a constant covariate, missing dates', async () => {
    const { model: plain, dates } = watched({ seed: 'odd', fields: 3, visits: 8 })
    const { model, fit } = fitted({ ...plain, groupings: [] }, 'poisson')
    const asked = { rng: createRng('o'), draws: 40, refits: 50 }
    const even = { kind: 'numbers', name: 'even', values: dates.map(() => 4) } as const
    const holes = { kind: 'numbers', name: 'holes', values: dates.map((_, i) => (i % 2 === 0 ? Number.NaN : i)) } as const
    const level = { kind: 'levels', name: 'one', of: dates.map(() => 0), levels: ['only', 'never'] } as const
    const all = await checkCountModel(model, fit, {
      ...asked,
      covariates: [even, holes, level],
      dates: dates.map(() => Number.NaN),
      fields: dates.map(() => 0),
    })
    const by = new Map(all.checks.map((check) => [nameOf(check), check]))
    expect(by.get('even')).toMatchObject({ kind: 'not-checked', because: 'one-value' })
    expect(by.get('one')).toMatchObject({ kind: 'not-checked', because: 'one-value' })
    expect(by.get('holes')).toMatchObject({ kind: 'checked' })
    expect(by.get('time')).toMatchObject({ kind: 'not-checked', because: 'no-dates' })
    expect(by.get('autocorrelation')).toMatchObject({ kind: 'not-checked', because: 'no-dates' })
    // Each field has one visit, so none follows another.
    const once = await checkCountModel(model, fit, { ...asked, dates, fields: dates.map((_, i) => i) })
    expect(once.checks.at(-1)).toMatchObject({ kind: 'not-checked', because: 'few-pairs' })
    // One long field, and one with a single visit.
    const long = await checkCountModel(model, fit, {
      ...asked,
      dates: dates.map((_, i) => i),
      fields: dates.map((_, i) => Number(i === 5)),
    })
    expect(long.checks.at(-1)).toMatchObject({ kind: 'checked' })
  })

  it('refuses lengths that differ, by name', async () => {
    const { model, fit } = fitted(watched({ seed: 'short' }).model, 'poisson')
    const asked = { rng: createRng('r'), covariates: [{ kind: 'numbers', name: 'warmth', values: [1, 2] } as const] }
    await expect(checkCountModel(model, fit, asked)).rejects.toThrow(/warmth 2/)
    await expect(checkCountModel(model, fit, { rng: createRng('r'), dates: [1] })).rejects.toThrow(/dates 1/)
  })
})
