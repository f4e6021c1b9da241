import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { Words } from '@thrum/model/ground'
import { createSpeaker, type Language } from '@thrum/report'
import { type ReactNode, useEffect, useMemo } from 'react'
import { useLanguage } from './language.ts'
import { englishWords, loadWords, serverWords } from './load-words.ts'
import { SayIn, sayWith } from './say.ts'

interface Spoken {
  readonly language: Language
  readonly words: Words
}

const wordsOf = (language: Language) => ({
  queryKey: ['words', language],
  queryFn: async (): Promise<Spoken> => ({ language, words: await loadWords(language) }),
  staleTime: Number.POSITIVE_INFINITY,
  gcTime: Number.POSITIVE_INFINITY,
})

const inEnglish: Spoken = { language: 'en', words: englishWords }

/**
 * Speaks the language of the page to all that stands in it. Until another language is there the one before is spoken, so that
 * nothing in hand is lost; where its words cannot be had, English.
 */
export function Speaking({ children }: { readonly children: ReactNode }) {
  const wanted = useLanguage()
  const { data, isError } = useQuery({ ...wordsOf(wanted), placeholderData: keepPreviousData })
  const spoken = data ?? (isError ? inEnglish : null)
  const language = spoken?.language ?? 'en'
  const { data: more } = useQuery({
    queryKey: ['server-words', language],
    queryFn: () => serverWords(language),
    staleTime: Number.POSITIVE_INFINITY,
    // English comes as the text of each sentence.
    enabled: language !== 'en',
  })
  const say = useMemo(
    () => (spoken === null ? null : sayWith(createSpeaker({ ...more, ...spoken.words }, spoken.language))),
    [spoken, more],
  )
  useEffect(() => {
    document.documentElement.lang = language
  }, [language])
  return say === null ? null : <SayIn value={say}>{children}</SayIn>
}
