import type { Progress } from '@thrum/model/ground'
import type { Listeners } from './listeners.ts'

/** Pieces of work in hand that a page named: their progress is told under the name, and by it they are stopped. */
export interface Jobs {
  /** Runs a piece of work. Work without a name is watched by nobody, and stops when whoever asked for it goes away. */
  run<T>(
    name: string | undefined,
    left: AbortSignal | null,
    work: (watched: { readonly signal: AbortSignal; readonly onProgress: (progress: Progress) => void }) => Promise<T>,
  ): Promise<T>
  /** Stops all work of that name. @returns false where there is none */
  cancel(name: string): boolean
}

export function createJobs(listeners: Pick<Listeners, 'tell'>): Jobs {
  const running = new Map<string, Set<AbortController>>()
  return {
    run: async (name, left, work) => {
      const stop = new AbortController()
      const own = name === undefined ? undefined : (running.get(name) ?? new Set())
      own?.add(stop)
      if (name !== undefined && own !== undefined) running.set(name, own)
      const signal = left === null ? stop.signal : AbortSignal.any([stop.signal, left])
      const onProgress = (progress: Progress): void => {
        if (name !== undefined) listeners.tell({ event: 'progress', data: { job: name, ...progress } })
      }
      try {
        return await work({ signal, onProgress })
      } finally {
        own?.delete(stop)
        if (name !== undefined && own?.size === 0) running.delete(name)
      }
    },
    cancel: (name) => {
      const own = running.get(name)
      for (const stop of own ?? []) stop.abort()
      return own !== undefined
    },
  }
}
