import type { Saying, SayingValue } from '@thrum/model/ground'
import { createSpeaker, english, plainText, type Speaker } from '@thrum/report'
import { createContext, use } from 'react'
import { words } from './words.en.ts'

/** English of the desk and of answers. What the server says besides, such as why a cell waits, comes with its text. */
export const speaker: Speaker = createSpeaker({ ...english, ...words }, 'en')

const Speaking = createContext<Speaker>(speaker)
export const SpeakingIn = Speaking.Provider

/** A sentence as it comes from the server: with its text beside it, for those whose words are not here. */
export interface Told {
  readonly id: string
  readonly values: unknown
  readonly text?: string
}

/** Says a sentence of the desk's own, or one that came with an answer. */
export interface Say {
  (id: string, values?: { readonly [name: string]: SayingValue }): string
  /** A sentence that came with an answer; of one whose words are not here the server's own text. */
  saying(told: Told): string
  /** A cell as a person reads it: what was written, or a sentence in its place. */
  cell(told: string | Told): string
  readonly language: string
}

export function useSay(): Say {
  const speak = use(Speaking)
  const say = (id: string, values: { readonly [name: string]: SayingValue } = {}): string => speak({ id: `desk/${id}`, values })
  const saying = (told: Told): string => {
    try {
      return speak(told as Saying)
    } catch (error) {
      if (told.text === undefined) throw error
      return plainText(told.text)
    }
  }
  const cell = (told: string | Told): string => (typeof told === 'string' ? plainText(told) : saying(told))
  return Object.assign(say, { saying, cell, language: speak.language })
}
