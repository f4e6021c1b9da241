/** Numbers as codes: of a million counts a column holds a few hundred different numbers, and each is looked at once. */
export interface CodedNumbers {
  /** For each row a position in `values`; -1 where there is no number. */
  readonly codes: Int32Array
  /** Different numbers, in the order in which they first appear. */
  readonly values: readonly number[]
}

/** A cache and nothing else: columns of a snapshot are never changed, and what is kept goes with them. */
const kept = new WeakMap<Float64Array, CodedNumbers>()

/** The different numbers of a column, coded once for as long as the column is there. */
export function codedNumbers(column: Float64Array): CodedNumbers {
  const known = kept.get(column)
  if (known !== undefined) return known
  const codes = new Int32Array(column.length)
  const values: number[] = []
  const codeOf = new Map<number, number>()
  for (let row = 0; row < column.length; row++) {
    const value = column[row] as number
    if (Number.isNaN(value)) {
      codes[row] = -1
      continue
    }
    let code = codeOf.get(value)
    if (code === undefined) {
      code = values.push(value) - 1
      codeOf.set(value, code)
    }
    codes[row] = code
  }
  const coded = { codes, values }
  kept.set(column, coded)
  return coded
}
