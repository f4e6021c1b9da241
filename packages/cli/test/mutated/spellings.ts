import type { MappedColumn, Mapping } from '@thrum/exchange'
import { isoDate } from '@thrum/model'

/*
 * How a value that stands in a project is written in a column as it was declared, worked out anew from the value: nothing
 * here reads a cell. A text that is none of the spellings of its value is a reading, and must have been shown.
 */

const two = (value: number): string => String(value).padStart(2, '0')

/** A number with as many decimals as the written one has, with either decimal mark. */
function numberSpellings(value: number, written: string): readonly string[] {
  const decimals = /[.,](\d+)$/u.exec(written)?.[1]?.length ?? 0
  const fixed = decimals <= 20 ? value.toFixed(decimals) : String(value)
  return [String(value), fixed, fixed.replace('.', ','), String(value).replace('.', ',')]
}

/** From the unit of the table back to that of the column. Exact definitions; forces of wind have no way back. */
const backTo: { readonly [role: string]: { readonly [unit: string]: (value: number) => number } } = {
  area: { ha: (v) => v / 10_000, ft2: (v) => v / 0.09290304, acre: (v) => v / 4046.8564224 },
  temperature: { degF: (v) => (v * 9) / 5 + 32 },
  cloud: { '%': (v) => v / 0.08, '/10': (v) => v / 0.8 },
  sun: { '/10': (v) => v / 10 },
  hiveDistance: { km: (v) => v / 1000, ft: (v) => v / 0.3048, yd: (v) => v / 0.9144 },
  edgeDistance: { km: (v) => v / 1000, ft: (v) => v / 0.3048, yd: (v) => v / 0.9144 },
  minutes: { h: (v) => v / 60, s: (v) => v * 60 },
  pauses: { h: (v) => v / 60, s: (v) => v * 60 },
}

/** A number may carry the sign of the unit that its column is declared in. */
const unitSigns: { readonly [unit: string]: RegExp } = {
  '%': / ?%$/u,
  m: / ?m$/u,
  m2: / ?m[2²]$/u,
  Cel: / ?° ?c$/iu,
  degF: / ?° ?f$/iu,
}
const ownUnit: { readonly [role: string]: string } = {
  area: 'm2',
  temperature: 'Cel',
  sun: '%',
  hiveDistance: 'm',
  edgeDistance: 'm',
}

function measured(value: number, written: string, { as, unit }: MappedColumn): boolean {
  const declared = unit ?? ownUnit[as] ?? ''
  const bare = written.replace(unitSigns[declared] ?? /$^/u, '')
  const back = backTo[as]?.[declared]
  const inSheet = back === undefined ? value : back(value)
  if (numberSpellings(inSheet, bare).includes(bare)) return true
  // What was multiplied comes back to within its rounding, not to the last digit.
  const decimals = /[.,](\d+)$/u.exec(bare)?.[1]?.length ?? 0
  return back !== undefined && decimals < 12 && numberSpellings(Number(inSheet.toFixed(decimals)), bare).includes(bare)
}

function clock(minutes: number, written: string): boolean {
  const seconds = Math.round(minutes * 60)
  const [hour, minute, second] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60]
  const halves = [`${((hour + 11) % 12) + 1}`, two(((hour + 11) % 12) + 1)].flatMap((own) =>
    [':', '.'].flatMap((sign) => [`${own}${sign}${two(minute)}`, ...(minute === 0 ? [own] : [])]),
  )
  const half = hour < 12 ? 'am' : 'pm'
  const spelled = [
    ...[String(hour), two(hour)].flatMap((own) =>
      [':', '.', 'h'].flatMap((sign) => [
        ...(second === 0 ? [`${own}${sign}${two(minute)}`] : []),
        `${own}${sign}${two(minute)}:${two(second)}`,
        `${own}${sign}${two(minute)}.${two(second)}`,
      ]),
    ),
    ...(second === 0 ? [`${two(hour)}${two(minute)}`, ...halves.flatMap((own) => [`${own} ${half}`, `${own}${half}`])] : []),
  ]
  const bare = written
    .toLowerCase()
    .replace(/^kl\.?\s*/u, '')
    .replace(/\s*(?:uhr|h|hrs?)$/u, '')
  return spelled.includes(bare)
}

const months = [
  ...['jan ene', 'feb fev', 'mar maer mär mrz', 'apr abr avr', 'may mai maj', 'jun', 'jul juil', 'aug ago aou aoû', 'sep set'],
  ...['oct okt', 'nov', 'dec dez dic déc'],
].map((starts) => starts.split(' '))

function day(value: number, dated: string, { file }: Mapping): boolean {
  // Spreadsheets write midnight behind every date.
  const written = dated.replace(/[t ]00:00(?::00)?$/iu, '')
  const iso = isoDate(value)
  const [year = 0, month = 0, date = 0] = iso.split('-').map(Number)
  const digits = (written.match(/\d+/gu) ?? []).map(Number)
  const isYear = (found: number | undefined): boolean =>
    found === year || (found !== undefined && found < 100 && found === year % 100 && year >= 1950 && year < 2050)
  const rest = written.replace(/[\d\s.,/’'-]/gu, '').toLowerCase()
  const named = rest.replace(/^(?:[a-zåäöé]{2,4}(?=\p{L}{3}))?/u, '')
  if (/\d:\d\d|t\d/iu.test(written)) return false
  const isWeekday =
    digits.length === 3 && /^[a-zåäöé]{2,4}$/u.test(rest) && !months.flat().some((start) => rest.startsWith(start))
  if (rest !== '' && !isWeekday) {
    const starts = months[month - 1]?.some((start) => rest.startsWith(start) || named.startsWith(start)) ?? false
    return starts && digits.includes(date) && (digits.length === 1 ? file?.year === year : digits.some(isYear))
  }
  if (written === iso.replaceAll('-', '')) return true
  const [a, b, c] = digits
  if (digits.length === 2) return file?.year === year && ((a === date && b === month) || (a === month && b === date))
  if (digits.length !== 3) return false
  if (a === year) return b === month && c === date
  const order = file?.dateOrder
  return (
    isYear(c) && ((a === date && b === month && order !== 'month first') || (a === month && b === date && order !== 'day first'))
  )
}

function offset(minutes: number, written: string): boolean {
  const size = Math.abs(minutes)
  const [hour, minute] = [Math.floor(size / 60), size % 60]
  const bare = written.replace(/^(?:utc|gmt)(?=.)/iu, '')
  if (minutes === 0 && /^(?:z|utc|gmt)$/iu.test(bare)) return true
  return (minutes < 0 ? ['-', '−'] : ['+', '']).some((sign) =>
    [String(hour), two(hour)].some((own) =>
      [`${own}:${two(minute)}`, `${own}${two(minute)}`, ...(minute === 0 ? [own] : [])].some((end) => sign + end === bare),
    ),
  )
}

const withoutWayBack = new Set(['m/s', 'km/h', 'mph', 'kn'])

/** True where a text is how a number is written in a column as the mapping declares it. */
export function isSpelledAs(value: number, written: string, column: MappedColumn, mapping: Mapping): boolean {
  const text = written.trim()
  switch (column.as) {
    case 'tally':
    case 'number':
      return String(value) === text
    case 'date':
      return day(value, text, mapping)
    case 'start':
    case 'end':
      return clock(value, text)
    case 'offset':
      return offset(value, text)
    default:
      return withoutWayBack.has(column.unit ?? '') || measured(value, text, column)
  }
}

/** A name as it is matched and shown: signs that are not seen left out, one blank between words, letters composed. */
export function plainSpelling(written: string): string {
  return written
    .replace(/[\p{Cf}]/gu, '')
    .replace(/\p{Cc}+/gu, ' ')
    .replace(/\s+/gu, ' ')
    .trim()
    .normalize('NFC')
}
