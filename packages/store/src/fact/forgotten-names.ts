import type { BodyOf, redacted } from '@thrum/model'
import { canonicalJson, sha256Hex } from '@thrum/model/ground'

/** A name as a `redacted` fact holds it: never the name, only what recognises it. */
export type ForgottenName = NonNullable<BodyOf<typeof redacted>['name']>

/** Takes forgotten names out of texts. */
export interface Names {
  /** The text with each forgotten name replaced by what stands instead; the same text where there is none. */
  without(text: string): string
  /** True where a text holds what stands instead of a name: it held the name once. */
  heldOne(text: string): boolean
}

/** Windows of words whose hash is remembered; a project of two million rows has fewer different ones. */
const mostRemembered = 1_000_000

/** Words as they are compared: letters and digits, lower case, without accents. What stands between them does not matter. */
const word = /[\p{L}\p{M}\p{N}]+/gu

function folded(text: string): string {
  return text.toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '')
}

function hashOf(key: string, words: string): string {
  return sha256Hex(canonicalJson(['forgotten name', key, words]))
}

/**
 * What recognises a name without holding it. The hash is keyed with the project, so that two projects can't be compared by
 * it; whoever has the project and guesses the name can check the guess, which no way of recognising it would prevent. The
 * same name gives the same, in every copy and however its letters are cased or accented.
 *
 * @param key id of the project
 * @param what what stood there, for the word that stands instead: `observer` gives `observer withheld 3f9c2a`
 * @returns null where the name has no letter and no digit, or more than 20 words
 */
export function forgottenName(name: string, key: string, what: string): ForgottenName | null {
  const words = (name.match(word) ?? []).map(folded)
  if (words.length === 0 || words.length > 20) return null
  const hash = hashOf(key, words.join(' '))
  return { key, hash, words: words.length, instead: `${what} withheld ${hash.slice(0, 6)}` }
}

/** Names that are forgotten, as something that takes them out of texts; null where there are none. */
export function createNames(forgotten: readonly ForgottenName[]): Names | null {
  if (forgotten.length === 0) return null
  const byHash = new Map(forgotten.map(({ hash, instead }) => [hash, instead]))
  const keys = [...new Set(forgotten.map(({ key }) => key))]
  // Longer names first: of "Orla" and "Orla Invented" the whole one goes.
  const lengths = [...new Set(forgotten.map(({ words }) => words))].sort((a, b) => b - a)
  const remembered = new Map<string, string | null>()
  const insteadOf = (words: string): string | null => {
    const known = remembered.get(words)
    if (known !== undefined) return known
    const found = keys.flatMap((key) => byHash.get(hashOf(key, words)) ?? [])[0] ?? null
    if (remembered.size >= mostRemembered) remembered.clear()
    remembered.set(words, found)
    return found
  }
  return {
    without: (text) => {
      const words = [...text.matchAll(word)].map((match) => ({
        from: match.index,
        to: match.index + match[0].length,
        word: folded(match[0]),
      }))
      let out = ''
      let copied = 0
      for (let k = 0; k < words.length; ) {
        const from = words[k]?.from ?? 0
        const length = lengths.find((n) => k + n <= words.length && insteadOf(joined(words.slice(k, k + n))) !== null)
        if (length === undefined) k += 1
        else {
          const window = words.slice(k, k + length)
          out += text.slice(copied, from) + (insteadOf(joined(window)) ?? '')
          copied = window.at(-1)?.to ?? copied
          k += length
        }
      }
      return copied === 0 ? text : out + text.slice(copied)
    },
    heldOne: (text) => forgotten.some(({ instead }) => text.includes(instead)),
  }
}

function joined(words: readonly { readonly word: string }[]): string {
  return words.map((one) => one.word).join(' ')
}
