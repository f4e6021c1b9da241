import type { Snapshot, Treatment } from '@thrum/model'

/**
 * The level of a set treatment for each count: by field (and plot, where one is named), within its dates.
 * A count that no treatment covers takes what its own column says, if there is one.
 */
export function treatmentLevels(
  snapshot: Snapshot,
  set: readonly Treatment[],
  written: ((row: number) => string | null) | undefined,
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
  return (row) => {
    const name = field.dictionary[field.codes[row] ?? -1] ?? null
    // The latest setting that covers the count stands: later facts come later in the list.
    const found = [...(name === null ? [] : (byField.get(name) ?? [])), ...everywhere].findLast((treatment) =>
      covers(treatment, row),
    )
    return found?.level ?? written?.(row) ?? null
  }
}
