import { nothingWritten, type Reading } from '../cell/reading.ts'

/**
 * The reading of a kind that is the sum of several cells. The sum is as sure as its least sure part: a part that waits
 * makes it wait, parts counted and parts not looked for do not add up.
 */
export function sumReadings(parts: readonly Reading[]): Reading {
  const only = parts[0]
  if (only === undefined) return nothingWritten
  if (parts.length === 1) return only
  const waiting = parts.find((part) => part.kind === 'waiting')
  if (waiting !== undefined) return waiting
  const missing = parts.filter((part) => part.kind === 'not-looked-for')
  if (missing.length === parts.length) return only
  const written = parts.map((part) => part.written.trim()).join(' + ')
  const value = parts.reduce((sum, part) => sum + ('value' in part ? part.value : 0), 0)
  if (parts.some((part) => part.kind === 'lost')) return { kind: 'lost', written }
  if (missing.length > 0) return { kind: 'waiting', written, because: 'exchange/tally/part-missing', proposed: String(value) }
  const low = parts.some((part) => part.kind === 'at-least')
  const high = parts.some((part) => part.kind === 'at-most')
  if (low && high) return { kind: 'waiting', written, because: 'exchange/tally/bounds-mixed' }
  if (low) return { kind: 'at-least', written, value, because: 'exchange/cell/at-least' }
  if (high) return { kind: 'at-most', written, value, because: 'exchange/cell/at-most' }
  const vague = parts.some((part) => part.kind === 'approximate')
  return { kind: vague ? 'approximate' : 'number', written, value, because: 'exchange/tally/sum' }
}
