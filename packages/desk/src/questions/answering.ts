import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { Answer } from '@thrum/model'
import { useEffect, useRef } from 'react'
import { newJob } from '../door/jobs.ts'
import { request, send } from '../door/request.ts'
import type { Asking } from '../door/shapes.ts'

async function ask({ question, options }: Asking, signal: AbortSignal): Promise<Answer> {
  const job = newJob()
  const stop = (): void => void request(`jobs/${job}`, { method: 'DELETE' }).catch(() => undefined)
  signal.addEventListener('abort', stop)
  try {
    return await send<Answer>('ask', { question, options, job }, { signal })
  } finally {
    signal.removeEventListener('abort', stop)
  }
}

/** True where the question holds all that it needs; else there is nothing to ask yet. */
export function isComplete({ question, options }: Asking): boolean {
  if (question === 'who-visits') return true
  const hasContrast = options.between !== undefined || options.since !== undefined
  return hasContrast && (question === 'is-design-sound' || typeof options.worth === 'number')
}

export const answerKey = (asking: Asking | null, digest: string | undefined) =>
  ['answer', digest, asking?.question, asking?.options] as const

/** The answer to what is asked, for the data as they are now; while another is worked out the last one stays. */
export function useAnswer(asking: Asking | null, digest: string | undefined) {
  const isAsked = asking !== null && digest !== undefined && isComplete(asking)
  return useQuery({
    queryKey: answerKey(asking, digest),
    queryFn: ({ signal }) => ask(asking as Asking, signal),
    enabled: isAsked,
    staleTime: Number.POSITIVE_INFINITY,
    placeholderData: keepPreviousData,
  })
}

/** The answer that stood here before this one. */
export function useEarlier(answer: Answer | undefined): Answer | null {
  const earlier = useRef<{ readonly now: Answer | undefined; readonly before: Answer | null }>({ now: undefined, before: null })
  const { now, before } = earlier.current
  const isNew = answer !== undefined && answer !== now
  useEffect(() => {
    if (isNew) earlier.current = { now: answer, before: now ?? null }
  }, [answer, isNew, now])
  return isNew ? (now ?? null) : before
}
