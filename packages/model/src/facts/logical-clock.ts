import type { Clock } from '../ground/index.ts'

/**
 * A hybrid logical clock: wall time that never runs backwards within a device and never behind what it has seen.
 * Kulkarni et al. 2014, "Logical physical clocks", OPODIS. Text form sorts as time, counter, device.
 */
export interface LogicalClock {
  /** The next moment, later than every moment given out or seen. */
  next(): string
  /** Takes note of a moment written elsewhere. */
  see(at: string): void
}

export function createLogicalClock(clock: Clock, device: string): LogicalClock {
  let milliseconds = 0
  let counter = 0
  const write = (): string => `${new Date(milliseconds).toISOString()}/${counter.toString(16).padStart(4, '0')}/${device}`
  return {
    next: () => {
      const now = Math.floor(clock.now())
      if (now > milliseconds) {
        milliseconds = now
        counter = 0
      } else if (counter < 0xffff) counter += 1
      else {
        milliseconds += 1
        counter = 0
      }
      return write()
    },
    see: (at) => {
      const [time, count] = at.split('/')
      const seen = Date.parse(time ?? '')
      if (Number.isNaN(seen)) return
      const seenCounter = Number.parseInt(count ?? '0', 16)
      if (seen > milliseconds || (seen === milliseconds && seenCounter > counter)) {
        milliseconds = seen
        counter = seenCounter
      }
    },
  }
}
