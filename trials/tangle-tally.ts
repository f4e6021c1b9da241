// Counting of a trial of tangles: by family, resumable, and as a table.

import { createRng } from '@thrum/model/ground'
import { families, makeDesign } from './tangle-designs.ts'
import type { Score } from './tangle-score.ts'
import { auditOf } from './tangle-verdict.ts'

/** What must hold of the scored designs. */
export const bounds = { aliasedBlocked: 0.99, soundBlocked: 0.02 } as const

type Verdict = Score['verdict']
const verdicts: readonly Verdict[] = ['aliased', 'sound', 'between', 'even']

export type Cell = { readonly [verdict in Verdict]: { designs: number; blocked: number } }

/** A scored design on which audit and score differ; its number and the seed make it again. */
export interface Miss {
  readonly design: number
  readonly family: string
  readonly fields: number
  readonly score: Score
  readonly because: readonly string[]
}

export interface Tally {
  readonly seed: string
  /** Number of the next design. */
  next: number
  readonly families: { [family: string]: Cell }
  readonly misses: Miss[]
}

const emptyCell = (): Cell => ({
  aliased: { designs: 0, blocked: 0 },
  sound: { designs: 0, blocked: 0 },
  between: { designs: 0, blocked: 0 },
  even: { designs: 0, blocked: 0 },
})

export const nameOfFamily = ({ structure, planted }: (typeof families)[number]): string => `${structure} · ${planted}`

export function newTally(seed: string): Tally {
  return {
    seed,
    next: 0,
    families: Object.fromEntries(families.map((family) => [nameOfFamily(family), emptyCell()])),
    misses: [],
  }
}

/** Sum over the families for which `inside` holds. */
export function totalOf({ families: cells }: Tally, inside: (family: string) => boolean = () => true): Cell {
  const total = emptyCell()
  for (const [family, cell] of Object.entries(cells)) {
    if (!inside(family)) continue
    for (const verdict of verdicts) {
      total[verdict].designs += cell[verdict].designs
      total[verdict].blocked += cell[verdict].blocked
    }
  }
  return total
}

export function scoredOf(tally: Tally): number {
  const { aliased, sound } = totalOf(tally)
  return aliased.designs + sound.designs
}

/** Makes the next design, of the families in turn, puts it to the audit and counts it. */
export function addDesign(tally: Tally): void {
  const number = tally.next
  const family = families[number % families.length] as (typeof families)[number]
  const design = makeDesign(family, createRng(`${tally.seed}/design/${number}`))
  const { blocked, because } = auditOf(design)
  const { verdict } = design.score
  const name = nameOfFamily(family)
  const cell = (tally.families[name] ?? emptyCell())[verdict]
  cell.designs += 1
  if (blocked) cell.blocked += 1
  if ((verdict === 'aliased' && !blocked) || (verdict === 'sound' && blocked))
    tally.misses.push({ design: number, family: name, fields: design.fields, score: design.score, because })
  tally.next += 1
}

const share = ({ designs, blocked }: { readonly designs: number; readonly blocked: number }): string =>
  designs === 0 ? '–' : `${blocked} of ${designs} (${((100 * blocked) / designs).toFixed(1)} %)`

export function holds(tally: Tally): boolean {
  const { aliased, sound } = totalOf(tally)
  return aliased.blocked >= bounds.aliasedBlocked * aliased.designs && sound.blocked <= bounds.soundBlocked * sound.designs
}

export function tableOf(tally: Tally): readonly string[] {
  const line = (name: string, cell: Cell): string =>
    `| ${[name, ...verdicts.map((verdict) => share(cell[verdict]))].join(' | ')} |`
  return [
    '| structure · planted | aliased, blocked | sound, blocked | between, blocked | even, blocked |',
    '| --- | --- | --- | --- | --- |',
    ...Object.entries(tally.families).map(([name, cell]) => line(name, cell)),
    line('**all**', totalOf(tally)),
    line(
      '**all but before/after without controls**',
      totalOf(tally, (family) => !family.startsWith('before/after ·')),
    ),
  ]
}
