import type { KindClass } from './kind-class.ts'
import { type KindWords, kindWords } from './kind-words.ts'

/** A proposal for a person to agree to, never a decision. */
export type KindProposal =
  /** `because` are the words of the label that led there; `mayInclude` what such a label often holds as well. */
  | {
      readonly kind: 'proposed'
      readonly kindClass: KindClass
      readonly because: string
      readonly mayInclude: readonly KindClass[]
    }
  /** The label names several classes ("bees and hover flies"). */
  | { readonly kind: 'ambiguous'; readonly candidates: readonly KindClass[] }
  /** Nothing in the label is known, or it only says "bee". */
  | { readonly kind: 'not-recognised' }

interface Hit {
  readonly words: KindWords
  readonly from: number
  readonly to: number
}

/** Words of a label without accents and case: "A_mellifera" is "a", "mellifera"; "wildBees" is "wild", "bees". */
function wordsOf(label: string): readonly string[] {
  return label
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/ø/g, 'o')
    .replace(/æ/g, 'ae')
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '')
}

const fits = (word: string, pattern: string): boolean =>
  pattern.endsWith('*') ? word.startsWith(pattern.slice(0, -1)) : word === pattern

/** Where the words of a list stand among the words that nobody has read yet; longest phrases first. */
function find(list: readonly KindWords[], words: readonly string[], taken: readonly boolean[]): readonly Hit[] {
  const patterns = list
    .flatMap((entry) => entry.phrases.map((phrase) => ({ entry, parts: phrase.split(' ') })))
    .sort((a, b) => b.parts.length - a.parts.length)
  const used = [...taken]
  const hits: Hit[] = []
  for (const { entry, parts } of patterns) {
    for (let from = 0; from + parts.length <= words.length; from++) {
      if (!parts.every((part, i) => !used[from + i] && fits(words[from + i] ?? '', part))) continue
      for (let i = 0; i < parts.length; i++) used[from + i] = true
      hits.push({ words: entry, from, to: from + parts.length })
    }
  }
  return hits
}

/**
 * Proposes the class of a visitor group from the name that a project gave it.
 *
 * Reads English, Latin and common words of Swedish, Danish, German, Spanish and French. A bare "bees" is not proposed:
 * honey, bumble and solitary bees differ tenfold in range.
 *
 * @param label a group's name, a taxon or a column's header, as written
 * @returns what it may be and which words say so, for a person to confirm
 * @source Common practice, no source: `kind-words.ts`.
 */
export function classifyKind(label: string): KindProposal {
  const words = wordsOf(label)
  // "Bee mimics" and "bee-like flies" name what they are not.
  if (words.some((word) => word.startsWith('mimic') || word === 'like')) return { kind: 'not-recognised' }
  const first = find(
    kindWords.first,
    words,
    words.map(() => false),
  )
  const taken = words.map((_, i) => first.some((hit) => i >= hit.from && i < hit.to))
  const named = [...first, ...find(kindWords.main, words, taken)]
  const hits = named.length > 0 ? named : find(kindWords.last, words, taken)
  const leading = hits[0]
  if (leading === undefined) return { kind: 'not-recognised' }
  const candidates = [...new Set(hits.map((hit) => hit.words.kindClass))]
  if (candidates.length > 1) return { kind: 'ambiguous', candidates }
  const because = [...hits].sort((a, b) => a.from - b.from).map((hit) => words.slice(hit.from, hit.to).join(' '))
  const mayInclude = [...new Set(hits.flatMap((hit) => hit.words.mayInclude ?? []))]
  return { kind: 'proposed', kindClass: leading.words.kindClass, because: because.join(', '), mayInclude }
}
