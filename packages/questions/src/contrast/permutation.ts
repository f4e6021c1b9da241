import type { Rng } from '@thrum/model/ground'
import { type PermutationTest, testByReassignment, testBySignFlips } from '@thrum/stats'
import type { PairContrast } from '@thrum/survey'
import type { ContrastCase } from './contrast-case.ts'
import type { PairVerdict } from './pair-verdict.ts'

/** Permutation of whole fields within their blocks (of pairs: of signs), beside the t that decides (methods 2.8). */
export function permutationOf(pair: PairContrast, rng: Rng): PermutationTest {
  const { units, nuisances, level } = pair
  const nuisance = nuisances.flatMap(({ columns }) => columns)
  if (units.layout === 'within') return testBySignFlips({ differences: units.z, nuisance, rng })
  // Only the two levels compared; blocks and nuisances stay with their field.
  const inside = units.level.flatMap((own, k) => (own === 0 || own === level ? [k] : []))
  const pick = (values: ArrayLike<number>): number[] => inside.map((k) => values[k] ?? 0)
  return testByReassignment({
    z: pick(units.z),
    level: pick(units.level).map((own) => (own === level ? 1 : 0)),
    block: pick(units.block),
    nuisance: nuisance.map(pick),
    rng,
  })
}

export type TestedPermutation = Extract<PermutationTest, { kind: 'tested' }>

/** The permutation of fields of each comparison; null where there is nothing to permute, or nothing may be compared. */
export function permutationsOf(
  asked: ContrastCase,
  found: readonly PairVerdict[],
  rng: Rng,
): readonly (TestedPermutation | null)[] {
  return found.map(({ kind, pair, verdict }) => {
    if (pair.kind === 'refused' || verdict === 'design-blocks' || asked.design.measured !== null) return null
    const test = permutationOf(pair, rng.fork(`permutation/${kind.kind.label}/${pair.level}`))
    return test.kind === 'tested' ? test : null
  })
}
