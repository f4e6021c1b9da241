import { lineText } from './svg.ts'

/** A label as it stands beside its mark: under a heading it shares with its neighbours, and without what they all repeat. */
export interface RowLabel {
  /** The whole label. */
  readonly whole: string
  /** What is told beside the mark. */
  readonly short: string
  /** Heading that starts here; null where none does. */
  readonly heading: string | null
  /** True if it goes on what the row above began. */
  readonly isUnder: boolean
}

const parting = ', '
const endOf = (label: string): string | null => {
  const at = label.lastIndexOf(parting)
  return at <= 0 || at + parting.length >= label.length ? null : label.slice(at)
}

/** The longest end, begun by a comma, that all share and that leaves something of each. */
function sharedEnd(labels: readonly string[]): string {
  let shared = ''
  let rest = labels
  while (rest.length > 1) {
    const end = endOf(rest[0] ?? '')
    if (end === null || !rest.every((label) => endOf(label) === end)) break
    shared = end + shared
    rest = rest.map((label) => label.slice(0, -end.length))
  }
  return shared
}

/** Runs of neighbours by a key. */
function runsBy<Item>(items: readonly Item[], key: (item: Item) => string | null): readonly (readonly Item[])[] {
  const runs: Item[][] = []
  for (const item of items) {
    const last = runs.at(-1)
    if (last?.[0] !== undefined && key(last[0]) === key(item)) last.push(item)
    else runs.push([item])
  }
  return runs
}

/**
 * Labels made short: the end that all rows share is left out; runs of neighbours with one end get it as a heading; a row
 * beside that goes on the label above it is told by what it adds.
 */
export function shortenLabels(
  rows: readonly { readonly label: string; readonly role: 'headline' | 'beside' }[],
): readonly RowLabel[] {
  const wholes = rows.map(({ label }) => lineText(label))
  const everywhere = sharedEnd(wholes)
  const bare = wholes.map((whole) => whole.slice(0, whole.length - everywhere.length))
  const isEveryHeadline = rows.every(({ role }) => role === 'headline')
  const runs = isEveryHeadline ? runsBy([...bare.keys()], (k) => endOf(bare[k] ?? '')) : []
  if (runs.length > 1 && runs.every((run) => run.length > 1)) {
    return runs.flatMap((run) => {
      const end = sharedEnd(run.map((k) => bare[k] ?? ''))
      return run.map((k, place) => ({
        whole: wholes[k] ?? '',
        short: (bare[k] ?? '').slice(0, (bare[k] ?? '').length - end.length),
        heading: place === 0 ? end.slice(parting.length) : null,
        isUnder: end !== '',
      }))
    })
  }
  let above = ''
  return rows.map(({ role }, k) => {
    const whole = wholes[k] ?? ''
    const own = bare[k] ?? ''
    const goesOn = role === 'beside' && above !== '' && own.startsWith(`${above}${parting}`)
    if (role === 'headline') above = own
    return { whole, short: goesOn ? own.slice(above.length + parting.length) : own, heading: null, isUnder: goesOn }
  })
}
