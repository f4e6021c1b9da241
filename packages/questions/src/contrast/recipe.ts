import type { Recipe, Snapshot } from '@thrum/model'
import { rngAlgorithm } from '@thrum/model/ground'
import type { Work } from '../question.ts'

/** The recipe of an answer: digest, options, rows, seed, versions. */
export function recipeOf(
  snapshot: Snapshot,
  options: { readonly [name: string]: string | number | readonly string[] | undefined },
  selected: number,
  work: Work,
): Recipe {
  const given = Object.entries(options).flatMap(([name, value]) => (value === undefined ? [] : [[name, value] as const]))
  return {
    digest: snapshot.digest,
    options: Object.fromEntries(given.sort(([a], [b]) => (a < b ? -1 : 1))),
    rows: { selected, of: snapshot.tables.count.rows },
    seed: work.rng.seed,
    random: rngAlgorithm,
    thrum: work.version,
  }
}
