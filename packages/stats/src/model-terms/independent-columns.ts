/** What is left of a column beside those before it counts as nothing when below this part of its own scatter. Ours. */
const dust = 1e-7

const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, value, i) => sum + value * (b[i] as number), 0)

/** Root of the sum of squares about the mean; of a constant column, of the column itself. */
function scatterOf(column: Float64Array): number {
  const mean = column.reduce((sum, value) => sum + value / column.length, 0)
  const about = Math.sqrt(column.reduce((sum, value) => sum + (value - mean) ** 2, 0))
  const size = Math.sqrt(dot(column, column))
  return about > 1e-12 * size ? about : size
}

/**
 * How many of the columns say something that those before them do not: the rank, each column measured by its own scatter.
 *
 * @param columns of one length
 * @param before the same columns before something was taken off them, by whose scatter they are measured; themselves unless said
 * @source Gram-Schmidt, each column twice: Giraud L., Langou J., Rozloznik M. (2005) Comput. Math. Appl. 50, 1069-1075. From memory.
 * @check ones, a year (0 and 1), the year plus one: two
 */
export function independentColumns(columns: readonly Float64Array[], before: readonly Float64Array[] = columns): number {
  const basis: Float64Array[] = []
  columns.forEach((column, j) => {
    const scale = scatterOf(before[j] ?? column)
    const left = column.slice()
    for (let round = 0; round < 2; round++)
      for (const known of basis) {
        const share = dot(known, left)
        for (let i = 0; i < left.length; i++) left[i] = (left[i] as number) - share * (known[i] as number)
      }
    const size = Math.sqrt(dot(left, left))
    if (size > dust * scale && basis.length < left.length) basis.push(left.map((value) => value / size))
  })
  return basis.length
}
