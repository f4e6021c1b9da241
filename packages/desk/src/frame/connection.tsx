import { useQueryClient } from '@tanstack/react-query'
import { createContext, type ReactNode, use, useEffect, useState } from 'react'
import { isOurJob } from '../door/jobs.ts'
import { listen } from '../door/stream.ts'

export interface Progress {
  readonly job: string
  readonly done: number
  readonly total: number
  readonly unit: string
}

/** Whether the server can be reached, and how far the work it does for this page has come. */
export interface Connection {
  readonly isGone: boolean
  /** The server is there, and does not know the key of this page. */
  readonly isRefused: boolean
  /** True from when it came back until the person has read so. */
  readonly cameBack: boolean
  readonly progress: Progress | null
  dismiss(): void
}

const Here = createContext<Connection>({
  isGone: false,
  isRefused: false,
  cameBack: false,
  progress: null,
  dismiss: () => undefined,
})
export const useConnection = (): Connection => use(Here)

export function Connected({ children }: { readonly children: ReactNode }) {
  const queries = useQueryClient()
  const [isGone, setGone] = useState(false)
  const [isRefused, setRefused] = useState(false)
  const [cameBack, setBack] = useState(false)
  const [progress, setProgress] = useState<Progress | null>(null)
  useEffect(() => {
    const stop = new AbortController()
    void listen((told) => {
      if (told.event === 'progress' && isOurJob(told.job)) setProgress(told)
      if (told.event === 'gone') setGone(true)
      if (told.event === 'refused') {
        setGone(false)
        setRefused(true)
      }
      if (told.event === 'back') {
        setGone(false)
        setRefused(false)
        setBack(true)
      }
      // Facts came, from here or from elsewhere: what is shown of the project is asked for again.
      if (told.event === 'project' || told.event === 'back') void queries.invalidateQueries()
    }, stop.signal)
    return () => stop.abort()
  }, [queries])
  return <Here value={{ isGone, isRefused, cameBack, progress, dismiss: () => setBack(false) }}>{children}</Here>
}
