import type { Snapshot, Treatment } from '@thrum/model'

/**
 * The level of a set treatment for each count: by field (and plot, where one is named), within its dates.
 * A count that no treatment covers takes what its own column says, if there is one.
 */
export function treatmentLevels(
  snapshot: Snapshot,
  set: readonly Treatment[],
  written: (row: number) => string | null,
): (row: number) => string | null {
  const { field, plot, date } = snapshot.tables.count.columns
  const byField = Map.groupBy(set, (treatment) => treatment.field)
  const everywhere = byField.get(null) ?? []
  const covers = (treatment: Treatment, row: number): boolean => {
    const day = date.values[row] ?? Number.NaN
    if (treatment.plot !== null && treatment.plot !== plot.dictionary[plot.codes[row] ?? -1]) return false
    if (treatment.from !== null && !(day >= treatment.from)) return false
    return treatment.to === null || day <= treatment.to
  }
  const everywhereAndOf = field.dictionary.map((name) => [...(byField.get(name) ?? []), ...everywhere])
  return (row) => {
    // The latest setting that covers the count stands: later facts come later in the list.
    const ofField = everywhereAndOf[field.codes[row] ?? -1] ?? everywhere
    return ofField.findLast((treatment) => covers(treatment, row))?.level ?? written(row)
  }
}
