import { type Rng, requireCount, requireFinite, requireSameLength } from '@thrum/model/ground'
import { type Columns, residualsAfter } from '../least-squares/inflation.ts'
import { norm } from '../least-squares/scaled-columns.ts'
import { baseColumns } from '../unit-contrast/between-units.ts'
import { adjustedEffect } from './adjusted-effect.ts'
import { arrangementsWithin } from './arrangements.ts'

/** The outcome of a permutation test, or why there is nothing to permute. */
export type PermutationTest =
  | {
      readonly kind: 'tested'
      /** Exact: the share of arrangements whose |t| reaches the observed one. Drawn: (1 + c) / (1 + draws). */
      readonly p: number
      /** The smallest p that this design could give, whatever is counted. */
      readonly smallestP: number
      readonly method: 'exact' | 'drawn'
      /** Arrangements that differ from each other; Infinity when past counting. */
      readonly arrangements: number
      /** Arrangements looked at: all of them, or the draws. */
      readonly looked: number
    }
  /** All arrangements are the one that was seen. */
  | { readonly kind: 'one-arrangement' }
  /** Blocks or nuisances leave nothing of the level as it was seen. */
  | { readonly kind: 'aliased' }
  /** Blocks and nuisances explain the outcome wholly. */
  | { readonly kind: 'no-scatter' }

/** How far to go. */
export interface PermutationEffort {
  /** Used only when there are more arrangements than `enumerate`. */
  readonly rng: Rng
  /** Most arrangements to go through one by one, 100,000 unless said. */
  readonly enumerate?: number
  /** Draws when there are more, 9,999 unless said. */
  readonly draws?: number
}

/** Units, their outcome and the level that was dealt to them. */
export interface Reassignment extends PermutationEffort {
  /** One number per unit; length F. */
  readonly z: readonly number[]
  /** Level per unit: 0 and 1, or a measured level; length F. */
  readonly level: readonly number[]
  /** Block code of each unit; levels are dealt anew only within blocks. Left out: one block. */
  readonly block?: readonly number[]
  /** Nuisance columns, each of length F; they stay with their unit. */
  readonly nuisance?: Columns
}

/** Common practice: PERMANOVA programs count F* >= F - 1e-9 |F|, for with few units ties are common and rounding splits them. */
const tie = 1e-9

const usualEnumeration = 100_000
const usualDraws = 9_999

/**
 * Permutation test of a level between units: levels are dealt anew to the units within blocks.
 *
 * Statistic: |t| of the level in the least-squares fit with blocks and nuisances, refitted for every arrangement. Without
 * nuisances this ranks arrangements as the absolute difference of block-adjusted means does. Outcome and nuisances stay with
 * their unit; only the level moves. Exact when levels could have been dealt any of these ways.
 *
 * @throws InputError on lengths that differ, numbers that are not finite, draws below 1
 * @source Fisher R.A. (1935) The Design of Experiments, 21; Phipson B. & Smyth G.K. (2010) Stat. Appl. Genet. Mol. Biol. 9, 39 for drawn p;
 *   Draper N.R. & Stoneman D.M. (1966) Technometrics 8, 695-699 for nuisances.
 * @check 3 against 3 wholly apart gives 0.10, 4 against 4 gives 2/70, 2 against 10 with the two largest gives 1/66 (full enumeration)
 */
export function testByReassignment({ z, level, block, nuisance = [], ...effort }: Reassignment): PermutationTest {
  const blocks = block ?? z.map(() => 0)
  requireSameLength({ z, level, block: blocks })
  for (const value of level) requireFinite('level', value)
  // About their mean, so that day numbers near 20,000 keep their digits; the base holds a column of ones, so nothing else changes.
  const mean = level.reduce((sum, value) => sum + value, 0) / Math.max(1, level.length)
  const dealt = level.map((value) => value - mean)
  const base = [...baseColumns(z.length, block), ...nuisance]
  return judge(z, base, dealt, arrangementsWithin(dealt, blocks), effort)
}

/** Pairs and the effort for them. */
export interface SignFlips extends PermutationEffort {
  /** Second less first for every unit; length F. */
  readonly differences: readonly number[]
  /** Nuisance columns as differences; they flip with their pair. */
  readonly nuisance?: Columns
}

/**
 * Permutation test of pairs: within every unit the two levels are exchanged or not.
 *
 * Statistic: |t| of the mean difference (beside nuisance differences, where there are any), refitted for every arrangement.
 *
 * @throws InputError on lengths that differ, numbers that are not finite, draws below 1
 * @source Fisher R.A. (1935) The Design of Experiments, 21.
 * @check five pairs that all point one way give 2/32 = 0.0625 (full enumeration)
 */
export function testBySignFlips({ differences, nuisance = [], ...effort }: SignFlips): PermutationTest {
  const seen = differences.map(() => 1)
  return judge(differences, nuisance, seen, signsOf(differences.length), effort)
}

/** All ways to give each of n pairs a sign. */
function signsOf(n: number): Ways {
  const count = 2 ** n
  return {
    count: Number.isSafeInteger(count) ? count : Number.POSITIVE_INFINITY,
    isMirrored: n > 0,
    forEach: (visit) => {
      const signs = new Float64Array(n)
      for (let code = 0; code < count; code++) {
        for (let i = 0; i < n; i++) signs[i] = (code >>> i) & 1 ? -1 : 1
        visit(signs)
      }
    },
    fillDraw: (rng, out) => {
      for (let i = 0; i < n; i++) out[i] = rng.below(2) === 0 ? 1 : -1
    },
  }
}

type Ways = ReturnType<typeof arrangementsWithin>

/**
 * The smallest p a design can give, before anything is counted: 2 over the number of arrangements when each has a mirror
 * image among them, else 1 over it.
 *
 * @param level one per unit
 * @param block block code per unit; left out: one block
 * @throws InputError ground/input/lengths-differ
 * @check 3 against 3: 0.10; 4 against 4: 0.028571; 2 against 10: 1/66
 */
export function smallestReassignmentP(level: readonly number[], block?: readonly number[]): number {
  const blocks = block ?? level.map(() => 0)
  requireSameLength({ level, block: blocks })
  return smallest(arrangementsWithin(level, blocks))
}

function smallest({ count, isMirrored }: Ways): number {
  return Math.min(1, (isMirrored ? 2 : 1) / count)
}

function judge(
  z: readonly number[],
  base: Columns,
  seen: readonly number[],
  ways: Ways,
  effort: PermutationEffort,
): PermutationTest {
  const { rng, enumerate = usualEnumeration, draws = usualDraws } = effort
  requireCount('draws', draws, { min: 1 })
  requireCount('enumerate', enumerate)
  if (z.length === 0 || ways.count <= 1) return { kind: 'one-arrangement' }
  const left = residualsAfter(z, base)
  if (norm(left) <= 1e-12 * norm(z)) return { kind: 'no-scatter' }
  const effect = adjustedEffect(left, base)
  const observed = effect(Float64Array.from(seen))
  if (observed === null) return { kind: 'aliased' }
  // An arrangement whose level is lost in blocks and nuisances can show no effect.
  const reaches = (arrangement: Float64Array): boolean => (effect(arrangement) ?? 0) >= observed - tie * observed

  const isExact = ways.count <= enumerate
  let reached = 0
  if (isExact) {
    ways.forEach((arrangement) => {
      if (reaches(arrangement)) reached += 1
    })
    return {
      kind: 'tested',
      p: reached / ways.count,
      smallestP: smallest(ways),
      method: 'exact',
      arrangements: ways.count,
      looked: ways.count,
    }
  }
  const arrangement = new Float64Array(z.length)
  for (let draw = 0; draw < draws; draw++) {
    ways.fillDraw(rng, arrangement)
    if (reaches(arrangement)) reached += 1
  }
  const smallestP = Math.max(smallest(ways), 1 / (1 + draws))
  return { kind: 'tested', p: (1 + reached) / (1 + draws), smallestP, method: 'drawn', arrangements: ways.count, looked: draws }
}
