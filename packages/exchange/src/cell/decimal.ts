import { manyWords, type Reading, readAbsence, readTooLong } from './reading.ts'

/** How numbers are written in a column: its decimal mark where that is known, and whether both marks were found. */
export interface DecimalHabit {
  readonly decimal: '.' | ',' | null
  /** True where some cells can only be read with a point and others only with a comma. */
  readonly mixed: boolean
}

export const noHabit: DecimalHabit = { decimal: null, mixed: false }

const plain = /^[+-]?\d+$/u
const scientific = /^[+-]?\d+(?:[.,]\d+)?e[+-]?\d+$/iu
/** Blanks and apostrophes between groups of three can be nothing but thousands marks. */
const groupSigns = /(?<=\d)[\s\u00a0\u202f'’](?=\d{3}(?:\D|$))/gu

interface Form {
  /** The decimal mark this text can only have. */
  readonly proves: '.' | ',' | null
  /** One mark before three digits: a thousands mark or a decimal mark. */
  readonly open: '.' | ',' | null
}

function formOf(text: string): Form | null {
  if (plain.test(text)) return { proves: null, open: null }
  if (scientific.test(text)) return { proves: text.includes(',') ? ',' : text.includes('.') ? '.' : null, open: null }
  const marks = text.match(/[.,]/gu) ?? []
  if (!/^[+-]?\d*(?:[.,]\d+)+$/u.test(text)) return null
  const last = marks.at(-1) as '.' | ','
  const kinds = new Set(marks)
  const groups = text.split(/[.,]/u)
  const grouped = groups.slice(1).every((group) => group.length === 3) && /^[+-]?\d{1,3}$/u.test(groups[0] ?? '')
  if (kinds.size === 2) {
    // 1.080,5: only the last mark may be the decimal one, and it stands once.
    const once = marks.filter((sign) => sign === last).length === 1
    const thousands = groups.slice(1, -1).every((group) => group.length === 3)
    return once && thousands ? { proves: last, open: null } : null
  }
  if (marks.length > 1) return grouped ? { proves: last === '.' ? ',' : '.', open: null } : null
  if (grouped && !/^[+-]?0/u.test(text)) return { proves: null, open: last }
  return { proves: last, open: null }
}

const bare = (written: string): string => written.trim().replace(/−/gu, '-').replace(groupSigns, '')

/** Finds the decimal mark that the cells of a column prove. */
export function decimalHabit(cells: Iterable<string>): DecimalHabit {
  let point = false
  let comma = false
  for (const cell of cells) {
    const proves = formOf(bare(cell))?.proves
    if (proves === '.') point = true
    if (proves === ',') comma = true
  }
  return { decimal: point === comma ? null : point ? '.' : ',', mixed: point && comma }
}

/**
 * The number a text stands for under a habit: digits, a decimal mark, thousands marks. `shown` where thousands marks
 * were taken away or a mark could have been read otherwise, so that the person sees it; null where it is no number;
 * `open` where the habit does not settle it.
 */
export function parseDecimal(
  written: string,
  habit: DecimalHabit,
):
  | { readonly kind: 'value'; readonly value: number; readonly shown: boolean }
  | { readonly kind: 'open'; readonly likely: number }
  | null {
  const text = bare(written)
  const form = formOf(text)
  if (form === null) return null
  const grouped = text !== written.trim().replace(/−/gu, '-')
  const asNumber = (decimal: '.' | ',' | null): number =>
    Number(decimal === ',' ? text.replaceAll('.', '').replace(',', '.') : text.replaceAll(',', ''))
  if (form.open === null) {
    const value = asNumber(form.proves ?? '.')
    // More digits than a number can have: no measure, but a key that stuck.
    return Number.isFinite(value) ? { kind: 'value', value, shown: grouped || /[.,].*[.,]/u.test(text) } : null
  }
  if (habit.decimal === null) return { kind: 'open', likely: asNumber(form.open === '.' ? ',' : '.') }
  return { kind: 'value', value: asNumber(habit.decimal), shown: habit.decimal !== form.open }
}

/** True where a text is its number and no more: the same digits, with either decimal mark. */
export function isPlainly(text: string, value: number): boolean {
  const decimals = /[.,](\d+)$/u.exec(text)?.[1]?.length ?? 0
  const bare = text.trim().replace(',', '.')
  return bare === String(value) || (decimals <= 100 && bare === value.toFixed(decimals))
}

const unitBehind = /\s*(%|°\s*[cf]?|m2|m²|m)$/iu

/** Units that a sign behind a number can stand for. */
function unitsOfSign(sign: string): readonly string[] {
  const plain = sign.replace(/\s/gu, '').toLowerCase()
  if (plain === '°') return ['Cel', 'degF']
  return [plain === '°c' ? 'Cel' : plain === '°f' ? 'degF' : plain.replace('²', '2')]
}

/**
 * Reads a measured number: `18,5`, `1.080,5`, `ca. 400`, `~350`, `200-250`, `>30`.
 *
 * @param unit of the column, where it is known: a cell that names another one waits
 */
export function readMeasure(written: string, habit: DecimalHabit, unit: string | null = null): Reading {
  const absence = readAbsence(written) ?? readTooLong(written)
  if (absence !== null) return absence
  const text = written.trim()
  if (manyWords.test(text)) return { kind: 'waiting', written, because: 'exchange/cell/many-word' }
  const vague =
    /^(?:ca?\.?|circa|about|approx\.?|around|ungefar|ungefär|cirka|etwa|rund|omkring|aprox\.?|env\.?|environ|~|≈|±)\s*(?=[\d])/iu
  const about = vague.test(text)
  const bodyWithUnit = text.replace(vague, '')
  const sign = unitBehind.exec(bodyWithUnit)?.[1]
  const body = bodyWithUnit.replace(unitBehind, '')
  const parsed = parseDecimal(body, habit)
  if (parsed !== null && sign !== undefined && unit !== null && !unitsOfSign(sign).includes(unit))
    return { kind: 'waiting', written, because: 'exchange/cell/other-unit' }
  if (parsed === null) return readVagueMeasure(written, body, habit)
  if (parsed.kind === 'open')
    return { kind: 'waiting', written, because: 'exchange/cell/point-or-thousands', proposed: String(parsed.likely) }
  if (about) return { kind: 'approximate', written, value: parsed.value, because: 'exchange/cell/about' }
  if (parsed.shown) return { kind: 'number', written, value: parsed.value, because: 'exchange/cell/thousands' }
  if (sign === '°') return { kind: 'number', written, value: parsed.value, because: 'exchange/cell/bare-degree' }
  return isPlainly(body, parsed.value)
    ? { kind: 'number', written, value: parsed.value }
    : { kind: 'number', written, value: parsed.value, because: 'exchange/cell/read-as' }
}

function readVagueMeasure(written: string, text: string, habit: DecimalHabit): Reading {
  const range = /^([\d.,]+)\s*(?:-|–|to|bis|till|til|a|à)\s*([\d.,]+)$/iu.exec(text)
  const bound = /^(>=|≥|>|<=|≤|<|over|under|more than|less than|at least|at most)?\s*([\d.,]+)(\+)?$/iu.exec(text)
  const number = (part: string | undefined): number | null => {
    const parsed = parseDecimal(part ?? '', habit)
    return parsed?.kind === 'value' ? parsed.value : null
  }
  const low = number(range?.[1])
  const high = number(range?.[2])
  if (low !== null && high !== null && low <= high) {
    return { kind: 'waiting', written, because: 'exchange/cell/range', proposed: String((low + high) / 2) }
  }
  const limit = number(bound?.[2])
  if (limit !== null && bound !== null) {
    const below = /^(?:<|≤|under|less|at most)/iu.test(bound[1] ?? '')
    return below
      ? { kind: 'at-most', written, value: limit, because: 'exchange/cell/at-most' }
      : { kind: 'at-least', written, value: limit, because: 'exchange/cell/at-least' }
  }
  return { kind: 'waiting', written, because: 'exchange/cell/not-a-number' }
}
