import { words as exchangeWords } from '@thrum/exchange'
import type { Saying, SayingValue } from '@thrum/model/ground'
import { createSpeaker, english, type Speaker } from '@thrum/report'
import { words as storeWords } from '@thrum/store'
import { createContext, use } from 'react'
import { words } from './words.en.ts'

/** English of everything the desk may have to say. */
export const speaker: Speaker = createSpeaker({ ...storeWords, ...exchangeWords, ...english, ...words }, 'en')

const Speaking = createContext<Speaker>(speaker)
export const SpeakingIn = Speaking.Provider

/** Says a sentence of the desk's own, or one that came with an answer. */
export interface Say {
  (id: string, values?: { readonly [name: string]: SayingValue }): string
  saying(told: Saying): string
  readonly language: string
}

export function useSay(): Say {
  const speak = use(Speaking)
  const say = (id: string, values: { readonly [name: string]: SayingValue } = {}): string => speak({ id: `desk/${id}`, values })
  return Object.assign(say, { saying: (told: Saying) => speak(told), language: speak.language })
}
