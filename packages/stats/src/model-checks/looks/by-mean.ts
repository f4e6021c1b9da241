import { binsOfValues } from '../bins.ts'
import type { ShownLabel } from '../look.ts'
import type { Standing } from '../standing.ts'

/** Lines over which zeros and scatter are told. */
const lines = 4

/** Rows in up to four bins by what the fit expects of them. */
export function binsByMean({ laws }: Standing): readonly { readonly label: ShownLabel; readonly rows: Int32Array }[] {
  const bins = binsOfValues(
    laws.map(({ mean }) => mean),
    lines,
  )
  if (bins.length === 0) return [{ label: { kind: 'all-rows' }, rows: Int32Array.from(laws.keys()) }]
  return bins.map(({ label, rows }) => ({
    label: label.kind === 'range' ? { kind: 'means', low: label.low, high: label.high } : label,
    rows,
  }))
}
