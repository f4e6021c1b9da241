import { textAt } from '@thrum/model'
import { type DecimalHabit, decimalHabit, noHabit, parseDecimal } from '../cell/decimal.ts'
import { readAbsence } from '../cell/reading.ts'
import type { Sheet } from './sheet.ts'

/** A column of a table that is taken as it stands: nobody says what it means but whoever asks of it. */
export interface PlainColumn {
  readonly name: string
  /** One a row, as written; null where nothing is written, or a sign for it: NA, ? and the like. */
  readonly texts: readonly (string | null)[]
  /** One a row: the number that the text plainly is; NaN where it is none, or is missing. */
  readonly numbers: Float64Array
}

const isMissing = (text: string): boolean => {
  const kind = readAbsence(text)?.kind
  return kind === 'not-looked-for' || kind === 'lost'
}

/** The cells of each column as texts and as numbers: decimal marks as the column proves them, else the file; a comma that parts cells is none. */
export function plainColumns({ headers, columns, rows, delimiter }: Sheet): readonly PlainColumn[] {
  const habits = columns.map(({ dictionary }) => decimalHabit(dictionary))
  const proven = new Set(habits.flatMap(({ decimal }) => decimal ?? []))
  const [only] = proven
  const ofFile: DecimalHabit =
    proven.size === 1 && only !== undefined
      ? { decimal: only, mixed: false }
      : delimiter === ','
        ? { decimal: '.', mixed: false }
        : noHabit
  return headers.map((name, k): PlainColumn => {
    const column = columns[k] ?? { type: 'text', codes: new Int32Array(rows).fill(-1), dictionary: [] }
    const own = habits[k] ?? noHabit
    const habit = own.decimal === null && !own.mixed ? ofFile : own
    const missing = column.dictionary.map(isMissing)
    const numbers = column.dictionary.map((text) => {
      const parsed = parseDecimal(text, habit)
      return parsed?.kind === 'value' ? parsed.value : Number.NaN
    })
    const texts = Array.from(column.codes, (code, row) =>
      code < 0 || missing[code] ? null : (textAt(column, row)?.trim() ?? null),
    )
    return {
      name,
      texts,
      numbers: Float64Array.from(column.codes, (code, row) => (texts[row] === null ? Number.NaN : (numbers[code] ?? Number.NaN))),
    }
  })
}
