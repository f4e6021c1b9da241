import { Link } from '@tanstack/react-router'
import type { Answer, Caution } from '@thrum/model'
import { useSay } from '../say/say.ts'

function One({ caution, selected }: { readonly caution: Caution; readonly selected: number }) {
  const say = useSay()
  const { severity, text, cure, evidence, evidenceRows } = caution
  // Of a design as a whole all rows are evidence: that is told by not opening them all.
  const opens = evidence.length > 0 && evidenceRows < selected
  return (
    <li className={severity}>
      <p>
        <b>{say(`severity/${severity}`)}</b> {say.saying(text)}
      </p>
      {cure === null ? null : <p className="cure">{say('cure', { cure })}</p>}
      {opens ? (
        <p>
          <Link to="/counts" search={{ rows: [...evidence] }}>
            {say('evidence', { rows: evidenceRows, shown: evidence.length })}
          </Link>
        </p>
      ) : null}
    </li>
  )
}

/** What to beware of, the gravest first; each opens its rows. */
export function Cautions({ answer }: { readonly answer: Answer }) {
  const say = useSay()
  const { cautions, receipt } = answer
  if (cautions.length === 0) return null
  return (
    <section aria-labelledby="cautions">
      <h2 id="cautions">{say('heading/cautions')}</h2>
      <ul className="cautions">
        {cautions.map((caution) => (
          <One key={`${caution.code} ${say.saying(caution.text)}`} caution={caution} selected={receipt.rows.selected} />
        ))}
      </ul>
    </section>
  )
}
