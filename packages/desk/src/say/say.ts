import type { Saying, SayingValue } from '@thrum/model/ground'
import { plainText, type Speaker } from '@thrum/report'
import { createContext, use } from 'react'

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
  /** For what is drawn. */
  readonly speaker: Speaker
  readonly language: string
}

export function sayWith(speaker: Speaker): Say {
  const say = (id: string, values: { readonly [name: string]: SayingValue } = {}): string => speaker({ id: `desk/${id}`, values })
  const saying = (told: Told): string => {
    try {
      return speaker(told as Saying)
    } catch (error) {
      if (told.text === undefined) throw error
      return plainText(told.text)
    }
  }
  const cell = (told: string | Told): string => (typeof told === 'string' ? plainText(told) : saying(told))
  return Object.assign(say, { saying, cell, speaker, language: speaker.language })
}

const Here = createContext<Say | null>(null)
export const SayIn = Here.Provider

export function useSay(): Say {
  const say = use(Here)
  if (say === null) throw new Error('nothing can be said outside of <Speaking>')
  return say
}
