import type { Snapshot } from '@thrum/model'
import type { AskedTold } from '../api/question.ts'

interface Marked {
  readonly question: string
  readonly asked: string
  readonly at: string
}

const keyOf = ({ question, asked }: Pick<Marked, 'question' | 'asked'>): string => `${question}\n${asked}`

/** A moment of the log without the counter and the device behind it. */
const momentOf = (at: string): string => at.split('/', 1)[0] ?? at

/** Options of what was asked, back from its key. */
function optionsOf(asked: string): AskedTold[number]['options'] {
  try {
    const read: unknown = JSON.parse(asked)
    return typeof read === 'object' && read !== null ? (read as AskedTold[number]['options']) : {}
  } catch {
    // A key of another version: it can be told, and not be asked again.
    return {}
  }
}

/** Questions that were looked at, given an S, or pinned; the latest first. */
export function askedBefore(snapshot: Snapshot): AskedTold {
  const { looks, worths, pins, digest } = snapshot
  const all = new Map<string, Marked>()
  for (const own of [...looks, ...worths, ...pins] as readonly Marked[]) {
    const known = all.get(keyOf(own))
    if (known === undefined || known.at < own.at) all.set(keyOf(own), own)
  }
  return [...all.values()]
    .sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : 0))
    .map(({ question, asked, at }) => {
      const isMine = (own: Marked): boolean => own.question === question && own.asked === asked
      const mine = looks.filter(isMine)
      const last = mine.at(-1)
      const pin = pins.find(isMine)
      return {
        question,
        asked,
        options: pin === undefined ? optionsOf(asked) : { ...(pin.options as AskedTold[number]['options']) },
        looks: new Set(mine.map((own) => own.digest)).size,
        lastAt: momentOf(last?.at ?? at),
        lastDigest: last?.digest ?? null,
        lastVerdict: last?.verdict ?? null,
        worth: worths.findLast(isMine)?.worth ?? null,
        pinned: pin !== undefined,
        stale: last?.digest !== digest,
      }
    })
}
