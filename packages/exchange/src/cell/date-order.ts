import { bothDays, type DateForm, type DateHabit, type DateOrder, dateForm, dayOf, provenOrder } from './date.ts'

/** What the dates of a column prove about the order of day and month. */
export interface DateEvidence {
  /** By the sign between day and month. */
  readonly bySign: ReadonlyMap<string, DateOrder | 'both'>
  /** What the whole column proves: an order, `both` where rows contradict each other, null where none proves one. */
  readonly all: DateOrder | 'both' | null
  readonly withoutYear: number
  readonly shortYears: number
  /** Dates that could be read both ways. */
  readonly open: number
  /** Day numbers of the dates that can be read one way only. */
  readonly sure: readonly number[]
}

const join = (a: DateOrder | 'both' | null, b: DateOrder | 'both'): DateOrder | 'both' => (a === null || a === b ? b : 'both')

/** Weighs the different texts of a date column. */
export function dateEvidence(texts: Iterable<string>, year: number | null): DateEvidence {
  const bySign = new Map<string, DateOrder | 'both'>()
  let all: DateOrder | 'both' | null = null
  let withoutYear = 0
  let shortYears = 0
  let open = 0
  const sure: number[] = []
  for (const text of texts) {
    const form: DateForm = dateForm(text)
    if (form.kind === 'none') continue
    const of = form.year ?? year
    if (form.year === null) withoutYear++
    if (form.shortYear) shortYears++
    if (form.kind === 'whole') {
      const day = of === null ? null : dayOf(of, form.month, form.day)
      if (day !== null) sure.push(day)
      continue
    }
    const order = provenOrder(form)
    if (order !== null) {
      bySign.set(form.sign, join(bySign.get(form.sign) ?? null, order))
      all = join(all, order)
    } else if (form.first !== form.second) open++
    if (of === null) continue
    const { dayFirst, monthFirst } = bothDays(form, of)
    if (order === 'day first' && dayFirst !== null) sure.push(dayFirst)
    if (order === 'month first' && monthFirst !== null) sure.push(monthFirst)
  }
  return { bySign, all, withoutYear, shortYears, open, sure }
}

/**
 * The habit that readings follow: an order a person gave; else the order that rows with the same sign prove, as long as
 * no other rows prove the opposite; else none, with the nearer date proposed.
 */
export function dateHabit(evidence: DateEvidence, asked: DateOrder | null, year: number | null): DateHabit {
  const { bySign, all, sure } = evidence
  // Dates with points are written day first; only a proof to the contrary would change that.
  const orderOf = (sign: string): DateOrder | null => {
    if (asked !== null) return asked
    const own = bySign.get(sign) ?? null
    if (own === 'both') return null
    if (all !== 'both') return own ?? all ?? (sign === '.' ? 'day first' : null)
    if (sign === '.') return own ?? 'day first'
    const others = [...bySign].some(([other, order]) => other !== sign && order !== own)
    return own !== null && !others ? own : null
  }
  const distance = (day: number): number =>
    sure.reduce((least, known) => Math.min(least, Math.abs(known - day)), Number.POSITIVE_INFINITY)
  return {
    orderOf,
    year,
    propose: (dayFirst, monthFirst) => (distance(monthFirst) < distance(dayFirst) ? monthFirst : dayFirst),
  }
}
