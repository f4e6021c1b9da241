/** Rows that lie together along a covariate, or share a level. */
export interface Bin {
  readonly label: BinLabel
  /** Places of its rows. */
  readonly rows: Int32Array
}

export type BinLabel =
  | { readonly kind: 'range'; readonly low: number; readonly high: number }
  | { readonly kind: 'level'; readonly level: string }

/** Common practice, no source. */
const mostBins = 8
/** A bin of fewer rows says little. Common practice, no source. */
const fewestInBin = 5
/** More levels than this are not drawn: the largest stand for all. */
const mostLevels = 24

/**
 * Up to 8 bins of about equal size, in ascending order; equal values stay together. Values that are not finite are left out.
 *
 * @returns empty where all values are equal, or too few to tell two bins apart
 */
export function binsOfValues(values: ArrayLike<number>, most = mostBins): readonly Bin[] {
  const order = [...Array(values.length).keys()]
    .filter((i) => Number.isFinite(values[i]))
    .sort((a, b) => (values[a] as number) - (values[b] as number))
  const wanted = Math.min(most, Math.floor(order.length / fewestInBin))
  if (wanted < 2) return []
  const bins: number[][] = []
  let current: number[] = []
  order.forEach((row, k) => {
    current.push(row)
    const next = order[k + 1]
    const isFull = k + 1 >= ((bins.length + 1) * order.length) / wanted
    const isTied = next !== undefined && values[next] === values[row]
    if (next === undefined || (isFull && !isTied)) {
      bins.push(current)
      current = []
    }
  })
  if (bins.length < 2) return []
  return bins.map((rows): Bin => {
    const low = values[rows[0] as number] as number
    const high = values[rows[rows.length - 1] as number] as number
    return { label: { kind: 'range', low, high }, rows: Int32Array.from(rows) }
  })
}

/**
 * One bin for each level that holds a row; of many levels the 24 largest.
 *
 * @param of place of each row's level; -1 where it is not known
 * @returns empty where one level holds all
 */
export function binsOfLevels(of: ArrayLike<number>, levels: readonly string[]): readonly Bin[] {
  const rows: number[][] = levels.map(() => [])
  for (let i = 0; i < of.length; i++) rows[of[i] as number]?.push(i)
  const held = levels.flatMap((level, k): Bin[] => {
    const own = rows[k] ?? []
    return own.length === 0 ? [] : [{ label: { kind: 'level', level }, rows: Int32Array.from(own) }]
  })
  if (held.length < 2) return []
  const least = held.map((bin) => bin.rows.length).sort((a, b) => b - a)[mostLevels - 1] ?? 0
  return held.filter((bin) => bin.rows.length >= least).slice(0, mostLevels)
}
