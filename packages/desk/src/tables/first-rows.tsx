import type { OfferTold } from '@thrum/server/api'
import { Scroll } from '../frame/scroll.tsx'
import { useSay } from '../say/say.ts'

/** The first rows: as they were written, and what each becomes. */
export function FirstRows({ rows }: { readonly rows: OfferTold['preview'] }) {
  const say = useSay()
  const headers = rows[0]?.cells.map(({ header }) => header) ?? []
  return (
    <details>
      <summary>{say('tables/first-rows')}</summary>
      <Scroll label={say('tables/first-rows')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{say('counts/line')}</th>
              {headers.map((header, k) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: two columns may have one header
                <th scope="col" key={k}>
                  {say.cell(header)}
                </th>
              ))}
              <th scope="col">{say('tables/row-becomes')}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ line, cells, state, because, becomes }) => (
              <tr key={line}>
                <th scope="row">{line}</th>
                {cells.map(({ written }, k) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a cell has no other name than its column
                  <td key={k}>{say.cell(written).slice(0, 60)}</td>
                ))}
                <td>
                  <b>{say(`tables/state/${state}`)}</b> {because.map((own) => say.saying(own)).join(' ')}{' '}
                  <span className="note">{becomes.map(({ column, value }) => `${column} ${say.cell(value)}`).join(' · ')}</span>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  )
}
