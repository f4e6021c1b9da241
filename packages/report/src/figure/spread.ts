/**
 * Moves places along a line apart so that each has room, as little as it takes and in their order.
 *
 * @param places wanted places [px], in any order
 * @param gap least distance between two [px]
 * @returns places within low to high where there is room for all, in the order given [px]
 */
export function spreadApart(places: readonly number[], gap: number, low: number, high: number): readonly number[] {
  const order = places.map((_, k) => k).sort((a, b) => (places[a] ?? 0) - (places[b] ?? 0) || a - b)
  // Neighbours that touch move as one run; `sum` adds up where each member would have its run start.
  const runs: { sum: number; count: number }[] = []
  const startOf = ({ sum, count }: { sum: number; count: number }): number => {
    const middle = sum / count
    return Math.max(low, Math.min(high - (count - 1) * gap, middle))
  }
  for (const index of order) {
    runs.push({ sum: places[index] ?? 0, count: 1 })
    for (;;) {
      const last = runs.at(-1)
      const before = runs.at(-2)
      if (last === undefined || before === undefined || startOf(before) + before.count * gap <= startOf(last)) break
      runs.splice(-2, 2, { sum: before.sum + last.sum - last.count * before.count * gap, count: before.count + last.count })
    }
  }
  const placed: number[] = new Array(places.length).fill(0)
  let next = 0
  for (const run of runs) {
    const start = startOf(run)
    for (let k = 0; k < run.count; k += 1) placed[order[next + k] ?? 0] = start + k * gap
    next += run.count
  }
  return placed
}

/**
 * Sideways steps that keep marks on a line from covering each other: the nearest free of 0, +1, -1, +2 ... steps.
 *
 * @param places along the line [px]
 * @param size of a mark [px]
 * @param most greatest sideways distance [px]; beyond it marks may touch
 */
export function stepAside(places: readonly number[], size: number, most: number): readonly number[] {
  const order = places.map((_, k) => k).sort((a, b) => (places[a] ?? 0) - (places[b] ?? 0) || a - b)
  const step = size * 0.5
  // Marks that touch are apart enough; sums of steps carry dust.
  const apart = size * 0.99
  const aside: number[] = new Array(places.length).fill(0)
  const choices = Array.from(
    { length: 1 + 2 * Math.floor(most / step) },
    (_, k) => (k % 2 === 1 ? 1 : -1) * Math.ceil(k / 2) * step + 0,
  )
  let first = 0
  for (const [rank, index] of order.entries()) {
    const place = places[index] ?? 0
    while (first < rank && place - (places[order[first] ?? 0] ?? 0) > size) first += 1
    const near = order.slice(first, rank)
    aside[index] =
      choices.find((choice) =>
        near.every((other) => Math.hypot(place - (places[other] ?? 0), choice - (aside[other] ?? 0)) >= apart),
      ) ?? 0
  }
  return aside
}
