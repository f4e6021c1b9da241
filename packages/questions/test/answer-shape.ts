import { type Answer, verdicts } from '@thrum/model'
import { expect } from 'vitest'

const unitsCounted = ['fields', 'pairs of fields', 'watches']
const roles = ['headline', 'beside']
const keys = (value: object): string => Object.keys(value).sort().join(' ')

function isFiniteOrNull(value: unknown): boolean {
  return value === null || (typeof value === 'number' && Number.isFinite(value))
}

function checkSaying(value: unknown): void {
  expect(value).toMatchObject({ id: expect.any(String), values: expect.any(Object) })
  expect(keys(value as object)).toBe('id values')
}

/** That every number in it is one that JSON can hold, so that what is read back is what was written. */
function checkPlain(value: unknown, where: string): void {
  if (typeof value === 'number') expect(Number.isFinite(value), `${where} is ${value}`).toBe(true)
  else if (Array.isArray(value)) value.forEach((item, k) => void checkPlain(item, `${where}[${k}]`))
  else if (typeof value === 'object' && value !== null) {
    expect(Object.getPrototypeOf(value), `${where} is plain`).toBe(Object.prototype)
    for (const [key, item] of Object.entries(value)) {
      expect(item, `${where}.${key}`).not.toBeUndefined()
      checkPlain(item, `${where}.${key}`)
    }
  } else expect(['string', 'boolean', 'object'], where).toContain(typeof value)
}

/** Holds an answer against JSON version 1, by hand: what stands where, which words it may be, what numbers mean. */
export function checkAnswer(answer: Answer): void {
  const { analyses = [], ...always } = answer
  expect(keys(always)).toBe(
    'asked cautions claims estimates evidence figures headline method next question receipt verdict version',
  )
  expect(answer.version).toBe(1)
  expect(['counted', 'modelled']).toContain(answer.evidence)
  if (answer.verdict !== null) expect(verdicts).toContain(answer.verdict)
  // Nothing that the design blocks is compared in another way.
  if (answer.verdict === 'design-blocks') expect(answer.analyses).toBeUndefined()
  for (const own of [answer.asked, answer.headline, ...answer.claims.canSay, ...answer.claims.cannotSay, ...answer.next])
    checkSaying(own)
  expect(answer.claims.canSay.length, 'something may always be said').toBeGreaterThan(0)

  const ids = answer.estimates.map(({ id }) => id)
  expect(new Set(ids).size, `ids of estimates are their own: ${ids.join(', ')}`).toBe(ids.length)
  for (const own of answer.estimates) {
    expect(keys(own)).toBe('counts id interval label method n role scale unit value verdict')
    for (const part of [own.label, own.unit, own.method]) checkSaying(part)
    expect(Number.isInteger(own.n) && own.n > 0, `${own.id} rests on ${own.n}`).toBe(true)
    expect(unitsCounted).toContain(own.counts)
    expect(roles).toContain(own.role)
    const { low, high, level } = own.interval
    for (const number of [own.value, low, high]) expect(isFiniteOrNull(number), `${own.id}: ${number}`).toBe(true)
    expect(level > 0 && level < 1).toBe(true)
    // Half an ulp or two: limits are computed on another scale than the value.
    const slack = 1e-9 * Math.max(1, Math.abs(own.value ?? 0))
    if (own.value !== null && low !== null) expect(low, `${own.id} low`).toBeLessThanOrEqual(own.value + slack)
    if (own.value !== null && high !== null) expect(high, `${own.id} high`).toBeGreaterThanOrEqual(own.value - slack)
    if (own.verdict !== null) expect(verdicts).toContain(own.verdict)
  }

  for (const own of analyses) {
    expect(keys(own)).toBe('analyses comparison fields hangs told')
    for (const part of [own.comparison, own.told]) checkSaying(part)
    expect(own.analyses[0]?.id, 'the headline first').toBe('as-asked')
    for (const { label, value, interval, verdict, told, ...rest } of own.analyses) {
      expect(keys(rest)).toBe('id')
      checkSaying(label)
      if (told !== null) checkSaying(told)
      expect(interval === null, 'an interval, or words in its place').toBe(told !== null)
      if (interval === null) expect(value).toBeNull()
      else expect(verdicts).toContain(verdict)
    }
  }

  for (const own of answer.cautions) {
    expect(keys(own)).toBe('code cure evidence evidenceRows severity text')
    expect(['note', 'warn', 'block']).toContain(own.severity)
    checkSaying(own.text)
    if (own.cure !== null) checkSaying(own.cure)
    expect(own.evidence.length).toBe(Math.min(own.evidenceRows, 40))
    for (const address of own.evidence) expect(address).toMatch(/^.+#\d+$/u)
  }
  if (answer.cautions.length > 0) {
    const gravity = answer.cautions.map(({ severity }) => ['block', 'warn', 'note'].indexOf(severity))
    expect(gravity, 'the gravest first').toEqual([...gravity].sort())
  }

  expect(keys(answer.method)).toBe('checks choices equation name references')
  for (const own of [answer.method.name, ...answer.method.choices, ...answer.method.checks]) checkSaying(own)
  for (const { trust } of answer.method.references)
    expect(['published', 'computed', 'from memory', 'common practice, no source']).toContain(trust)
  for (const figure of answer.figures) expect(['intervals', 'rates-by-level', 'strips']).toContain(figure.kind)
  expect(keys(answer.receipt)).toBe('digest options random rows seed thrum')
  expect(answer.receipt.rows.selected).toBeLessThanOrEqual(answer.receipt.rows.of)

  checkPlain(answer, 'answer')
  expect(JSON.parse(JSON.stringify(answer))).toEqual(answer)
}

/** Keys and types of a value, not its numbers and words: lists by what they hold. */
export function shapeOf(value: unknown): unknown {
  if (value === null) return 'null'
  if (Array.isArray(value)) {
    const kinds = [...new Set(value.map((item) => JSON.stringify(shapeOf(item))))].sort()
    return kinds.map((kind) => JSON.parse(kind))
  }
  if (typeof value !== 'object') return typeof value
  if (Object.keys(value).join() === 'id,values') return 'saying'
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, shapeOf(item)]))
}
