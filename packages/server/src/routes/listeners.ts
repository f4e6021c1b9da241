import { PassThrough, type Readable } from 'node:stream'
import type { StreamEvent } from '../api/stream.ts'

/** A line is said to be alive this often [ms]. */
const betweenPings = 15_000
/** The log is looked at this often while somebody listens [ms]. */
const betweenLooks = 1000
/** A page that does not read what it is told is let go at so many bytes; it will come again. */
const mostUnread = 1024 * 1024

/** Pages that listen to what happens. */
export interface Listeners {
  /** A line for one page; it ends when the page goes. */
  listen(): Readable
  tell(event: StreamEvent): void
  close(): void
}

const lineOf = ({ event, data }: StreamEvent): string => `event: ${event}\ndata: ${JSON.stringify(data)}\n\n`

/**
 * @param look looks for facts that came, while somebody listens; what it finds is told to all
 */
export function createListeners(look: () => Promise<StreamEvent | null>): Listeners {
  const lines = new Set<PassThrough>()
  let latest: StreamEvent | null = null
  let timers: readonly NodeJS.Timeout[] = []
  let isLooking = false

  const tell = (event: StreamEvent): void => {
    if (event.event === 'project') latest = event
    for (const line of lines) {
      if (line.readableLength > mostUnread) line.destroy()
      else line.write(lineOf(event))
    }
  }
  const lookOnce = async (): Promise<void> => {
    if (isLooking) return
    isLooking = true
    try {
      const found = await look()
      if (found !== null) tell(found)
    } catch {
      // Whatever is wrong with the project is told to whoever asks something of it.
    } finally {
      isLooking = false
    }
  }
  const rest = (): void => {
    for (const timer of timers) clearInterval(timer)
    timers = []
  }
  return {
    tell,
    listen: () => {
      const line = new PassThrough()
      lines.add(line)
      line.on('close', () => {
        lines.delete(line)
        if (lines.size === 0) rest()
      })
      if (timers.length === 0) {
        timers = [
          setInterval(() => void lookOnce(), betweenLooks),
          setInterval(() => tell({ event: 'ping', data: {} }), betweenPings),
        ]
      }
      line.write(lineOf({ event: 'ping', data: {} }))
      if (latest !== null) line.write(lineOf(latest))
      void lookOnce()
      return line
    },
    close: () => {
      rest()
      for (const line of lines) line.end()
    },
  }
}
