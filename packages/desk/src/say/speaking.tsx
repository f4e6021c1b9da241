import { useQuery } from '@tanstack/react-query'
import { createSpeaker, type Language } from '@thrum/report'
import { type ReactNode, useEffect, useMemo } from 'react'
import { useLanguage } from './language.ts'
import { loadWords, serverWords } from './load-words.ts'
import { SayIn, sayWith } from './say.ts'

const wordsOf = (language: Language) => ({
  queryKey: ['words', language],
  queryFn: () => loadWords(language),
  staleTime: Number.POSITIVE_INFINITY,
  gcTime: Number.POSITIVE_INFINITY,
})

/** Speaks the language of the page to all that stands in it; nothing is shown before there are words. */
export function Speaking({ children }: { readonly children: ReactNode }) {
  const language = useLanguage()
  const { data: words } = useQuery(wordsOf(language))
  const { data: more } = useQuery({
    queryKey: ['server-words', language],
    queryFn: () => serverWords(language),
    staleTime: Number.POSITIVE_INFINITY,
    // English comes as the text of each sentence.
    enabled: language !== 'en',
  })
  const say = useMemo(
    () => (words === undefined ? null : sayWith(createSpeaker({ ...more, ...words }, language))),
    [words, more, language],
  )
  useEffect(() => {
    document.documentElement.lang = language
  }, [language])
  return say === null ? null : <SayIn value={say}>{children}</SayIn>
}
