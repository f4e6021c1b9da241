import { type MappedColumn, type Mapping, type Role, roles, withRole } from '@thrum/exchange'
import type { OfferTold } from '@thrum/server/api'
import { useEffect, useState } from 'react'
import { Scroll } from '../frame/scroll.tsx'
import { useSay } from '../say/say.ts'

/** The kind that a column counts: two columns of one kind are summed. */
function KindOf({ column, onKind }: { readonly column: MappedColumn; readonly onKind: (kind: string) => void }) {
  const say = useSay()
  const said = column.kind ?? column.header
  const [typed, setTyped] = useState(said)
  useEffect(() => setTyped(said), [said])
  const put = (): void => {
    if (typed.trim() === '') setTyped(said)
    else if (typed.trim() !== said) onKind(typed.trim())
  }
  return (
    <input
      className="kind"
      aria-label={say('tables/kind', { header: column.header })}
      value={typed}
      onChange={({ target }) => setTyped(target.value)}
      onBlur={put}
      onKeyDown={({ key }) => {
        if (key === 'Enter') put()
      }}
    />
  )
}

/** What each column is taken for and why; each can be taken for something else. */
export function ColumnsPart({
  offered,
  onMapping,
}: {
  readonly offered: OfferTold
  readonly onMapping: (mapping: Mapping) => void
}) {
  const say = useSay()
  const { reasons, columns } = offered
  const mapping = offered.mapping as unknown as Mapping
  const nameKind = (place: number, kind: string): void =>
    onMapping({ ...mapping, columns: mapping.columns.map((own, k) => (k === place ? { ...own, kind } : own)) })
  return (
    <Scroll label={say('tables/columns')}>
      <table>
        <thead>
          <tr>
            <th scope="col">{say('tables/column')}</th>
            <th scope="col">{say('tables/samples')}</th>
            <th scope="col">{say('tables/as')}</th>
            <th scope="col">{say('tables/because')}</th>
          </tr>
        </thead>
        <tbody>
          {mapping.columns.map((column, k) => {
            const { header, as } = column
            const proposed = reasons.find((own) => own.header === header)
            const because = proposed === undefined || proposed.as !== as ? null : proposed.because
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: two columns may have one header
              <tr key={k}>
                <th scope="row">{say.cell(header)}</th>
                <td className="note">
                  {columns
                    .find((own) => own.header === header)
                    ?.samples.slice(0, 3)
                    .map((sample) => say.cell(sample).slice(0, 40))
                    .join(', ')}
                </td>
                <td>
                  <select
                    aria-label={`${say.cell(header)} ${say('tables/as')}`}
                    value={as}
                    onChange={({ target }) => onMapping(withRole(mapping, k, target.value as Role))}
                  >
                    {roles.map((own) => (
                      <option key={own} value={own}>
                        {say(`tables/role/${own}`)}
                      </option>
                    ))}
                  </select>
                  {as === 'tally' ? <KindOf column={column} onKind={(kind) => nameKind(k, kind)} /> : null}
                </td>
                <td>{because === null ? say('tables/you-say') : say.saying(because)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </Scroll>
  )
}
