import { type Reading, readAbsence, readTooLong } from './reading.ts'

const atClock = (written: string, hour: number, minute: number, second: number, because: string | null): Reading => {
  if (hour > 23 || minute > 59 || second > 59) return { kind: 'waiting', written, because: 'exchange/cell/no-such-time' }
  const value = hour * 60 + minute + second / 60
  return because === null ? { kind: 'number', written, value } : { kind: 'number', written, value, because }
}

const dateBefore = /^\d{4}-\d\d-\d\d[t ]/u
const zoneBehind = /\s*(?:z|[+-]\d\d:?\d\d)$/u

/**
 * Reads a time of day as minutes since local midnight: `10:15`, `10.15`, `9h30`, `14:05:00`, `2:15 pm`, `0930`. A date before
 * it and a zone behind it are left out, and said.
 */
export function readClockTime(written: string): Reading {
  const absence = readAbsence(written) ?? readTooLong(written)
  if (absence !== null) return absence
  const whole = written.trim().toLowerCase()
  const undated = whole.replace(dateBefore, '')
  const local = undated.replace(zoneBehind, '')
  const because = local !== undated ? 'exchange/cell/zone-left-out' : undated !== whole ? 'exchange/cell/date-left-out' : null
  const text = local.replace(/\s*(?:uhr|kl\.?|h|hrs?)$/u, '').replace(/^kl\.?\s*/u, '')
  const half = /^(\d{1,2})(?:[:.h](\d{2}))?(?::(\d{2}))?\s*([ap])\.?m\.?$/u.exec(text)
  if (half !== null) {
    const hour = Number(half[1])
    if (hour < 1 || hour > 12) return { kind: 'waiting', written, because: 'exchange/cell/no-such-time' }
    const after = half[4] === 'p' ? 12 : 0
    return atClock(written, (hour % 12) + after, Number(half[2] ?? 0), Number(half[3] ?? 0), because)
  }
  const parts = /^(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(\.\d+)?)?$/u.exec(text)
  if (parts !== null) {
    const told = because ?? (parts[4] === undefined ? null : 'exchange/cell/read-as')
    return atClock(written, Number(parts[1]), Number(parts[2]), Number(parts[3] ?? 0), told)
  }
  const four = /^(\d{2})(\d{2})$/u.exec(text)
  if (four !== null) return atClock(written, Number(four[1]), Number(four[2]), 0, because)
  if (/^\d{1,2}[.,]\d$/u.test(text)) return { kind: 'waiting', written, because: 'exchange/cell/hour-with-tenths' }
  return { kind: 'waiting', written, because: 'exchange/cell/not-a-time' }
}

/** Reads how far the observer's clock was ahead of UTC, in minutes: `+02:00`, `UTC+1`, `-3`, `Z`. */
export function readOffset(written: string): Reading {
  const absence = readAbsence(written) ?? readTooLong(written)
  if (absence !== null) return absence
  const text = written.trim().toLowerCase()
  if (text === 'z' || text === 'utc' || text === 'gmt') return { kind: 'number', written, value: 0 }
  const parts = /^(?:utc|gmt)?\s*([+\-−])?(\d{1,2})(?::?([0-5]\d))?$/u.exec(text)
  const minutes = Number(parts?.[2]) * 60 + Number(parts?.[3] ?? 0)
  // The clocks of the world are between 12 hours behind and 14 hours ahead.
  if (parts === null || minutes > 14 * 60) return { kind: 'waiting', written, because: 'exchange/cell/not-a-time' }
  return { kind: 'number', written, value: parts[1] === '-' || parts[1] === '−' ? -minutes : minutes }
}
