import type { Words } from '@thrum/model/ground'
import { english, type Language } from '@thrum/report'
import type { WordsTold } from '@thrum/server/api'
import { get } from '../door/request.ts'
import { words as deskWords } from './words.en.ts'

/** Comes with the page. */
export const englishWords: Words = { ...english, ...deskWords }

const own: { readonly [language in Language]: () => Promise<Words> } = {
  en: async () => englishWords,
  es: async () => (await import('./spanish.ts')).words,
}

/** Words of the desk and of answers: they come with the page, whether or not the server can be reached. */
export const loadWords = (language: Language): Promise<Words> => own[language]()

/** Words of what the server says besides, such as why a cell waits. Without them its own English text is shown. */
export const serverWords = (language: Language): Promise<WordsTold> => get<WordsTold>(`words/${language}`)
