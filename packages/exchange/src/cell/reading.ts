import { type Mark, mark } from '@thrum/model'

/**
 * What a cell was taken to mean, beside what was written in it. `because` is the id of the sentence that says why,
 * where the meaning is more than the digits that stand there.
 */
export type Reading =
  | { readonly kind: 'number'; readonly written: string; readonly value: number; readonly because?: string }
  | { readonly kind: 'approximate'; readonly written: string; readonly value: number; readonly because: string }
  | { readonly kind: 'at-least'; readonly written: string; readonly value: number; readonly because: string }
  | { readonly kind: 'at-most'; readonly written: string; readonly value: number; readonly because: string }
  | { readonly kind: 'not-looked-for'; readonly written: string }
  | { readonly kind: 'lost'; readonly written: string }
  | { readonly kind: 'waiting'; readonly written: string; readonly because: string; readonly proposed?: string }

export const markOfReading: { readonly [K in Reading['kind']]: Mark } = {
  number: mark.asWritten,
  approximate: mark.approximate,
  'at-least': mark.atLeast,
  'at-most': mark.atMost,
  'not-looked-for': mark.notLookedFor,
  lost: mark.lost,
  waiting: mark.waiting,
}

/** The number of a reading; NaN where it has none. */
export function valueOfReading(reading: Reading): number {
  return 'value' in reading ? reading.value : Number.NaN
}

/** True where a person has to decide before the cell can enter an estimate. */
export function needsAnswer(reading: Reading): boolean {
  return reading.kind === 'waiting' || reading.kind === 'at-least' || reading.kind === 'at-most'
}

export const nothingWritten: Reading = { kind: 'not-looked-for', written: '' }

/** Signs for "nobody looked", as they stand in sheets of many programs and hands; common practice, no source. */
const notLookedFor = /^(?:na|n\.a\.?|n\/a|#n\/a|nan|null|none recorded|not recorded|nr|n\.r\.|k\.a\.|nd|n\.d\.|ej|\.)$/iu
/** Signs for "was counted, and the number is gone". */
const lost = /^(?:\?+|lost|unreadable|illegible|unlesbar|olaslig|oläslig|ulaeselig|ulæselig|ilegible|illisible)$/iu

/** Readings that every kind of number cell shares; null where the cell must be looked at by its own kind. */
export function readAbsence(written: string): Reading | null {
  const text = written.trim()
  if (text === '' || notLookedFor.test(text)) return { kind: 'not-looked-for', written }
  if (lost.test(text)) return { kind: 'lost', written }
  if (text.startsWith('#')) return { kind: 'waiting', written, because: 'exchange/cell/spreadsheet-error' }
  if (text.startsWith('=')) return { kind: 'waiting', written, because: 'exchange/cell/formula' }
  if (/^[-–—]+$/u.test(text)) return { kind: 'waiting', written, because: 'exchange/cell/dash' }
  return null
}

/** Longest text that can still be a number with its remark, a date or a time [characters]. Common practice, no source. */
export const longestValue = 250

/** A text that is too long to be a value of any kind; null where it must be looked at. */
export function readTooLong(written: string): Reading | null {
  return written.trim().length > longestValue ? { kind: 'waiting', written, because: 'exchange/cell/too-long' } : null
}

/** Words that say that there were some, and not how many. */
export const manyWords =
  /^(?:lots|many|few|several|some|loads|viele|einige|wenige|många|manga|några|nagra|mange|nogle|muchos|muchas|pocos|varios|beaucoup|plusieurs|quelques)$/iu
