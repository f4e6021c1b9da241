import type { MendedTold } from '@thrum/server/api'
import { useSay } from '../say/say.ts'

/** Differences that are listed; the rest is counted. */
const mostListed = 20

/** What accepting a mended file would do: which cells become corrections, what is new, what is gone. */
export function MendedPart({ mended }: { readonly mended: MendedTold }) {
  const say = useSay()
  const { file, day, equal, changed, added, gone, kept } = mended
  return (
    <section>
      <h2>{say('tables/mended', { file, day })}</h2>
      <p>{say('tables/mended/told', { equal, changed: changed.length, added, gone: gone.length, kept: kept.length })}</p>
      <ul>
        {changed.slice(0, mostListed).map(({ line, column, of, from, to }) => (
          <li key={`${of} ${column}`}>{say('tables/mended/change', { line, column, from: say.cell(from), to: say.cell(to) })}</li>
        ))}
      </ul>
    </section>
  )
}
