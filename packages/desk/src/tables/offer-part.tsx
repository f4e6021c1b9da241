import { roles } from '@thrum/exchange'
import type { OfferTold } from '@thrum/server/api'
import { DoorError } from '../door/request.ts'
import { Scroll } from '../frame/scroll.tsx'
import { Trouble } from '../frame/trouble.tsx'
import { type Told, useSay } from '../say/speaker.tsx'
import { FirstRows } from './first-rows.tsx'
import { MendedPart } from './mended-part.tsx'

type Mapping = OfferTold['mapping']
interface MappedColumn {
  readonly header: string
  readonly as: string
}

const columnsOf = (mapping: Mapping): readonly MappedColumn[] => (mapping.columns ?? []) as unknown as readonly MappedColumn[]

function Columns({
  offered,
  isBusy,
  onMapping,
}: {
  readonly offered: OfferTold
  readonly isBusy: boolean
  readonly onMapping: (mapping: Mapping) => void
}) {
  const say = useSay()
  const { mapping, reasons, columns } = offered
  const mapped = columnsOf(mapping)
  const change = (place: number, as: string): void => {
    const changed = mapped.map((own, k) => (k === place ? { ...own, as } : own))
    onMapping({ ...mapping, columns: changed as unknown as Mapping['columns'] } as Mapping)
  }
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
          {mapped.map(({ header, as }, k) => {
            const because = reasons.find((own) => own.header === header)?.because
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
                <td>{because === undefined ? '' : say.saying(because)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </Scroll>
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
  offered,
  isBusy,
  onMapping,
  onAccept,
  onOther,
}: {
  readonly offered: OfferTold
  readonly isBusy: boolean
  readonly onMapping: (mapping: Mapping) => void
  readonly onAccept: () => void
  readonly onOther: () => void
}) {
  const say = useSay()
  const { file, rows, questions, sentences, mended, state, counts, preview, refusal } = offered
  const told = (own: Told): string => say.saying(own)
  return (
    <div className="offer" aria-busy={isBusy}>
      <p className="told" role="status">
        {say('tables/read', { file, ...rows })}
      </p>
      {refusal === null ? null : <Trouble error={new DoorError(refusal.code, refusal.text, refusal.remedy)} />}
      {state === 'known' ? <p>{say('tables/known')}</p> : null}
      {mended === null ? null : <MendedPart mended={mended} />}
      <List
        heading={say('tables/questions')}
        texts={questions.map(({ asks, proposed }) => (proposed === null ? told(asks) : `${told(asks)} (${say.cell(proposed)})`))}
      />
      {state === 'new' ? <List heading={say('tables/becomes')} texts={sentences.map(told)} /> : null}
      <h2>{say('tables/columns')}</h2>
      <Columns offered={offered} isBusy={isBusy} onMapping={onMapping} />
      <FirstRows rows={preview} />
      <p className="accept">
        {state === 'known' || state === 'refused' ? null : (
          <button type="button" disabled={isBusy} onClick={onAccept}>
            {say(state === 'mended' ? 'tables/accept-mended' : 'tables/accept', { counts })}
          </button>
        )}{' '}
        <button type="button" className="quiet" disabled={isBusy} onClick={onOther}>
          {say('tables/other')}
        </button>
      </p>
    </div>
  )
}
