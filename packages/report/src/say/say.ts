import type { Saying, SayingValue, Words } from '@thrum/model/ground'
import { allKinds } from '@thrum/survey'
import { IntlMessageFormat } from 'intl-messageformat'
import { commandWord, typedBlank, withCommandWords } from './command-word.ts'

/** Turns sentences as data into words of one language. */
export interface Speaker {
  readonly language: string
  (saying: Saying): string
  /** A name as it is said: that of all kinds together is the program's own, any other stands as it was written. */
  nameOf(written: string): string
}

type Primitive = string | number

/** How a name, cell or list is said: so much of it [characters], of more the beginning, with an ellipsis. */
export interface Manner {
  readonly longest?: number
  /** Of a word without a blank; in a command to be copied it stands whole. */
  readonly longestWord?: number
  /** Whose words commands are made of. */
  readonly shell?: 'posix' | 'windows'
}

/**
 * A speaker of one language.
 *
 * A sentence inside a sentence is said first; a list of sentences is joined as the language joins a list. In a command to be
 * copied, a name stands as one word of it. A missing text is an error, so that no sentence goes unsaid.
 *
 * @throws RangeError from the speaker, naming the id, where no text is there
 */
export function createSpeaker(
  words: Words,
  language = 'en',
  { longest = Number.POSITIVE_INFINITY, longestWord = Number.POSITIVE_INFINITY, shell = 'posix' }: Manner = {},
): Speaker {
  const formats = new Map<string, IntlMessageFormat>()
  const list = new Intl.ListFormat(language, { style: 'long', type: 'conjunction' })
  const formatOf = (id: string): IntlMessageFormat => {
    const known = formats.get(id)
    if (known !== undefined) return known
    const text = words[id]
    if (text === undefined) throw new RangeError(`no text for "${id}" in ${language}`)
    const format = new IntlMessageFormat(withCommandWords(text), language, undefined, { ignoreTag: true })
    formats.set(id, format)
    return format
  }
  const ofAllKinds = words['report/all-kinds'] ?? allKinds
  const nameOf = (written: string): string => (written === allKinds ? ofAllKinds : written)
  const fill = (value: SayingValue): Primitive => {
    if (typeof value === 'string') return beginning(nameOf(value), longest)
    if (typeof value === 'number') return value
    if (Array.isArray(value)) return list.format(value.map((one: Saying) => say(one)))
    return say(value as Saying)
  }
  const say = (saying: Saying): string => {
    const values = Object.entries(saying.values).flatMap(([name, value]): (readonly [string, Primitive])[] => {
      const said = fill(value)
      return [
        [name, typeof value === 'string' ? shortWords(String(said), longestWord) : said],
        [typedBlank(name), typeof value === 'string' ? commandWord(String(said), shell) : said],
      ]
    })
    return String(formatOf(saying.id).format(Object.fromEntries(values)))
  }
  return Object.assign(say, { language, nameOf })
}

/** A text whose words are no longer than so many characters: a longer one is no word, and fills lines without end. */
function shortWords(text: string, most: number): string {
  if (text.length <= most) return text
  return text.replace(/\S+/gu, (word) => (word.length <= most ? word : `${word.slice(0, most - 1).toWellFormed()}…`))
}

/** A text made plain, as far as it is said. */
function beginning(text: string, longest: number): string {
  const plain = plainText(text.slice(0, longest + 1))
  return plain.length <= longest ? plain : `${plain.slice(0, longest - 1).toWellFormed()}…`
}

/**
 * Control codes, halves of characters, and marks that turn the direction of writing, made visible: a name from a file can neither move the
 * cursor, nor colour the terminal, nor write backwards over what stands beside it.
 */
export function plainText(text: string): string {
  return text
    .toWellFormed()
    .replace(/[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\u2028\u2029\ufeff]/gu, (character) =>
      character === '\n' || character === '\t' ? ' ' : `\\u${(character.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`,
    )
}
