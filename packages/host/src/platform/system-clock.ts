import type { Clock } from '@thrum/model/ground'

/** The machine's own clock. */
export const systemClock: Clock = {
  now: () => Date.now(),
  monotonic: () => performance.now(),
  zone: () => Intl.DateTimeFormat().resolvedOptions().timeZone,
}
