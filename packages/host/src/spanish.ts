import { wordsEs as exchangeWordsEs } from '@thrum/exchange'
import type { Words } from '@thrum/model/ground'
import { spanish as answerWordsEs } from '@thrum/report'
import { wordsEs as storeWordsEs } from '@thrum/store'
import { words as hostWordsEs } from './words.es.ts'

/** Spanish of everything that a Node edge may have to say: answers, files, sheets. */
export const spanish: Words = { ...answerWordsEs, ...exchangeWordsEs, ...storeWordsEs, ...hostWordsEs }
