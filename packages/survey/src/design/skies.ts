import type { Snapshot } from '@thrum/model'
import { codedNumbers } from '../factor/coded-numbers.ts'

/** Which counts were made under the same recorded sky, at the same crop: a window is looked up once for all of them. */
export interface Skies {
  /** For each count its sky: from 0 to `number` - 1. */
  readonly skyOf: Int32Array
  readonly number: number
}

/** Splits groups by one more code of each row (-1: nothing recorded); numbers them anew. */
function split(groupOf: Int32Array, codes: Int32Array): number {
  const most = codes.reduce((top, code) => Math.max(top, code), -1) + 2
  const known = new Map<number, number>()
  for (let row = 0; row < groupOf.length; row++) {
    const key = (groupOf[row] as number) * most + (codes[row] as number) + 1
    let group = known.get(key)
    if (group === undefined) {
      group = known.size
      known.set(key, group)
    }
    groupOf[row] = group
  }
  return Math.max(1, known.size)
}

/** The different skies over the counts of a project: temperature, sun, cloud, wind, rain and crop as they were recorded. */
export function skiesOf(snapshot: Snapshot): Skies {
  const { temperature, sun, cloud, wind, rain, crop } = snapshot.tables.count.columns
  const skyOf = new Int32Array(snapshot.tables.count.rows)
  let number = 1
  for (const column of [temperature, sun, cloud, wind]) {
    const { codes, values } = codedNumbers(column.values)
    if (values.length > 0) number = split(skyOf, codes)
  }
  for (const column of [rain, crop]) if (column.dictionary.length > 0) number = split(skyOf, column.codes)
  return { skyOf, number }
}
