import type { Answer } from '@thrum/model'
import { useSay } from '../say/say.ts'

/** How it was worked out: choices, equation, checks and sources. */
export function MethodPart({ answer }: { readonly answer: Answer }) {
  const say = useSay()
  const { method, receipt } = answer
  return (
    <details className="method">
      <summary>{say('heading/method', { method: method.name })}</summary>
      <ul>
        {method.choices.map((own) => (
          <li key={say.saying(own)}>{say.saying(own)}</li>
        ))}
        {method.checks.map((own) => (
          <li key={say.saying(own)}>{say.saying(own)}</li>
        ))}
      </ul>
      <p className="equation">{method.equation}</p>
      <h3>{say('heading/sources')}</h3>
      <ul>
        {method.references.map(({ source, trust }) => (
          <li key={source}>
            {source} <span className="note">{say(`trust/${trust.split(',')[0]?.replaceAll(' ', '-') ?? ''}`)}</span>
          </li>
        ))}
      </ul>
      <p className="note">
        {say('recipe', {
          digest: receipt.digest.slice(0, 12),
          selected: receipt.rows.selected,
          of: receipt.rows.of,
          seed: receipt.seed,
          version: receipt.thrum,
        })}
      </p>
    </details>
  )
}
