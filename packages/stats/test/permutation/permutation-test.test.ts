import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { arrangementsWithin } from '../../src/permutation/arrangements.ts'
import { smallestReassignmentP, testByReassignment, testBySignFlips } from '../../src/permutation/permutation-test.ts'
import { kindOf } from '../near.ts'
import { referenceValues } from '../reference-table.ts'

const rng = createRng('permutation')
const oracle = referenceValues('permutation/values')
const share = (name: string): number => {
  const [reached = 0, all = 1] = oracle(name)
  return reached / all
}

const unequal = [3.1, 2.2, 0.4, 1.9, 2.5, 0.7, 1.1, 2, 1.4, 0.9, 2.8, 1.6]
const twoOfTwelve = [1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]
const inBlocks = {
  z: [2.5, 1, 1.4, 0.8, 3, 3.9, 2.1, 2.6, 1.9],
  level: [1, 0, 0, 0, 1, 1, 0, 0, 0],
  block: [0, 0, 0, 0, 1, 1, 1, 1, 1],
}

describe('testByReassignment', () => {
  it.each([
    [3, 0.1],
    [4, 2 / 70],
  ])('published: wholly apart, %i against each other, the smallest p there is', (n, p) => {
    const z = Array.from({ length: 2 * n }, (_, f) => (f < n ? f : f + 10))
    const level = z.map((_, f) => Number(f >= n))
    const got = kindOf(testByReassignment({ z, level, rng }), 'tested')
    expect(got).toMatchObject({ p, smallestP: p, method: 'exact' })
    expect(smallestReassignmentP(level)).toBe(p)
  })

  it('oracle: 2 against 10 (full enumeration in R), where halving the pool would be wrong', () => {
    const got = kindOf(testByReassignment({ z: unequal, level: twoOfTwelve, rng }), 'tested')
    expect(got.p).toBe(share('two-of-twelve'))
    expect(got).toMatchObject({ arrangements: 66, looked: 66, smallestP: 1 / 66 })
  })

  it('identity: 2 against 10 with the two farthest values reaches 1/66; the level turned round says the same', () => {
    const z = [9, 8, 0.4, 1.9, 2.5, 0.7, 1.1, 2, 1.4, 0.9, 2.8, 1.6]
    expect(kindOf(testByReassignment({ z, level: twoOfTwelve, rng }), 'tested').p).toBe(1 / 66)
    const turned = twoOfTwelve.map((v) => 1 - v)
    expect(kindOf(testByReassignment({ z: unequal, level: turned, rng }), 'tested').p).toBe(share('two-of-twelve'))
  })

  it('oracle: blocks of unequal make-up, 1 of 4 and 2 of 5 (full enumeration in R)', () => {
    const got = kindOf(testByReassignment({ ...inBlocks, rng }), 'tested')
    expect(got.p).toBe(share('blocks'))
    expect(got).toMatchObject({ arrangements: 40, smallestP: 1 / 40 })
  })

  it('oracle: with a nuisance that stays with its unit (full enumeration in R)', () => {
    expect(kindOf(testByReassignment({ ...inBlocks, nuisance: [[4, 2, 5, 1, 3, 6, 2, 2, 4]], rng }), 'tested').p).toBe(
      share('blocks-nuisance'),
    )
  })

  it('identity: the nuisance may be days near 20,000, and block effects cancel', () => {
    const nuisance = [[4, 2, 5, 1, 3, 6, 2, 2, 4].map((d) => 20000 + d)]
    const z = inBlocks.z.map((v, f) => v + 100 * (inBlocks.block[f] ?? 0))
    expect(kindOf(testByReassignment({ ...inBlocks, z, nuisance, rng }), 'tested').p).toBe(share('blocks-nuisance'))
  })

  it('oracle: ties in the outcome count as reached (full enumeration in R)', () => {
    expect(kindOf(testByReassignment({ z: [1, 1, 2, 2, 2, 3], level: [0, 0, 0, 1, 1, 1], rng }), 'tested').p).toBe(share('ties'))
  })

  it('identity: no difference at all has p 1', () => {
    expect(kindOf(testByReassignment({ z: [0.1, 0.3, 0.1, 0.3], level: [0, 0, 1, 1], rng }), 'tested').p).toBe(1)
  })

  it('identity: drawn arrangements come near the full count and repeat with the seed', () => {
    const draw = () => kindOf(testByReassignment({ ...inBlocks, enumerate: 10, draws: 4000, rng: createRng('drawn') }), 'tested')
    const got = draw()
    expect(got).toMatchObject({ method: 'drawn', looked: 4000 })
    expect(draw()).toEqual(got)
    const exact = share('blocks')
    // Four Monte Carlo standard errors.
    expect(Math.abs(got.p - exact)).toBeLessThanOrEqual(4 * Math.sqrt((exact * (1 - exact)) / 4000))
    // (1 + c) / (1 + B) is a whole number of 4001sts.
    expect(Math.abs(got.p * 4001 - Math.round(got.p * 4001))).toBeLessThan(1e-9)
  })

  it('identity: many units are drawn, and p never falls to 0', () => {
    const z = Array.from({ length: 40 }, (_, f) => f)
    const got = kindOf(testByReassignment({ z, level: z.map((v) => Number(v >= 20)), draws: 199, rng }), 'tested')
    expect(got).toMatchObject({ method: 'drawn', p: 1 / 200, smallestP: 1 / 200 })
  })

  it('a measured level is dealt anew as well', () => {
    // Increasing order and its reverse are the two extremes of 4! arrangements.
    const got = kindOf(testByReassignment({ z: [1, 2, 3.5, 4], level: [0, 1, 2, 3], rng }), 'tested')
    expect(got).toMatchObject({ p: 2 / 24, smallestP: 2 / 24, arrangements: 24 })
    // Levels that do not lie evenly have no mirror image.
    expect(smallestReassignmentP([0, 1, 2, 9])).toBe(1 / 24)
  })

  it('says so when there is nothing to permute, no scatter, or a level lost in blocks', () => {
    expect(testByReassignment({ z: [1, 2], level: [0, 0], rng })).toEqual({ kind: 'one-arrangement' })
    expect(testByReassignment({ z: [], level: [], rng })).toEqual({ kind: 'one-arrangement' })
    expect(testByReassignment({ z: [1, 2, 3, 4], level: [0, 0, 1, 1], block: [0, 0, 1, 1], rng })).toEqual({
      kind: 'one-arrangement',
    })
    expect(testByReassignment({ z: [2, 2, 2, 2], level: [0, 0, 1, 1], rng })).toEqual({ kind: 'no-scatter' })
    expect(testByReassignment({ z: [1, 2, 3, 5], level: [0, 0, 1, 1], nuisance: [[5, 5, 6, 6]], rng })).toEqual({
      kind: 'aliased',
    })
  })

  it('refuses lengths that differ, NaN, and no draws', () => {
    expect(() => testByReassignment({ z: [1, 2], level: [0], rng })).toThrow(/lengths differ/)
    expect(() => testByReassignment({ z: [1, Number.NaN], level: [0, 1], rng })).toThrow(/NaN/)
    expect(() => testByReassignment({ z: [1, 2], level: [0, Number.NaN], rng })).toThrow(/NaN/)
    expect(() => testByReassignment({ z: [1, 2], level: [0, 1], draws: 0, rng })).toThrow(/draws is 0/)
  })
})

describe('testBySignFlips', () => {
  const differences = [0.5, 0.1, 0.7, -0.2, 0.9, 0.3, 0.4]

  it('published: five pairs that point one way give 0.0625', () => {
    expect(testBySignFlips({ differences: [1, 2, 0.5, 3, 1.1], rng })).toMatchObject({
      p: 0.0625,
      smallestP: 0.0625,
      method: 'exact',
    })
  })

  it('oracle: seven pairs, without and with a nuisance (full enumeration in R)', () => {
    expect(kindOf(testBySignFlips({ differences, rng }), 'tested').p).toBe(share('signs'))
    expect(kindOf(testBySignFlips({ differences, nuisance: [[1, -1, 2, 0, 3, 1, -2]], rng }), 'tested').p).toBe(
      share('signs-nuisance'),
    )
  })

  it('identity: turning all pairs round changes nothing; 20 pairs are drawn', () => {
    expect(kindOf(testBySignFlips({ differences: differences.map((d) => -d), rng }), 'tested').p).toBe(share('signs'))
    expect(testBySignFlips({ differences: Array.from({ length: 20 }, (_, f) => 1 + f / 10), draws: 99, rng })).toMatchObject({
      method: 'drawn',
      p: 0.01,
    })
  })

  it('one pair can show nothing, no pair neither', () => {
    expect(testBySignFlips({ differences: [3], rng })).toMatchObject({ kind: 'tested', p: 1, smallestP: 1 })
    expect(testBySignFlips({ differences: [], rng })).toEqual({ kind: 'one-arrangement' })
    expect(testBySignFlips({ differences: [0, 0, 0], rng })).toEqual({ kind: 'no-scatter' })
  })
})

describe('arrangementsWithin', () => {
  const all = (values: readonly number[], block: readonly number[]): string[] => {
    const seen: string[] = []
    arrangementsWithin(values, block).forEach((arrangement) => {
      seen.push(arrangement.join(' '))
    })
    return seen
  }

  it.each([
    [[0, 0, 0, 1, 1, 1], [0, 0, 0, 0, 0, 0], 20],
    [[1, 0, 0, 1, 0, 1], [0, 0, 0, 1, 1, 1], 9],
    [[2, 0, 1, 1], [7, 7, 7, 7], 12],
    [[1, 0, 1, 0], [0, 1, 0, 1], 1],
  ])('identity: %j in blocks %j are %i, each once', (values, block, count) => {
    const seen = all(values, block)
    expect(arrangementsWithin(values, block).count).toBe(count)
    expect(seen.length).toBe(count)
    expect(new Set(seen).size).toBe(count)
    expect(seen).toContain(values.join(' '))
  })

  it('identity: draws are even over all arrangements, chi-square below its 0.999 quantile', () => {
    const ways = arrangementsWithin([0, 0, 1, 1, 0, 1], [0, 0, 0, 0, 1, 1])
    const counts = new Map<string, number>()
    const out = new Float64Array(6)
    const stream = createRng('even')
    for (let k = 0; k < 6000; k++) {
      ways.fillDraw(stream, out)
      counts.set(out.join(' '), (counts.get(out.join(' ')) ?? 0) + 1)
    }
    expect(counts.size).toBe(12)
    const chiSquare = [...counts.values()].reduce((sum, count) => sum + (count - 500) ** 2 / 500, 0)
    // 11 degrees of freedom.
    expect(chiSquare).toBeLessThan(31.26)
  })
})
