import { describe, expect, it } from 'vitest'
import {
  InputError,
  requireCount,
  requireFinite,
  requireOpenUnit,
  requirePositive,
  requireSameLength,
  ThrumError,
} from '../../src/ground/index.ts'

function refusal(run: () => void): string {
  try {
    run()
  } catch (error) {
    if (error instanceof InputError) return `${error.code}: ${error.message}`
    throw error
  }
  return 'accepted'
}

describe('contracts of arguments', () => {
  it.each([
    ['count 0', () => requireCount('trials', 0)],
    ['count at both ends', () => [requireCount('trials', 1, { min: 1, max: 5 }), requireCount('trials', 5, { min: 1, max: 5 })]],
    ['the largest safe count', () => requireCount('trials', Number.MAX_SAFE_INTEGER)],
    ['a half', () => requireOpenUnit('level', 0.5)],
    ['the least positive number', () => requirePositive('effort', Number.MIN_VALUE)],
    ['a negative finite number', () => requireFinite('estimate', -1e300)],
    ['two lists of no length', () => requireSameLength({ counts: [], effort: [] })],
    ['one list', () => requireSameLength({ counts: [1, 2] })],
  ])('accepts %s', (_, run) => {
    expect(refusal(run)).toBe('accepted')
  })

  const outOfRange = 'ground/input/out-of-range'
  it.each([
    [() => requireCount('trials', 1.5), `${outOfRange}: trials is 1.5; expected a whole number, at least 0`],
    [() => requireCount('trials', -1), `${outOfRange}: trials is -1; expected a whole number, at least 0`],
    [() => requireCount('trials', Number.NaN), `${outOfRange}: trials is NaN; expected a whole number, at least 0`],
    [() => requireCount('trials', 2 ** 53), `${outOfRange}: trials is 9007199254740992; expected a whole number, at least 0`],
    [() => requireCount('set', 21, { max: 20 }), `${outOfRange}: set is 21; expected a whole number from 0 to 20`],
    [() => requireCount('fields', 0, { min: 1 }), `${outOfRange}: fields is 0; expected a whole number, at least 1`],
    [() => requireOpenUnit('level', 0), `${outOfRange}: level is 0; expected a number above 0 and below 1`],
    [() => requireOpenUnit('level', 1), `${outOfRange}: level is 1; expected a number above 0 and below 1`],
    [() => requireOpenUnit('level', Number.NaN), `${outOfRange}: level is NaN; expected a number above 0 and below 1`],
    [() => requirePositive('effort', 0), `${outOfRange}: effort is 0; expected a finite number above 0`],
    [() => requirePositive('effort', Infinity), `${outOfRange}: effort is Infinity; expected a finite number above 0`],
    [() => requireFinite('se', Number.NaN), `${outOfRange}: se is NaN; expected a finite number`],
    [
      () => requireSameLength({ counts: [1], effort: [1, 2], fields: [] }),
      'ground/input/lengths-differ: lengths differ: counts 1, effort 2, fields 0',
    ],
  ])('refuses, naming the argument and the value found: %#', (run, message) => {
    expect(refusal(run)).toBe(message)
  })
})

describe('ThrumError', () => {
  it('carries the id of its sentence and of its remedy, never the sentence', () => {
    const error = new ThrumError('store/exists', { file: 'a.thrum' }, { cause: 'why' })
    expect(error.saying).toEqual({ id: 'store/exists', values: { file: 'a.thrum' } })
    expect(error.remedy).toEqual({ id: 'store/exists/remedy', values: { file: 'a.thrum' } })
    expect(error.cause).toBe('why')
    expect(error.name).toBe('ThrumError')
  })
})
