import type { Snapshot } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { type KindSet, kindSet, type RelativeCount, relativeCount, talliesOf, windowMark } from '@thrum/survey'
import { selectByOptions } from '../contrast/selection.ts'
import type { WhatDiffersOptions } from './run.ts'

/** Two kinds counted in the same watches, field by field. */
export interface KindPair {
  readonly reference: KindSet
  readonly other: KindSet
  readonly fields: readonly {
    readonly name: string
    readonly other: number
    readonly reference: number
    readonly rows: readonly number[]
  }[]
  readonly count: RelativeCount | null
  readonly rows: readonly number[]
}

/** The kinds compared: levels if given, else kinds; the first is the reference. */
function kindsCompared(snapshot: Snapshot, options: WhatDiffersOptions): readonly KindSet[] {
  const names = options.levels ?? options.kinds ?? []
  if (names.length < 2)
    throw new ThrumError('questions/two-kinds-needed', { known: snapshot.kinds.map(({ name }) => name).join(', ') })
  return names.map((name) => kindSet(snapshot, name))
}

/** Counts of one kind for each of another, over the watches in which both were looked for. */
function kindPair(snapshot: Snapshot, rows: ArrayLike<number>, reference: KindSet, other: KindSet): KindPair {
  const [a, b] = [talliesOf(snapshot, reference), talliesOf(snapshot, other)]
  const fields = new Map<number, { name: string; other: number; reference: number; rows: number[] }>()
  const used: number[] = []
  for (const row of Array.from(rows)) {
    const field = snapshot.countField[row] ?? -1
    if (field < 0 || Number.isNaN((a[row] as number) + (b[row] as number))) continue
    const found = fields.get(field) ?? { name: snapshot.fields[field]?.name ?? '', other: 0, reference: 0, rows: [] }
    found.reference += a[row] as number
    found.other += b[row] as number
    found.rows.push(row)
    fields.set(field, found)
    used.push(row)
  }
  const list = [...fields.values()]
  return {
    reference,
    other,
    fields: list,
    rows: used,
    count: relativeCount(
      list.map((own) => own.other),
      list.map((own) => own.reference),
    ),
  }
}

/** Options that say nothing of kinds in the same watches. */
const notOfKinds = ['since', 'step', 'against', 'expect'] as const

/** Kinds against kinds in the same watches, as they were asked. */
export interface KindsCase {
  readonly selected: readonly number[]
  readonly kinds: readonly KindSet[]
  readonly reference: KindSet
  readonly pairs: readonly KindPair[]
  /** Counts made when one of the two could not be expected to fly. */
  readonly outside: readonly number[]
}

/**
 * The pairs of kinds over the counts asked about, those outside the weather window of either kind left out.
 *
 * @throws ThrumError questions/two-kinds-needed, questions/not-of-kinds, and what a selection throws
 */
export function kindsCase(snapshot: Snapshot, options: WhatDiffersOptions): KindsCase {
  const unfit = notOfKinds.filter((name) => options[name] !== undefined)
  if (unfit.length > 0) throw new ThrumError('questions/not-of-kinds', { options: unfit.map((name) => `--${name}`).join(', ') })
  const selected = Array.from(selectByOptions(snapshot, options).rows)
  const kinds = kindsCompared(snapshot, options)
  const reference = kinds[0] as KindSet
  const isOut = (row: number, kind: KindSet): boolean =>
    (options.window ?? 'in') === 'in' && windowMark(snapshot, row, kind.class) === 'out'
  const pairs = kinds.slice(1).map((other) => {
    const rows = selected.filter((row) => !isOut(row, reference) && !isOut(row, other))
    return kindPair(snapshot, rows, reference, other)
  })
  return {
    selected,
    kinds,
    reference,
    pairs,
    outside: selected.filter((row) => kinds.some((kind) => isOut(row, kind))),
  }
}
