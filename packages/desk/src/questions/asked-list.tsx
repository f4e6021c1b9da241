import { Link } from '@tanstack/react-router'
import { dayLocale } from '@thrum/report'
import { useAsked } from '../door/project.ts'
import type { AskedTold } from '../door/shapes.ts'
import { useSay } from '../say/say.ts'
import { readAsking } from './asking.ts'
import { askedOptions } from './same-asking.ts'

/** An asking in a few words: its kinds, what is compared, where. */
function toldShortly({ options }: AskedTold): string {
  const { kinds, between, levels, since, by, field, season, crop } = options
  return [kinds, between ?? by, levels, since, field, season, crop]
    .flat()
    .filter((own) => own !== undefined)
    .join(' · ')
}

function One({ own }: { readonly own: AskedTold }) {
  const say = useSay()
  const when = new Intl.DateTimeFormat(dayLocale(say.language), { dateStyle: 'medium' })
  return (
    <li>
      <Link to="/" search={readAsking({ q: own.question, o: askedOptions(own) })}>
        <span className="what">{say(`blank/question/${own.question}`)}</span>
        <span>{toldShortly(own)}</span>
      </Link>
      <span className="note">
        {own.lastVerdict === null ? '' : `${say(`verdict/${own.lastVerdict}`)} · `}
        {own.lastAt === '' ? '' : when.format(new Date(own.lastAt.slice(0, 24)))}
        {own.stale ? ` · ${say('asked/stale')}` : ''}
      </span>
    </li>
  )
}

/** What was asked before: what was pinned first. */
export function AskedList() {
  const say = useSay()
  const { data: asked = [] } = useAsked()
  if (asked.length === 0) return null
  const pinned = asked.filter((own) => own.pinned)
  const others = asked.filter((own) => !own.pinned).slice(0, 12)
  return (
    <nav className="asked-list" aria-labelledby="asked-list">
      <h2 id="asked-list">{say('heading/asked')}</h2>
      {pinned.length === 0 ? null : (
        <>
          <h3>{say('heading/pinned')}</h3>
          <ul>
            {pinned.map((own) => (
              <One key={own.question + own.asked} own={own} />
            ))}
          </ul>
        </>
      )}
      <ul>
        {others.map((own) => (
          <One key={own.question + own.asked} own={own} />
        ))}
      </ul>
    </nav>
  )
}
