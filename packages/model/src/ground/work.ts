/** Done of total, in the person's own unit (rows, surveys, seasons). `total` is absent where it can't be known. */
export interface Progress {
  readonly done: number
  readonly total?: number
  readonly unit: string
}

/** What long work is handed: a way to be stopped, a way to tell how far it is, a way to let others run. */
export interface LongWork {
  readonly signal: AbortSignal
  readonly onProgress?: (progress: Progress) => void
  breathe(): Promise<void>
}

/** The two members of the platform's AbortSignal that pure code uses. */
export interface AbortSignal {
  readonly aborted: boolean
  readonly reason?: unknown
}

/** Work that nobody watches and nobody stops. */
export const unwatched: LongWork = { signal: { aborted: false }, breathe: () => Promise.resolve() }
