import { dayNumber, isoDate } from '@thrum/model'
import { foldedName } from './plain-name.ts'
import { longestValue, type Reading, readAbsence, readTooLong } from './reading.ts'

export type DateOrder = 'day first' | 'month first'

/** A date as far as its text says it, before the order of day and month is settled. */
export type DateForm =
  | {
      readonly kind: 'whole'
      readonly year: number | null
      readonly month: number
      readonly day: number
      readonly shortYear: boolean
    }
  | {
      readonly kind: 'pair'
      readonly first: number
      readonly second: number
      readonly year: number | null
      readonly sign: string
      readonly shortYear: boolean
    }
  | { readonly kind: 'none' }

/** First three letters (four where three do not tell) of month names: English, German, Swedish, Danish, Spanish, French. */
const monthOf: readonly (readonly string[])[] = [
  ['jan', 'ene'],
  ['feb', 'fev'],
  ['mar', 'maer', 'mrz'],
  ['apr', 'abr', 'avr'],
  ['may', 'mai', 'maj'],
  ['jun', 'juin'],
  ['jul', 'juil'],
  ['aug', 'ago', 'aou'],
  ['sep', 'set'],
  ['oct', 'okt'],
  ['nov'],
  ['dec', 'dez', 'dic'],
]

function monthNamed(word: string): number | null {
  const name = foldedName(word)
  if (name.length < 3) return null
  // Longer beginnings first: `juin` is June, `juil` July.
  const candidates = monthOf.flatMap((starts, k) => starts.map((start) => ({ start, month: k + 1 })))
  const found = candidates.filter(({ start }) => name.startsWith(start)).sort((a, b) => b.start.length - a.start.length)[0]
  return found?.month ?? null
}

/** Two digits stand for 1950 to 2049. Common practice, no source. */
const fullYear = (digits: string): number => {
  const year = Number(digits)
  return digits.length > 2 ? year : year < 50 ? 2000 + year : 1900 + year
}

/** Tells what a text says of a date. */
export function dateForm(written: string): DateForm {
  if (written.length > longestValue) return { kind: 'none' }
  const text = written
    .trim()
    .replace(/^[a-zåäöé]{2,4}\.?,?\s+(?=\d{1,4}[./-]\d|\d{1,2}\.?\s*\p{L}{3})/iu, '')
    .replace(/[t ]\d{1,2}[:.]\d\d(?::\d\d(?:\.\d+)?)?(?:z|[+-]\d\d:?\d\d)?$/iu, '')
  const yearFirst = /^(\d{4})\s*[-/.,年]\s*(\d{1,2})\s*[-/.,]\s*(\d{1,2})$/u.exec(text) ?? /^(\d{4})(\d{2})(\d{2})$/u.exec(text)
  if (yearFirst !== null) {
    return { kind: 'whole', year: Number(yearFirst[1]), month: Number(yearFirst[2]), day: Number(yearFirst[3]), shortYear: false }
  }
  const dayMonth =
    /^(\d{1,2})(?:\.|st|nd|rd|th|er|:e)?[\s./-]*(?:de\s+)?(\p{L}{3,12})\.?(?:[\s.,/-]*(?:de\s+)?['’]?(\d{4}|\d{2}))?$/iu.exec(
      text,
    )
  const monthDay = /^(\p{L}{3,12})\.?[\s./-]*(\d{1,2})(?:st|nd|rd|th)?(?:[\s,./-]+['’]?(\d{4}|\d{2}))?$/iu.exec(text)
  const named = dayMonth === null ? null : { word: dayMonth[2], day: dayMonth[1], year: dayMonth[3] }
  const other = monthDay === null ? null : { word: monthDay[1], day: monthDay[2], year: monthDay[3] }
  for (const found of [named, other]) {
    const month = found === null ? null : monthNamed(found.word ?? '')
    if (found === null || month === null) continue
    const year = found.year === undefined ? null : fullYear(found.year)
    return { kind: 'whole', year, month, day: Number(found.day), shortYear: found.year?.length === 2 }
  }
  // 4/6-24 and 4/6 24: a stroke between day and month and another sign before the year is day first wherever it is written.
  const nordic = /^(\d{1,2})\/(\d{1,2})[-\s]+(\d{4}|\d{2})$/u.exec(text)
  if (nordic !== null) {
    return {
      kind: 'whole',
      year: fullYear(nordic[3] ?? ''),
      month: Number(nordic[2]),
      day: Number(nordic[1]),
      shortYear: nordic[3]?.length === 2,
    }
  }
  const pair = /^(\d{1,2})\s*([./-])\s*(\d{1,2})(?:\s*[./-]\s*(\d{4}|\d{2}))?\.?$/u.exec(text)
  if (pair === null) return { kind: 'none' }
  return {
    kind: 'pair',
    first: Number(pair[1]),
    second: Number(pair[3]),
    year: pair[4] === undefined ? null : fullYear(pair[4]),
    sign: pair[2] ?? '',
    shortYear: pair[4]?.length === 2,
  }
}

/** Day number of a date that exists, else null. */
export function dayOf(year: number, month: number, day: number): number | null {
  if (month < 1 || month > 12 || day < 1 || day > 31 || year < 1800 || year > 2199) return null
  const iso = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
  const number = dayNumber(iso)
  return isoDate(number) === iso ? number : null
}

/** The order that a pair can only have; null where both are possible. */
export function provenOrder(form: DateForm): DateOrder | null {
  if (form.kind !== 'pair' || form.first === form.second) return null
  if (form.first > 12 && form.second <= 12) return 'day first'
  return form.second > 12 && form.first <= 12 ? 'month first' : null
}

/** Day numbers of both orders of a pair. */
export function bothDays(
  form: DateForm & { readonly kind: 'pair' },
  year: number,
): { readonly dayFirst: number | null; readonly monthFirst: number | null } {
  return { dayFirst: dayOf(year, form.second, form.first), monthFirst: dayOf(year, form.first, form.second) }
}

/** What the file has settled about its dates. */
export interface DateHabit {
  /** By the sign between day and month, since two crews may write two ways into one file. */
  readonly orderOf: (sign: string) => DateOrder | null
  readonly year: number | null
  /** Proposes a day for a pair that stays open, e.g. the one nearer to its neighbours. */
  readonly propose?: (dayFirst: number, monthFirst: number) => number
}

/** A time of day behind a date, midnight without a zone apart: spreadsheets write that behind every date. */
const timeBehind = /[t ](?!00[:.]00(?:[:.]00(?:\.0+)?)?$)\d{1,2}[:.]\d\d(?::\d\d(?:\.\d+)?)?(?:z|[+-]\d\d:?\d\d)?$/iu

/** Reads a date as a day number (days since 1 January 1970). A time behind it is left out, and said. */
export function readDate(written: string, habit: DateHabit): Reading {
  const reading = readDay(written, habit)
  if (reading.kind !== 'number' || reading.because !== undefined || !timeBehind.test(written.trim())) return reading
  return { ...reading, because: 'exchange/cell/time-left-out' }
}

function readDay(written: string, habit: DateHabit): Reading {
  const absence = readAbsence(written) ?? readTooLong(written)
  if (absence !== null) return absence
  const form = dateForm(written)
  const waiting = (because: string, proposed?: string): Reading =>
    proposed === undefined ? { kind: 'waiting', written, because } : { kind: 'waiting', written, because, proposed }
  if (form.kind === 'none') {
    // A spreadsheet's day count since 30 December 1899, for 1954 to 2064.
    const serial = /^\d{5}$/u.test(written.trim()) ? Number(written) : 0
    if (serial >= 20_000 && serial <= 60_000) return waiting('exchange/cell/serial-date', isoDate(serial - 25_569))
    return waiting('exchange/cell/not-a-date')
  }
  const year = form.year ?? habit.year
  if (year === null) return waiting('exchange/cell/no-year')
  if (form.kind === 'whole') {
    const day = dayOf(year, form.month, form.day)
    return day === null ? waiting('exchange/cell/no-such-date') : { kind: 'number', written, value: day }
  }
  const { dayFirst, monthFirst } = bothDays(form, year)
  if (dayFirst === null && monthFirst === null) return waiting('exchange/cell/no-such-date')
  const order = habit.orderOf(form.sign)
  const proven = provenOrder(form)
  const only = dayFirst === null ? monthFirst : monthFirst === null ? dayFirst : dayFirst === monthFirst ? dayFirst : null
  if (only !== null) {
    return proven !== null && order !== null && proven !== order
      ? { kind: 'number', written, value: only, because: 'exchange/cell/other-date-order' }
      : { kind: 'number', written, value: only }
  }
  if (order !== null) return { kind: 'number', written, value: (order === 'day first' ? dayFirst : monthFirst) as number }
  const likely = habit.propose?.(dayFirst as number, monthFirst as number) ?? (dayFirst as number)
  return waiting('exchange/cell/date-order', isoDate(likely))
}
