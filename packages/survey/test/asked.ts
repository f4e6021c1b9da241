import type { Snapshot } from '@thrum/model'
import {
  auditContrast,
  buildDesign,
  type ContrastAsked,
  type Design,
  type FieldContrast,
  type Finding,
  fieldContrast,
  kindSet,
  type PairContrast,
  type RefusedPair,
  selectCounts,
  type Tangles,
  talliesOf,
  tanglesOf,
} from '../src/index.ts'
import { said } from './said.ts'

/** A contrast as a person puts it. */
export interface Asked extends Partial<Omit<ContrastAsked, 'levels'>> {
  readonly levels?: readonly string[] | null
  readonly where?: readonly string[]
  readonly except?: readonly string[]
  readonly unit?: string | null
  readonly kind?: string
  /** Another kind, for a relative count. */
  readonly against?: string
  readonly worth?: number
}

export interface Seen {
  readonly design: Design
  readonly tangles: Tangles
  readonly findings: readonly Finding[]
  readonly contrast: FieldContrast
}

/**
 * The way from a snapshot to a contrast, as every question takes it: selection, design, tangles, audit, fit. Every finding
 * must have its words: whatever a test asks, what the audit says of it is spoken.
 */
export function ask(snapshot: Snapshot, asked: Asked): Seen {
  const { where = [], except = [], unit = null, kind = 'bee', against, worth = 1.5 } = asked
  const selected = selectCounts(snapshot, { where, except, unit })
  const kinds = [kind, ...(against === undefined ? [] : [against])].map((name) => kindSet(snapshot, name))
  const design = buildDesign(snapshot, selected.rows, selected.unit, {
    between: asked.between ?? null,
    levels: asked.levels ?? null,
    since: asked.since ?? null,
    step: asked.step ?? null,
    measure: asked.measure ?? 'time',
    window: asked.window ?? 'in',
    needsEffort: against === undefined,
    kindClass: asked.kindClass ?? kinds[0]?.class ?? 'other',
  })
  const tangles = tanglesOf(snapshot, design)
  const findings = auditContrast({
    snapshot,
    design,
    tangles,
    selected: Array.from(selected.rows),
    kinds,
    worth,
    relative: against !== undefined,
  })
  for (const { text, cure } of findings) {
    said(text)
    if (cure !== null) said(cure)
  }
  const [tallies, other] = kinds.map((set) => talliesOf(snapshot, set))
  const contrast = fieldContrast(snapshot, design, tangles, tallies ?? new Float64Array(), other ?? null)
  return { design, tangles, findings, contrast }
}

/** The pair of a contrast that has one, which must have been answered. */
export function answeredPair({ contrast }: Pick<Seen, 'contrast'>, level = 1): PairContrast {
  const pair = contrast.pairs.find((own) => own.level === level)
  if (pair?.kind !== 'estimated') throw new Error(`expected an answer, found ${JSON.stringify(pair)}`)
  return pair
}

export function refusedPair({ contrast }: Pick<Seen, 'contrast'>, level = 1): RefusedPair['refusal'] {
  const pair = contrast.pairs.find((own) => own.level === level)
  if (pair?.kind !== 'refused') throw new Error(`expected a refusal, found ${JSON.stringify(pair)}`)
  return pair.refusal
}

/** Severity of the one finding of a code; undefined where there is none. */
export function severityOf({ findings }: Pick<Seen, 'findings'>, code: string): Finding['severity'] | undefined {
  return findings.find((finding) => finding.code === code)?.severity
}

/** Inflation of the contrast by one nuisance, or by several together. */
export function inflationBy({ tangles }: Pick<Seen, 'tangles'>, ...names: readonly string[]): number | undefined {
  return tangles.found.find(({ nuisances }) => nuisances.join() === names.join())?.inflation
}
