import { ThrumError } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { optionName, parseArguments, requireKnown, single, typedName } from '../../src/terminal/arguments.ts'

function refusal(run: () => unknown): unknown {
  try {
    return run()
  } catch (error) {
    if (error instanceof ThrumError) return { code: error.code, ...error.values }
    throw error
  }
}

describe('parseArguments', () => {
  it('reads words, options with a blank or an equals sign, and flags', () => {
    const { words, options, flags } = parseArguments(
      ['who-visits', '--kinds', 'honey bee', '--kinds=hover fly', '--where=stage<=67', '--brief', '-h', '-'],
      ['brief', 'json', 'help'],
    )
    expect(words).toEqual(['who-visits', '-'])
    expect([...options]).toEqual([
      ['kinds', ['honey bee', 'hover fly']],
      ['where', ['stage<=67']],
    ])
    expect([...flags]).toEqual(['brief', 'help'])
  })

  it('names are typed with dashes and declared without', () => {
    expect(optionName('withdraw-missing')).toBe('withdrawMissing')
    expect(typedName('withdrawMissing')).toBe('withdraw-missing')
    expect([...parseArguments(['--withdraw-missing'], ['withdrawMissing']).flags]).toEqual(['withdrawMissing'])
  })

  it('a value may begin with one dash, or be a formula, or be empty after an equals sign', () => {
    expect([...parseArguments(['--where', '-5', '--title='], []).options]).toEqual([
      ['where', ['-5']],
      ['title', ['']],
    ])
  })

  it.each([
    [['-x'], { code: 'cli/arguments/single-dash', found: '-x' }],
    [['--kinds'], { code: 'model/options/empty', name: 'kinds' }],
    [['--brief=yes'], { code: 'cli/arguments/flag-with-value', name: 'brief', found: 'yes' }],
    [['--kinds', '--brief'], { code: 'model/options/empty', name: 'kinds' }],
  ])('%j is refused', (argv, told) => {
    expect(refusal(() => parseArguments(argv, ['brief']))).toEqual(told)
  })

  it('an option that takes one value is refused twice; one that is not known is refused with those that are', () => {
    const given = parseArguments(['--seed', 'a', '--seed', 'b', '--worth-set', 'x'], [])
    expect(refusal(() => single(given, 'seed'))).toEqual({ code: 'model/options/given-twice', name: 'seed' })
    expect(single(given, 'never')).toBeUndefined()
    expect(refusal(() => requireKnown(given, ['seed', 'in']))).toEqual({
      code: 'model/options/unknown',
      name: 'worth-set',
      known: '--seed, --in',
    })
    expect(refusal(() => requireKnown(parseArguments(['--json', '--help'], ['json', 'help']), []))).toBeUndefined()
  })
})
