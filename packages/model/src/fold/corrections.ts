import { mark } from '../columns/mark.ts'
import type { Fact } from '../facts/fact.ts'
import { amended, cellSettled } from '../facts/kinds.ts'
import type { Conflict } from '../snapshot/snapshot.ts'
import type { ReadLog } from './read-log.ts'

/** What stands in a cell after all corrections of it. */
export interface Correction {
  readonly of: string
  readonly column: string
  readonly to: string | number | null
  readonly mark: number
  readonly fact: string
}

interface Step {
  readonly fact: Fact
  readonly of: string
  readonly column: string
  readonly after: string | null
  readonly to: string | number | null
  readonly mark: number
}

/** The latest correction of each cell, and the cells where two were made without knowledge of each other. */
export function corrections(log: ReadLog): { readonly standing: readonly Correction[]; readonly conflicts: readonly Conflict[] } {
  const steps: Step[] = [
    ...log.of(amended).map(({ fact, body }) => ({ fact, ...body, mark: mark.asWritten })),
    ...log.of(cellSettled).map(({ fact, body }) => ({
      fact,
      of: body.of,
      column: body.column,
      after: null,
      to: body.to,
      mark: body.approximate === true ? mark.approximate : mark.asWritten,
    })),
  ]
  const standing: Correction[] = []
  const conflicts: Conflict[] = []
  for (const list of Map.groupBy(steps, (step) => `${step.of}\n${step.column}`).values()) {
    // `log.of` is in log order per kind; settlements and amendments of one cell still need one order.
    const ordered = [...list].sort((a, b) =>
      a.fact.at === b.fact.at ? (a.fact.id < b.fact.id ? -1 : 1) : a.fact.at < b.fact.at ? -1 : 1,
    )
    const last = ordered.at(-1)
    if (last === undefined) continue
    standing.push({ of: last.of, column: last.column, to: last.to, mark: last.mark, fact: last.fact.id })
    const siblings = ordered.filter((step) => step.after === last.after)
    if (new Set(siblings.map((step) => step.to)).size > 1) {
      conflicts.push({
        of: last.of,
        column: last.column,
        choices: siblings.map(({ fact, to }) => ({ fact: fact.id, to, by: fact.by, at: fact.at })),
      })
    }
  }
  return { standing, conflicts }
}
