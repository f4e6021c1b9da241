import type { TextColumn } from '@thrum/model'
import { readClockTime } from '../cell/clock-time.ts'
import { readCount } from '../cell/count.ts'
import { dateForm } from '../cell/date.ts'
import { decimalHabit, readMeasure } from '../cell/decimal.ts'
import { readMinutes } from '../cell/minutes.ts'
import { readAbsence } from '../cell/reading.ts'

/** What the cells of a column look like, by the first few thousand of their different texts. */
export interface ColumnLook {
  readonly filled: number
  readonly distinct: number
  /** Shares of the cells that are no signs of absence: whole numbers, numbers, lengths of time, dates, times of day. */
  readonly counts: number
  readonly numbers: number
  readonly durations: number
  readonly dates: number
  readonly clocks: number
  readonly least: number
  readonly largest: number
  readonly whole: boolean
  /** True where every number is 0 or 1. */
  readonly zeroOne: boolean
  /** True where the cells say yes and no, and nothing else. */
  readonly yesOrNo: boolean
  readonly dashes: boolean
  readonly zeros: boolean
  readonly longest: number
}

const mostLookedAt = 2_000

/** Yes and no in the languages of the header words. */
const yesWords = /^(?:y|yes|j|ja|si|sí|oui)$/iu
const noWords = /^(?:n|no|nein|nej|non)$/iu
const isYesOrNo = (text: string): boolean => yesWords.test(text.trim()) || noWords.test(text.trim())

export function lookAtColumn({ codes, dictionary }: TextColumn): ColumnLook {
  const texts = dictionary.slice(0, mostLookedAt)
  const cells = new Float64Array(dictionary.length)
  let filled = 0
  for (const code of codes) {
    if (code < 0) continue
    filled++
    cells[code] = (cells[code] as number) + 1
  }
  const habit = decimalHabit(texts)
  const words = texts.flatMap((text, code) => (readAbsence(text) === null ? [{ text, cells: cells[code] as number }] : []))
  const all = words.reduce((sum, word) => sum + word.cells, 0)
  const share = (is: (text: string) => boolean): number =>
    all === 0 ? 0 : words.reduce((sum, word) => sum + (is(word.text) ? word.cells : 0), 0) / all
  const numberOf = (text: string): number | null => {
    const reading = readMeasure(text, habit)
    return 'value' in reading ? reading.value : null
  }
  const isCount = (text: string): boolean => {
    const reading = readCount(text, habit)
    return reading.kind !== 'waiting' || !/not-a-number|not-whole|too-long/u.test(reading.because)
  }
  const values = words.flatMap(({ text }) => numberOf(text) ?? [])
  return {
    filled,
    distinct: dictionary.length,
    counts: share(isCount),
    numbers: share((text) => numberOf(text) !== null),
    durations: share((text) => {
      const reading = readMinutes(text, habit)
      return reading.kind !== 'waiting' || reading.proposed !== undefined
    }),
    dates: share((text) => dateForm(text).kind !== 'none' && !/^\d+(?:\.\d+)?$/u.test(text.trim())),
    clocks: share((text) => /[:.h]/iu.test(text) && readClockTime(text).kind === 'number'),
    least: values.reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY),
    largest: values.reduce((high, value) => Math.max(high, value), Number.NEGATIVE_INFINITY),
    whole: values.every(Number.isInteger),
    zeroOne: values.length > 0 && values.length === words.length && values.every((value) => value === 0 || value === 1),
    yesOrNo: [yesWords, noWords].every((own) => texts.some((text) => own.test(text.trim()))) && texts.every(isYesOrNo),
    dashes: dictionary.some((text) => /^\s*[-–—]+\s*$/u.test(text)),
    zeros: dictionary.some((text) => /^\s*0\s*$/u.test(text)),
    longest: texts.reduce((longest, text) => Math.max(longest, text.length), 0),
  }
}
