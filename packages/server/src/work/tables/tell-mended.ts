import type { CellDifference } from '@thrum/exchange'
import { type MendedOffer, shown } from '@thrum/host'
import type { Saying } from '@thrum/model/ground'

/** Cells told one by one; a page that shows more of them asks a file that is too different to be a mended one. */
const mostCells = 1000

interface Difference {
  readonly line: number
  readonly column: string
  readonly of: string
  readonly from: string | Saying
  readonly to: string | Saying
}

function differenceOf({ line, column, label, of, from, to }: CellDifference): Difference {
  const where = { column, table: label === null ? ('count' as const) : ('tally' as const) }
  return { line, column: label ?? column, of, from: shown(where, from), to: shown(where, to) }
}

/** What accepting a mended file would do. */
export function mendedTold({ mends, plan, corrected }: MendedOffer): unknown {
  return {
    file: mends.file,
    day: mends.at.slice(0, 10),
    key: plan.key,
    equal: plan.equal,
    changed: plan.changed.slice(0, mostCells).map(differenceOf),
    kept: plan.kept.slice(0, mostCells).map(differenceOf),
    added: plan.added.length,
    addedTallies: plan.addedTallies.length,
    gone: plan.gone.slice(0, mostCells).map(({ address }) => ({ address, row: corrected.nameOf(address) })),
    goneTallies: plan.goneTallies.length,
    withdrawnLines: plan.withdrawnLines,
    columnsGone: plan.columnsGone,
  }
}
