import { InputError } from '@thrum/model/ground'

/** What a model hangs on: a column by itself, or several together. */
export interface Term {
  readonly of: readonly string[]
  /** False where it is in only because a term that was asked for contains it. */
  readonly isAsked: boolean
}

const keyOf = (names: readonly string[]): string => JSON.stringify([...names].sort())

/** All that a term contains, the term itself the last: a bit for each name that is in. */
const subsetsOf = (names: readonly string[]): readonly (readonly string[])[] =>
  Array.from({ length: 2 ** names.length - 1 }, (_, bits) => names.filter((_, k) => ((bits + 1) >> k) & 1))

/**
 * The terms asked for with all that they contain (of three columns together each pair too), columns by themselves first.
 *
 * @throws InputError on an empty term, a column twice in one, a term twice
 * @source Nelder J.A. (1977) J. R. Stat. Soc. A 140, 48-77 (no interaction without what it contains). From memory.
 * @check strip and stage together: strip, stage, strip and stage; the first two were not asked for
 */
export function withContained(asked: readonly (readonly string[])[]): readonly Term[] {
  const own = new Set<string>()
  for (const names of asked) {
    const isBad = names.length === 0 || new Set(names).size !== names.length || own.has(keyOf(names))
    if (isBad)
      throw new InputError(
        'ground/input/out-of-range',
        `term [${names.join(', ')}] is empty, names a column twice or is there twice`,
      )
    own.add(keyOf(names))
  }
  const terms = new Map<string, Term>()
  for (const names of [...asked, ...asked.flatMap(subsetsOf)]) {
    const key = keyOf(names)
    if (!terms.has(key)) terms.set(key, { of: names, isAsked: own.has(key) })
  }
  return [...terms.values()].sort((a, b) => a.of.length - b.of.length)
}
