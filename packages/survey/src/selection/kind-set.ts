import { classifyKind, type KindClass, kindClasses } from '@thrum/biology'
import { isCounted, mark, type Snapshot } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'

/** One kind, or several counted together (a group such as "bumble bee", or all kinds). */
export interface KindSet {
  readonly label: string
  /** Positions in the snapshot's kinds. */
  readonly kinds: readonly number[]
  readonly class: KindClass
}

/** The word for all kinds together. */
export const allKinds = 'all kinds'

/** What sort of insect a kind is: as somebody described it, else as its name proposes. */
export function classOf(snapshot: Snapshot, kind: number): KindClass {
  const found = snapshot.kinds[kind]
  if (found === undefined) return 'other'
  const said = kindClasses.find((name) => name === found.group?.replaceAll(' ', '-'))
  return said ?? classOfName(found.taxon ?? found.name)
}

function classOfName(name: string): KindClass {
  const proposal = classifyKind(name)
  return proposal.kind === 'proposed' ? proposal.kindClass : 'other'
}

/** A cache and nothing else: a snapshot is never changed, and what is kept goes with it. */
const keptLooked = new WeakMap<Snapshot, ReadonlySet<number>>()

/** Kinds that some count was looked at for. */
function lookedFor(snapshot: Snapshot): ReadonlySet<number> {
  const known = keptLooked.get(snapshot)
  if (known !== undefined) return known
  // One place more for tallies that name no kind.
  const seen = new Uint8Array(snapshot.kinds.length + 1)
  for (const kind of snapshot.tallyKind) seen[kind + 1] = 1
  const looked = new Set(Array.from(seen.keys(), (place) => place - 1).filter((kind) => seen[kind + 1] === 1))
  keptLooked.set(snapshot, looked)
  return looked
}

/**
 * A kind by its name; else all kinds of a group of that name; else all.
 *
 * @throws ThrumError survey/kind/unknown, naming those there are
 */
export function kindSet(snapshot: Snapshot, name: string): KindSet {
  // Kinds that were described and never looked for belong to no sum of kinds.
  const looked = lookedFor(snapshot)
  const all = snapshot.kinds.map((_, k) => k).filter((k) => looked.has(k) || snapshot.kinds[k]?.name === name)
  if (name === allKinds) return { label: name, kinds: all, class: 'other' }
  const exact = all.filter((k) => snapshot.kinds[k]?.name === name)
  const found = exact.length > 0 ? exact : all.filter((k) => snapshot.kinds[k]?.group === name)
  // Before anything was counted a kind is a name: its class alone matters to the audit.
  if (looked.size === 0) return { label: name, kinds: [], class: classOfName(name) }
  if (found.length === 0) {
    const groups = snapshot.kinds.flatMap(({ group }) => (group === null ? [] : [group]))
    const known = [...new Set([...snapshot.kinds.map((kind) => kind.name), ...groups, allKinds])]
    throw new ThrumError('survey/kind/unknown', { name, known: known.join(', ') })
  }
  const classes = new Set(found.map((k) => classOf(snapshot, k)))
  return { label: name, kinds: found, class: classes.size === 1 ? ([...classes][0] ?? 'other') : 'other' }
}

function sumTallies(snapshot: Snapshot, kinds: readonly number[]): Float64Array {
  const rows = snapshot.tables.count.rows
  const { values, marks } = snapshot.tables.tally.columns.number
  const place = new Int32Array(snapshot.kinds.length).fill(-1)
  kinds.forEach((kind, k) => {
    place[kind] = k
  })
  const sums = new Float64Array(rows)
  const found = new Int32Array(rows)
  const blocked = new Uint8Array(rows)
  const seen = new Uint8Array(rows * kinds.length)
  const { tallyCount, tallyKind } = snapshot
  for (let tally = 0; tally < tallyCount.length; tally++) {
    const own = place[tallyKind[tally] as number] ?? -1
    if (own < 0) continue
    const count = tallyCount[tally] as number
    if (marks === null || isCounted(marks[tally] as number)) sums[count] = (sums[count] as number) + (values[tally] as number)
    else blocked[count] = 1
    // Several rows of one kind in one count (castes, behaviours) are one kind looked for.
    const cell = count * kinds.length + own
    if (seen[cell] === 0) {
      found[count] = (found[count] as number) + 1
      seen[cell] = 1
    }
  }
  for (let row = 0; row < rows; row++) if (blocked[row] === 1 || (found[row] as number) < kinds.length) sums[row] = Number.NaN
  return sums
}

/** A cache and nothing else: a snapshot is never changed, and what is kept goes with it. */
const keptTallies = new WeakMap<Snapshot, Map<string, Float64Array>>()
/** Sets of kinds kept at once: an audit and its question look at the same few again and again. */
const mostKept = 8

/**
 * For each count of the snapshot how many of the kind: NaN where it was not looked for, was lost or waits for a person.
 * A set of several kinds has a number only where each of them has one. Whoever asks for the same kinds gets the same array:
 * it is not to be changed.
 */
export function talliesOf(snapshot: Snapshot, { kinds }: Pick<KindSet, 'kinds'>): Float64Array {
  const sets = keptTallies.get(snapshot) ?? new Map<string, Float64Array>()
  keptTallies.set(snapshot, sets)
  const name = kinds.join(',')
  const sums = sets.get(name) ?? sumTallies(snapshot, kinds)
  // Taken out and put last: the one that was not asked for the longest goes first.
  sets.delete(name)
  sets.set(name, sums)
  for (const oldest of sets.keys()) {
    if (sets.size <= mostKept) break
    sets.delete(oldest)
  }
  return sums
}

/** Number of tallies of the set in these counts that wait for a person. */
export function waitingTallies(snapshot: Snapshot, set: KindSet, selected: ReadonlySet<number>): readonly number[] {
  const { marks } = snapshot.tables.tally.columns.number
  const waiting: number[] = []
  if (marks === null) return waiting
  for (let tally = 0; tally < snapshot.tallyCount.length; tally++) {
    const code = marks[tally]
    if (code !== mark.waiting && code !== mark.atLeast && code !== mark.atMost) continue
    if (set.kinds.includes(snapshot.tallyKind[tally] as number) && selected.has(snapshot.tallyCount[tally] as number))
      waiting.push(tally)
  }
  return waiting
}
