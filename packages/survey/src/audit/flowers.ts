import { isCounted, markAt, type Snapshot } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import type { Measure } from '../design/design.ts'
import type { Finding } from './finding.ts'

/** Counts without open flowers (or without an area), where the question is per flower (or per area). */
export function flowersNotCounted(snapshot: Snapshot, selected: readonly number[], measure: Measure): readonly Finding[] {
  if (measure === 'time') return []
  const { flowers, area } = snapshot.tables.count.columns
  const column = measure === 'flower' ? flowers : area
  const lacking = selected.filter((row) => !isCounted(markAt(column, row)) || Number.isNaN(column.values[row] ?? Number.NaN))
  const empty = selected.filter((row) => isCounted(markAt(column, row)) && column.values[row] === 0)
  const found: Finding[] = []
  if (lacking.length > 0) {
    const severity = lacking.length === selected.length ? 'block' : 'warn'
    found.push({
      code: measure === 'flower' ? 'flowers-not-counted' : 'area-unknown',
      severity,
      text: saying(`survey/audit/${measure}-unknown/${severity}`, { counts: lacking.length, of: selected.length }),
      rows: lacking,
      cure: saying(measure === 'flower' ? 'survey/cure/count-flowers' : 'survey/cure/record-area'),
    })
  }
  if (empty.length > 0) {
    found.push({
      code: 'no-open-flowers',
      severity: 'note',
      text: saying('survey/audit/no-open-flowers', { counts: empty.length }),
      rows: empty,
      cure: null,
    })
  }
  return found
}
