import { describe, expect, it } from 'vitest'
import { ThrumError } from '../../src/ground/index.ts'
import { optionsSchema, readOptions, splitList } from '../../src/index.ts'

const spec = {
  kinds: { type: 'texts', explained: 'kinds' },
  between: { type: 'text', explained: 'between' },
  since: { type: 'date', explained: 'since' },
  worth: { type: 'number', above: 1, explained: 'worth' },
  per: { type: 'choice', choices: ['time', 'flower'], explained: 'per' },
} as const

function refusal(raw: Parameters<typeof readOptions>[1]): unknown {
  try {
    return readOptions(spec, raw)
  } catch (error) {
    if (error instanceof ThrumError) return { code: error.code, ...error.values }
    throw error
  }
}

describe('readOptions', () => {
  it('reads each type, and leaves out what was not given', () => {
    expect(
      readOptions(spec, {
        kinds: ['hover fly, honey bee', 'small\\, dark bee'],
        worth: '1.5',
        since: '2032-02-29',
        per: undefined,
      }),
    ).toEqual({ kinds: ['hover fly', 'honey bee', 'small, dark bee'], worth: 1.5, since: '2032-02-29' })
    expect(readOptions(spec, { worth: 2, between: '  strip ', per: 'flower' })).toEqual({
      worth: 2,
      between: 'strip',
      per: 'flower',
    })
    expect(readOptions(spec, {})).toEqual({})
  })

  const known = 'kinds, between, since, worth, per'
  it.each([
    [{ wroth: '2' }, { code: 'model/options/unknown', name: 'wroth', known }],
    [{ constructor: '2' }, { code: 'model/options/unknown', name: 'constructor', known }],
    [{ worth: ['2', '3'] }, { code: 'model/options/given-twice', name: 'worth' }],
    [{ between: [] }, { code: 'model/options/empty', name: 'between' }],
    [{ between: '  ' }, { code: 'model/options/empty', name: 'between' }],
    [{ worth: '1' }, { code: 'model/options/not-a-number', name: 'worth', found: '1', above: 1 }],
    [{ worth: '1,5' }, { code: 'model/options/not-a-number', name: 'worth', found: '1,5', above: 1 }],
    [{ worth: 'Infinity' }, { code: 'model/options/not-a-number', name: 'worth', found: 'Infinity', above: 1 }],
    [{ worth: Number.NaN }, { code: 'model/options/not-a-number', name: 'worth', found: 'NaN', above: 1 }],
    [{ per: 'Time' }, { code: 'model/options/no-such-choice', name: 'per', found: 'Time', choices: 'time, flower' }],
    [{ since: '4.7.2031' }, { code: 'model/options/not-a-date', name: 'since', found: '4.7.2031' }],
    [{ since: '2031-13-01' }, { code: 'model/options/not-a-date', name: 'since', found: '2031-13-01' }],
    [{ since: '2031-02-30' }, { code: 'model/options/not-a-date', name: 'since', found: '2031-02-30' }],
  ])('%j is refused, naming the option and what would do', (raw, told) => {
    expect(refusal(raw as Parameters<typeof readOptions>[1])).toEqual(told)
  })

  it('a list as people type it: commas part items, a backslash keeps one inside', () => {
    expect(splitList(' a,b , ,c\\,d ')).toEqual(['a', 'b', 'c,d'])
    expect(splitList('')).toEqual([])
  })

  it('golden: the same declaration as JSON Schema', () => {
    expect(optionsSchema(spec)).toEqual({
      type: 'object',
      additionalProperties: false,
      properties: {
        kinds: { type: 'array', items: { type: 'string' } },
        between: { type: 'string' },
        since: { type: 'string', format: 'date' },
        worth: { type: 'number', exclusiveMinimum: 1 },
        per: { type: 'string', enum: ['time', 'flower'] },
      },
    })
  })
})
