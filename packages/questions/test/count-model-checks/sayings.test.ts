import type { Saying, SayingValue } from '@thrum/model/ground'
import { checkSaying, checksSaying, questionsWords, suspectFigure, suspectSaying } from '@thrum/questions'
import type { Check, NotLooked } from '@thrum/stats'
import { describe, expect, it } from 'vitest'
import { checkMade, suspects } from './suspects.ts'

/** Sentences inside a sentence, itself first. */
function within(own: Saying): readonly Saying[] {
  const values: readonly SayingValue[] = Object.values(own.values)
  return [own, ...values.flatMap((value) => (typeof value === 'object' && 'id' in value ? within(value) : []))]
}

function expectWords(own: Saying): void {
  for (const { id, values } of within(own)) {
    const text = questionsWords[id]
    expect(text, id).toBeDefined()
    for (const [, blank = ''] of (text ?? '').matchAll(/\{(\w+)[,}]/g)) expect(Object.keys(values), id).toContain(blank)
    for (const value of Object.values(values)) expect(value, id).not.toBeNaN()
  }
}

describe('what suspects say', () => {
  it.each(suspects)('%s: every sentence has its words and its values', (_, suspect) => {
    expectWords(suspectSaying(suspect))
    const figure = suspectFigure(suspect)
    expectWords(figure.unit)
    expect(figure.rows.length).toBeGreaterThan(0)
    for (const { label } of figure.rows) expectWords(label)
  })

  it('what was found stands over what the model alone leads to', () => {
    const [, suspect] = suspects.find(([name]) => name === 'covariate, above') ?? []
    if (suspect === undefined) throw new Error('no suspect')
    const { rows } = suspectFigure(suspect)
    // 95 counted of 44 expected; drawn sets from half to 1.6 times that.
    expect(rows[2]).toMatchObject({ value: 95 / 44, low: null, high: null, role: 'headline' })
    expect(rows[3]).toMatchObject({ value: 1, low: 0.5, role: 'beside' })
    expect(rows[3]?.high).toBeCloseTo(1.6, 12)
    expect(suspectSaying(suspect).values).toMatchObject({ found: 95, mean: 44 })
  })

  it('zeros of another origin need an origin: said of suspects alone', () => {
    const named = (verdict: 'look' | 'suspect'): SayingValue | undefined => {
      const found = checkSaying(checkMade({ kind: 'zeros' }, { verdict })).values.found
      return typeof found === 'object' && 'id' in found ? found.values.named : undefined
    }
    expect(named('suspect')).toBe('yes')
    expect(named('look')).toBe('no')
  })

  it('a check that was not made says why', () => {
    const reasons: readonly NotLooked[] = ['few-rows', 'one-value', 'no-dates', 'few-pairs', 'few-refits']
    for (const because of reasons) expectWords(checkSaying({ kind: 'not-checked', check: { kind: 'time' }, because }))
  })

  it('the summary counts what was looked at, and what struck', () => {
    const checks: readonly Check[] = [
      checkMade({ kind: 'zeros' }),
      checkMade({ kind: 'dispersion' }, { verdict: 'fine' }),
      { kind: 'not-checked', check: { kind: 'time' }, because: 'no-dates' },
    ]
    const empty = new Float64Array(0)
    const residuals = {
      kind: 'finished',
      asked: 500,
      draws: 500,
      anew: empty,
      atModes: empty,
      drawn: new Uint32Array(0),
    } as const
    const refits = { asked: 499, meant: 499, fitted: 498, failed: 1 }
    const told = checksSaying({ kind: 'finished', checks, looked: 2, refits, residuals })
    expectWords(told)
    expect(told.values).toEqual({ looked: 2, struck: 1, fitted: 498, failed: 1, stopped: 'no' })
  })
})
