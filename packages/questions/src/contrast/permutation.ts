import type { Rng } from '@thrum/model/ground'
import { type PermutationTest, testByReassignment, testBySignFlips } from '@thrum/stats'
import type { PairContrast } from '@thrum/survey'

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
