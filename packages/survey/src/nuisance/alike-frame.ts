import type { Design } from '../design/design.ts'
import { codedNumbers } from '../factor/coded-numbers.ts'
import type { Frame } from './frame.ts'
import type { Nuisance } from './nuisance.ts'

/**
 * From this many counts on those of one field and level that read alike are taken together. It changes nothing but the last
 * digits, in which sums of a million terms are not known anyway.
 */
export const takenTogetherFrom = 100_000
/** Places for field, level and reading at most, filled or not. */
const mostPlaces = 4_000_000

/** One column that differs where any of a nuisance's columns does: an hour stands for its square, a number for each word. */
function readingOf({ name, columns }: Nuisance): Float64Array | null {
  const [first] = columns
  if (first === undefined || columns.length === 1 || name === 'hour') return first ?? null
  const sum = new Float64Array(first.length)
  columns.forEach((column, j) => {
    for (let k = 0; k < sum.length; k++) sum[k] = (sum[k] as number) + (j + 1) * (column[k] as number)
  })
  return sum
}

/**
 * The frame of many counts on which levels change within fields, with those of one field, level and reading as one row.
 *
 * @param from how many counts are many
 * @returns null where counts are few, a measured level tells them apart, or hardly any read alike: then the plain frame serves
 */
export function alikeFrame(design: Design, nuisances: readonly Nuisance[], from: number): Frame | null {
  const { rows, fieldOf, levelOf } = design
  if (design.structure !== 'within-fields' || design.measured !== null || rows.length < from) return null
  const coded = nuisances.flatMap((nuisance) => {
    const reading = readingOf(nuisance)
    return reading === null ? [] : [codedNumbers(reading)]
  })
  const readings = coded.reduce((product, { values }) => product * (values.length + 1), 1)
  const levels = design.levels.length
  if (design.fields.length * levels * readings > mostPlaces) return null

  const cellAt = new Int32Array(design.fields.length * levels * readings).fill(-1)
  const frameRow = new Int32Array(rows.length)
  const one: number[] = []
  const number: number[] = []
  for (let k = 0; k < rows.length; k++) {
    let place = (fieldOf[k] as number) * levels + (levelOf[k] as number)
    for (const { codes, values } of coded) place = place * (values.length + 1) + (codes[k] as number) + 1
    let cell = cellAt[place] as number
    if (cell < 0) {
      cell = one.push(k) - 1
      number.push(0)
      cellAt[place] = cell
    }
    number[cell] = (number[cell] as number) + 1
    frameRow[k] = cell
  }
  return {
    rows: one.length,
    groupOf: Int32Array.from(one, (k) => fieldOf[k] as number),
    levelOf: Int32Array.from(one, (k) => levelOf[k] as number),
    periodOf: new Int32Array(one.length),
    frameRow,
    alike: { number: Float64Array.from(number), one: Int32Array.from(one) },
  }
}

/** Columns of a frame as least squares take them: a row that stands for n counts weighs as much as n. */
export function weighed({ alike }: Frame, columns: readonly Float64Array[]): readonly Float64Array[] {
  if (alike === null) return columns
  const root = alike.number.map(Math.sqrt)
  return columns.map((column) => column.map((value, k) => value * (root[k] as number)))
}
