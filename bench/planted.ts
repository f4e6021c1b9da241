import type { Answer } from '@thrum/model'
import { type Planted, strips } from './sheet.ts'

/** A run whose answer is wrong is no run: its time is not written down. */
export class WrongAnswer extends Error {}

export function requireEqual(what: string, found: unknown, expected: unknown): void {
  if (!Object.is(found, expected)) throw new WrongAnswer(`${what} is ${found}; the sheet that was written holds ${expected}`)
}

function requireNear(what: string, found: number, expected: number): void {
  // Sums of whole numbers are exact; logarithms and means in another order of summing leave some units in the last place.
  if (!(Math.abs(found - expected) <= 1e-9 * Math.abs(expected)))
    throw new WrongAnswer(`${what} is ${found}; the sheet that was written gives ${expected}`)
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0)

export const totalOf = ({ cells }: Planted, kind: string): number =>
  sum(cells.filter((cell) => cell.kind === kind).map(({ total }) => total))

/** Mean over fields of the difference of log rates, half an insect added, as a ratio: what a field-level contrast must find. */
function ratioOf({ cells, fields }: Planted, kind: string): number {
  const logRate = (field: string, strip: string): number => {
    const cell = cells.find((own) => own.kind === kind && own.field === field && own.strip === strip)
    return Math.log(((cell?.total ?? 0) + 0.5) / (cell?.minutes ?? 0))
  }
  return Math.exp(sum(fields.map((field) => logRate(field, strips[1]) - logRate(field, strips[0]))) / fields.length)
}

const estimateOf = (answer: Answer, id: string): number => answer.estimates.find((own) => own.id === id)?.value ?? Number.NaN

/** The contrast of strips gives the ratio that the sheet holds, over all its watches. */
export function requireStripRatio(answer: Answer, planted: Planted, kind: string): void {
  requireEqual('counts in the answer', answer.receipt.rows.selected, planted.rows)
  requireNear(`ratio of ${kind}`, estimateOf(answer, `ratio/${kind}/${strips[1]}`), ratioOf(planted, kind))
}

/** Rates per hour over all fields are the totals that the sheet holds. */
export function requireRates(answer: Answer, planted: Planted): void {
  requireEqual('counts in the answer', answer.receipt.rows.selected, planted.rows)
  for (const kind of new Set(planted.cells.map((cell) => cell.kind))) {
    const minutes = sum(planted.cells.filter((cell) => cell.kind === kind).map((cell) => cell.minutes))
    requireNear(`rate of ${kind}`, estimateOf(answer, `rate/${kind}`), (60 * totalOf(planted, kind)) / minutes)
  }
}
