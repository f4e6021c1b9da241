import { english, spanish } from '@thrum/host'
import type { Words } from '@thrum/model/ground'
import { createSpeaker, type Language, type Speaker } from '@thrum/report'
import { words } from './words.en.ts'
import { words as wordsEs } from './words.es.ts'

/** Everything that this server can say, by language. */
export const wordsIn: { readonly [language in Language]: Words } = {
  en: { ...english, ...words },
  es: { ...spanish, ...wordsEs },
}

export const speakers: { readonly [language in Language]: Speaker } = {
  en: createSpeaker(wordsIn.en, 'en'),
  es: createSpeaker(wordsIn.es, 'es'),
}

/** The machine form is in one language, so that the same answer is the same bytes wherever it is asked for. */
export const say = speakers.en
