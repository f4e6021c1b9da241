import { roles } from '@thrum/exchange'
import { Scroll } from '../frame/scroll.tsx'
import { useSay } from '../say/speaker.tsx'
import type { MappingHeld, Offered } from './offered.ts'

function Columns({
  offered,
  isBusy,
  onMapping,
}: {
  readonly offered: Offered
  readonly isBusy: boolean
  readonly onMapping: (mapping: MappingHeld) => void
}) {
  const say = useSay()
  const { mapping, reasons } = offered
  const change = (place: number, as: string): void =>
    onMapping({ ...mapping, columns: mapping.columns.map((own, k) => (k === place ? { ...own, as } : own)) })
  return (
    <Scroll label={say('tables/columns')}>
      <table>
        <thead>
          <tr>
            <th scope="col">{say('tables/column')}</th>
            <th scope="col">{say('tables/as')}</th>
            <th scope="col">{say('tables/because')}</th>
          </tr>
        </thead>
        <tbody>
          {mapping.columns.map(({ header, as }, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two columns may have one header
            <tr key={k}>
              <th scope="row">{header}</th>
              <td>
                <select
                  aria-label={`${header} ${say('tables/as')}`}
                  value={as}
                  disabled={isBusy}
                  onChange={({ target }) => change(k, target.value)}
                >
                  {roles.map((own) => (
                    <option key={own} value={own}>
                      {own}
                    </option>
                  ))}
                </select>
              </td>
              <td>{reasons.find((own) => own.header === header)?.because}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  )
}

function FirstRows({ preview }: { readonly preview: Offered['preview'] }) {
  const say = useSay()
  return (
    <details>
      <summary>{say('tables/first-rows')}</summary>
      <Scroll label={say('tables/first-rows')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{say('counts/line')}</th>
              {preview.headers.map((header, k) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: two columns may have one header
                <th scope="col" key={k}>
                  {header}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {preview.rows.map(({ line, cells }) => (
              <tr key={line}>
                <th scope="row">{line}</th>
                {cells.map((cell, k) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a cell has no other name than its column
                  <td key={k}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  )
}

function List({ heading, texts }: { readonly heading: string; readonly texts: readonly string[] }) {
  if (texts.length === 0) return null
  return (
    <section>
      <h2>{heading}</h2>
      <ul>
        {texts.map((text, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: sentences of a list that is never changed
          <li key={k}>{text}</li>
        ))}
      </ul>
    </section>
  )
}

/** What a file would become: each column, each row, what waits for a person; accepted once. */
export function OfferPart({
  file,
  offered,
  isBusy,
  onMapping,
  onAccept,
  onOther,
}: {
  readonly file: string
  readonly offered: Offered
  readonly isBusy: boolean
  readonly onMapping: (mapping: MappingHeld) => void
  readonly onAccept: () => void
  readonly onOther: () => void
}) {
  const say = useSay()
  const { rows, questions, becomes, mended, state, counts, preview } = offered
  return (
    <div className="offer" aria-busy={isBusy}>
      <p className="told" role="status">
        {say('tables/read', { file, ...rows })}
      </p>
      {state === 'known' ? <p>{say('tables/known')}</p> : null}
      {state === 'mended' ? <List heading={say('tables/mended')} texts={mended} /> : null}
      <List
        heading={say('tables/questions')}
        texts={questions.map(({ asks, proposed }) => (proposed === null ? asks : `${asks} (${proposed})`))}
      />
      {state === 'new' ? <List heading={say('tables/becomes')} texts={becomes} /> : null}
      <h2>{say('tables/columns')}</h2>
      <Columns offered={offered} isBusy={isBusy} onMapping={onMapping} />
      <FirstRows preview={preview} />
      <p className="accept">
        {state === 'known' ? null : (
          <button type="button" disabled={isBusy} onClick={onAccept}>
            {say('tables/accept', { counts })}
          </button>
        )}{' '}
        <button type="button" className="quiet" disabled={isBusy} onClick={onOther}>
          {say('tables/other')}
        </button>
      </p>
    </div>
  )
}
