import { words as exchangeWords } from '@thrum/exchange'
import type { Words } from '@thrum/model/ground'
import { english as answerWords } from '@thrum/report'
import { words as storeWords } from '@thrum/store'
import { words as hostWords } from './words.en.ts'

/** English of everything that a Node edge may have to say: answers, files, sheets. */
export const english: Words = { ...answerWords, ...exchangeWords, ...storeWords, ...hostWords }
