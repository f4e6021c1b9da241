import { type Reading, readAbsence } from './reading.ts'

const atClock = (written: string, hour: number, minute: number, second = 0): Reading =>
  hour > 23 || minute > 59 || second > 59
    ? { kind: 'waiting', written, because: 'exchange/cell/no-such-time' }
    : { kind: 'number', written, value: hour * 60 + minute + second / 60 }

/** Reads a time of day as minutes since local midnight: `10:15`, `10.15`, `9h30`, `14:05:00`, `2:15 pm`, `0930`. */
export function readClockTime(written: string): Reading {
  const absence = readAbsence(written)
  if (absence !== null) return absence
  const text = written
    .trim()
    .toLowerCase()
    .replace(/^\d{4}-\d\d-\d\d[t ]/u, '')
    .replace(/\s*(?:uhr|kl\.?|h|hrs?|z|[+-]\d\d:?\d\d)$/u, '')
    .replace(/^kl\.?\s*/u, '')
  const half = /^(\d{1,2})(?:[:.h](\d{2}))?(?::\d{2})?\s*([ap])\.?m\.?$/u.exec(text)
  if (half !== null) {
    const hour = Number(half[1])
    if (hour < 1 || hour > 12) return { kind: 'waiting', written, because: 'exchange/cell/no-such-time' }
    return atClock(written, (hour % 12) + (half[3] === 'p' ? 12 : 0), Number(half[2] ?? 0))
  }
  const whole = /^(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:\.\d+)?)?$/u.exec(text)
  if (whole !== null) return atClock(written, Number(whole[1]), Number(whole[2]), Number(whole[3] ?? 0))
  const four = /^(\d{2})(\d{2})$/u.exec(text)
  if (four !== null) return atClock(written, Number(four[1]), Number(four[2]))
  if (/^\d{1,2}[.,]\d$/u.test(text)) return { kind: 'waiting', written, because: 'exchange/cell/hour-with-tenths' }
  return { kind: 'waiting', written, because: 'exchange/cell/not-a-time' }
}

/** Reads how far the observer's clock was ahead of UTC, in minutes: `+02:00`, `UTC+1`, `-3`, `Z`. */
export function readOffset(written: string): Reading {
  const absence = readAbsence(written)
  if (absence !== null) return absence
  const text = written.trim().toLowerCase()
  if (text === 'z' || text === 'utc' || text === 'gmt') return { kind: 'number', written, value: 0 }
  const parts = /^(?:utc|gmt)?\s*([+\-−])?(\d{1,2})(?::?([0-5]\d))?$/u.exec(text)
  const minutes = Number(parts?.[2]) * 60 + Number(parts?.[3] ?? 0)
  // The clocks of the world are between 12 hours behind and 14 hours ahead.
  if (parts === null || minutes > 14 * 60) return { kind: 'waiting', written, because: 'exchange/cell/not-a-time' }
  return { kind: 'number', written, value: parts[1] === '-' || parts[1] === '−' ? -minutes : minutes }
}
