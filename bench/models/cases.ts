import { createRng } from '@thrum/model/ground'
import { type CountModel, drawGamma, drawNormal, drawPoisson, matrixOfColumns } from '@thrum/stats'

/** Fields visited on dates; half of the fields treated. With crossed dates every date has an effect of its own. */
export interface ModelCase {
  readonly name: string
  readonly family: 'poisson' | 'nb2'
  readonly fields: number
  readonly visits: number
  readonly isCrossed: boolean
  /** Milliseconds that must not be gone beyond, and those aimed at; null where none is set. */
  readonly warm: { readonly gate: number; readonly aim: number }
  readonly cold: { readonly gate: number; readonly aim: number } | null
  /** Times as fast as the fastest usual way in R: at least, where that was set, and aimed at. */
  readonly ratio: { readonly gate: number | null; readonly aim: number }
  /** Seconds of a thousand refits to drawn counts; null where none is set. */
  readonly bootstrap: { readonly gate: number; readonly aim: number } | null
  /** Seconds of a thousand surveys, each drawn and fitted with the treatment and without; null where none is set. */
  readonly power: { readonly gate: number; readonly aim: number } | null
}

const single = { fields: 20, visits: 10, isCrossed: false, warm: { gate: 1, aim: 0.25 }, cold: { gate: 40, aim: 12 } } as const
const large = { fields: 400, visits: 25, isCrossed: false, warm: { gate: 25, aim: 8 }, cold: null } as const
const crossed = { fields: 40, visits: 50, isCrossed: true, warm: { gate: 25, aim: 8 }, cold: { gate: 120, aim: 50 } } as const

const none = { bootstrap: null, power: null } as const

export const modelCases: readonly ModelCase[] = [
  { ...single, name: 'NB2, 200 rows, one intercept', family: 'nb2', ratio: { gate: 500, aim: 1000 }, bootstrap: { gate: 0.5, aim: 0.1 }, power: { gate: 1.5, aim: 0.2 } },
  { ...single, name: 'Poisson, 200 rows, one intercept', family: 'poisson', ratio: { gate: null, aim: 300 }, ...none },
  { ...large, name: 'NB2, 10,000 rows, one intercept', family: 'nb2', ratio: { gate: 300, aim: 700 }, ...none },
  { ...large, name: 'Poisson, 10,000 rows, one intercept', family: 'poisson', ratio: { gate: null, aim: 100 }, ...none },
  { ...crossed, name: 'NB2, 2,000 rows, fields and dates crossed', family: 'nb2', ratio: { gate: null, aim: 150 }, bootstrap: { gate: 5, aim: 1.5 }, power: null },
  { ...crossed, name: 'Poisson, 2,000 rows, fields and dates crossed', family: 'poisson', ratio: { gate: null, aim: 35 }, ...none },
]

export interface CaseRow {
  readonly count: number
  readonly effort: number
  readonly treated: number
  readonly day: number
  readonly field: number
  readonly date: number
}

/** The same rows each time: they hang on the case's name alone. */
export function rowsOf({ name, family, fields, visits, isCrossed }: ModelCase): readonly CaseRow[] {
  const rng = createRng(`bench/models/${name}`)
  const byField = Array.from({ length: fields }, () => 0.4 * drawNormal(rng))
  const byDate = Array.from({ length: visits }, () => (isCrossed ? 0.3 * drawNormal(rng) : 0))
  return byField.flatMap((own, field) =>
    byDate.map((shared, date) => {
      const effort = 5 + ((field + date) % 3) * 5
      const treated = field % 2
      const mean = 6 * (effort / 10) * 1.5 ** treated * Math.exp(own + shared + 0.01 * date)
      const count = drawPoisson(rng, family === 'poisson' ? mean : (mean * drawGamma(rng, 2)) / 2)
      return { count, effort, treated, day: date, field, date }
    }),
  )
}

export function modelOf(own: ModelCase, rows: readonly CaseRow[]): CountModel {
  const { family, fields, visits, isCrossed } = own
  return {
    family,
    counts: rows.map(({ count }) => count),
    offset: rows.map(({ effort }) => Math.log(effort)),
    design: matrixOfColumns(rows.length, [rows.map(() => 1), rows.map(({ treated }) => treated), rows.map(({ day }) => day)]),
    groupings: [
      { name: 'field', of: Int32Array.from(rows, ({ field }) => field), levels: fields },
      ...(isCrossed ? [{ name: 'date', of: Int32Array.from(rows, ({ date }) => date), levels: visits }] : []),
    ],
  }
}
