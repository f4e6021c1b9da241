import type { Estimate } from '@thrum/model'

/** How a number reads: by its digits, or as a share in per cent. */
export type NumberScale = Estimate['scale']

/** The sign between whole and parts, by language. */
const decimalSigns = new Map<string, string>()

function decimalSign(language: string): string {
  const known = decimalSigns.get(language)
  if (known !== undefined) return known
  const sign = new Intl.NumberFormat(language).formatToParts(0.5).find(({ type }) => type === 'decimal')?.value ?? '.'
  decimalSigns.set(language, sign)
  return sign
}

/** Digits written with a point, as a language writes them. Thousands are not set apart: these numbers have few digits. */
const inLanguage = (digits: string, language: string): string => digits.replace('.', decimalSign(language))

const largest = 1e6
const smallest = 1e-4

/** Too large or too small to be read without a power of ten. */
const isFar = (size: number): boolean => size > 0 && (size >= largest || size < smallest)

/** Place behind the point of the last of so many leading digits; 0 where that stands before the point. */
function placeOf(size: number, digits: number): number {
  return size === 0 ? 0 : Math.max(0, digits - 1 - Math.floor(Math.log10(Number(size.toPrecision(digits)))))
}

/** Leading digits of a number and of a share in per cent, as in the sentences of an answer. */
const digits = { ratio: 3, plain: 3, share: 2 } as const

const inUnits = (value: number, scale: NumberScale): number => (scale === 'share' ? 100 * value : value)
const sign = (scale: NumberScale): string => (scale === 'share' ? '\u00a0%' : '')

/** Digits after the point of a value that stands alone. */
function placesOf(value: number, scale: NumberScale): number {
  return placeOf(Math.abs(inUnits(value, scale)), digits[scale])
}

function written(value: number, scale: NumberScale): string {
  const own = inUnits(value, scale)
  const size = Math.abs(own)
  if (isFar(size)) return own.toExponential(scale === 'share' ? 0 : 2) + sign(scale)
  return (Number(own.toFixed(placesOf(value, scale))) === 0 ? 0 : own).toFixed(placesOf(value, scale)) + sign(scale)
}

/** A number with three significant digits, zeros at the end left out; powers of ten only from a million on and below 0.0001. */
export function threeDigits(value: number, language: string): string {
  const size = Math.abs(value)
  if (isFar(size)) return inLanguage(value.toExponential(2), language)
  return size >= 100
    ? Math.round(value).toString()
    : inLanguage((Number.parseFloat(value.toPrecision(3)) + 0).toString(), language)
}

/** A number of a table: six digits are more than any count carries. */
export function sixDigits(value: number, language: string): string {
  return inLanguage(Number.parseFloat(value.toPrecision(6)).toString(), language)
}

/** A round number, as it stands at a tick or an edge: no digit more than it takes. */
export function roundWords(value: number, scale: NumberScale, language: string): string {
  const own = Number.parseFloat(inUnits(value, scale).toPrecision(3)) + 0
  return inLanguage(isFar(Math.abs(own)) ? own.toExponential() : own.toString(), language) + sign(scale)
}

/** An estimate: three significant digits, as in the sentences above it; a share in per cent. */
export function valueWords(value: number, scale: NumberScale, language: string): string {
  return inLanguage(written(value, scale), language)
}

/** The limits of an interval, each as a value that stands alone. An absent limit stays absent. */
export function limitWords(
  low: number | null,
  high: number | null,
  scale: NumberScale,
  language: string,
): { readonly low: string | null; readonly high: string | null } {
  const words = (limit: number | null): string | null => (limit === null ? null : valueWords(limit, scale, language))
  return { low: words(low), high: words(high) }
}

/** An interval; an absent limit is an open end. */
export function intervalText(low: number | null, high: number | null, scale: NumberScale, language: string): string {
  const words = limitWords(low, high, scale, language)
  return `${words.low ?? '…'} – ${words.high ?? '…'}`
}
