import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect } from 'vitest'
import { tell } from './in-process.ts'

const names = ['bees', 'field', 'strip', 'stage', 'minutes', 'year', 'Strip', 'wet and dry', '__proto__'] as const

/** Mostly the one, else the other. */
const often = <T>(one: fc.Arbitrary<T>, other: fc.Arbitrary<T>, percent: number): fc.Arbitrary<T> =>
  fc.oneof({ arbitrary: one, weight: percent }, { arbitrary: other, weight: 100 - percent })

const cell = (name: string): fc.Arbitrary<string> => {
  if (name === 'bees') return often(fc.constantFrom('0', '1', '3', '12'), fc.constantFrom('250', ''), 95)
  if (name === 'stage') return often(fc.constantFrom('61', '63.5', '65', '67'), fc.constant('NA'), 97)
  if (name === 'minutes') return often(fc.constantFrom('10', '15', ''), fc.constantFrom('0', 'long'), 99)
  if (name === 'year') return fc.constantFrom('2031', '2032', '2031', '2031')
  return often(fc.constantFrom('a', 'b', 'c', 'none'), fc.constantFrom('"x, y"', '=1+1', 'NA'), 95)
}
const rowOf = (): fc.Arbitrary<readonly string[]> => fc.tuple(...names.map(cell))
const column = often(fc.constantFrom(...names.slice(1)), fc.constantFrom('bees', 'nobody', 'STAGE', ''), 96)
const joined = fc.array(column, { minLength: 1, maxLength: 3 }).map((own) => own.join(' and '))
const list = fc.array(fc.oneof(column, joined), { minLength: 1, maxLength: 3 }).map((own) => own.join(','))
/** Given in so many of a hundred command lines. */
const given = <T>(values: fc.Arbitrary<T>, percent: number): fc.Arbitrary<T | undefined> =>
  often<T | undefined>(values, fc.constant(undefined), percent)

const asked = fc.record({
  response: often(fc.constant('bees'), column, 97),
  family: given(
    often(fc.constantFrom('poisson', 'nb1', 'nb2'), fc.constantFrom('binomial', 'beta-binomial', 'gaussian', 'normal'), 75),
    98,
  ),
  fixed: given(list, 75),
  random: given(list, 50),
  slope: given(fc.constantFrom('stage by field', 'bees by strip', 'stage', 'year by field and strip'), 6),
  effort: given(often(fc.constant('minutes'), column, 90), 35),
  offset: given(fc.constantFrom('stage', 'minutes', 'strip'), 5),
  trials: given(fc.constantFrom('minutes', 'stage', 'year'), 10),
  'zeros-by': given(list, 4),
  levels: given(fc.constantFrom('strip=b>a', 'strip=none', 'year=2032', 'field'), 8),
  'as-levels': given(column, 10),
  compare: given(list, 6),
  per: given(fc.constantFrom('60', '0', 'x'), 4),
  by: given(fc.constantFrom('wald', 'profile', 'bootstrap'), 12),
  refits: given(fc.constantFrom('100', '7'), 2),
  nodes: given(fc.constantFrom('9', '2'), 5),
  without: given(list, 8),
})
const flags = often<readonly string[]>(
  fc.constantFrom(['unchecked'], ['unchecked', 'brief'], ['unchecked', 'zeros'], []),
  fc.constantFrom(['slope-apart'], ['reml']),
  95,
)

/** Any small table, and anything asked of it, ends with 0, 1 or 2 and a message, and never with a failure of the program. */
export async function tryAnyTable(runs: number, seed: number): Promise<readonly number[]> {
  const folder = mkdtempSync(join(tmpdir(), 'thrum-any-'))
  const file = join(folder, 'any.csv')
  const codes = [0, 0, 0]
  try {
    await fc.assert(
      fc.asyncProperty(
        often(fc.array(rowOf(), { minLength: 15, maxLength: 50 }), fc.array(rowOf(), { minLength: 1, maxLength: 8 }), 85),
        asked,
        flags,
        async (rows, options, on) => {
          writeFileSync(file, `${[names, ...rows].map((row) => row.join(',')).join('\n')}\n`)
          // A thousand refits of an odd model take a minute and more.
          const few = options.by === 'bootstrap' ? { ...options, refits: '100' } : options
          const words = Object.entries(few).flatMap(([name, value]) => (value === undefined ? [] : [`--${name}=${value}`]))
          const { code, out, notes } = await tell(['fit', file, ...words, ...on.map((flag) => `--${flag}`)])
          expect(notes).not.toMatch(/Thrum itself failed|\bat .*:\d+:\d+/u)
          expect(out + notes).toMatch(/\S/u)
          expect(out + notes).not.toMatch(/\b(?:NaN|undefined|Infinity)\b/u)
          codes[code] = (codes[code] ?? 0) + 1
        },
      ),
      { numRuns: runs, seed },
    )
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
  return codes
}
