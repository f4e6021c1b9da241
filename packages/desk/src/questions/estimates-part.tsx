import type { Estimate } from '@thrum/model'
import { Scroll } from '../frame/scroll.tsx'
import { useSay } from '../say/say.ts'
import { estimateWords, intervalWords } from './value-words.ts'

/** Every number of an answer, by its unit. */
export function EstimatesPart({ estimates }: { readonly estimates: readonly Estimate[] }) {
  const say = useSay()
  if (estimates.length === 0) return null
  const byUnit = Map.groupBy(estimates, ({ unit }) => say.saying(unit))
  return (
    <details className="estimates">
      <summary>{say('heading/estimates', { estimates: estimates.length })}</summary>
      {[...byUnit].map(([unit, rows]) => (
        <Scroll key={unit} label={unit}>
          <table>
            <caption>{unit}</caption>
            <thead>
              <tr>
                <th scope="col">{say('estimates/what')}</th>
                <th scope="col">{say('estimates/value')}</th>
                <th scope="col">{say('estimates/interval')}</th>
                <th scope="col">{say('estimates/rests-on')}</th>
                <th scope="col">{say('estimates/method')}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((own) => (
                <tr key={own.id} className={own.role}>
                  <th scope="row">{say.saying(own.label)}</th>
                  <td>{estimateWords(own, say)}</td>
                  <td>{intervalWords(own, say)}</td>
                  <td>{say(`counts/${own.counts.replaceAll(' ', '-')}`, { n: own.n })}</td>
                  <td>{say.saying(own.method)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      ))}
    </details>
  )
}
