/** Numbers as codes: of a million counts a column holds a few hundred different numbers, and each is looked at once. */
export interface CodedNumbers {
  /** For each row a position in `values`; -1 where there is no number. */
  readonly codes: Int32Array
  /** Different numbers, in the order in which they first appear. */
  readonly values: readonly number[]
}

/** A cache and nothing else: columns of a snapshot are never changed, and what is kept goes with them. */
const kept = new WeakMap<Float64Array, CodedNumbers>()

/** Whole numbers that span less than this are looked up by place. */
const widestSpan = 65_536

/** Least whole number of a column and how many lie between its ends; null where some are not whole or they lie far apart. */
function spanOf(column: Float64Array): { readonly low: number; readonly span: number } | null {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let row = 0; row < column.length; row++) {
    const value = column[row] as number
    if (Number.isNaN(value)) continue
    if (!Number.isInteger(value)) return null
    if (value < low) low = value
    if (value > high) high = value
  }
  if (high < low) return { low: 0, span: 0 }
  return high - low < widestSpan ? { low, span: high - low + 1 } : null
}

function codeByPlace(column: Float64Array, low: number, span: number): CodedNumbers {
  const codes = new Int32Array(column.length).fill(-1)
  const values: number[] = []
  const codeOf = new Int32Array(span).fill(-1)
  for (let row = 0; row < column.length; row++) {
    const value = column[row] as number
    if (Number.isNaN(value)) continue
    const place = value - low
    if (codeOf[place] === -1) codeOf[place] = values.push(value) - 1
    codes[row] = codeOf[place] as number
  }
  return { codes, values }
}

function codeByValue(column: Float64Array): CodedNumbers {
  const codes = new Int32Array(column.length).fill(-1)
  const values: number[] = []
  const codeOf = new Map<number, number>()
  for (let row = 0; row < column.length; row++) {
    const value = column[row] as number
    if (Number.isNaN(value)) continue
    let code = codeOf.get(value)
    if (code === undefined) {
      code = values.push(value) - 1
      codeOf.set(value, code)
    }
    codes[row] = code
  }
  return { codes, values }
}

/** The different numbers of a column, coded once for as long as the column is there. */
export function codedNumbers(column: Float64Array): CodedNumbers {
  const known = kept.get(column)
  if (known !== undefined) return known
  const whole = spanOf(column)
  const coded = whole === null ? codeByValue(column) : codeByPlace(column, whole.low, whole.span)
  kept.set(column, coded)
  return coded
}
