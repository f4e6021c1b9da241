import type { OfferTold } from '@thrum/server/api'
import { DoorError } from '../door/request.ts'
import { Trouble } from '../frame/trouble.tsx'
import { useSay } from '../say/say.ts'
import { ColumnsPart } from './columns-part.tsx'
import { FirstRows } from './first-rows.tsx'
import { MendedPart } from './mended-part.tsx'
import { QuestionsPart } from './questions-part.tsx'

/** What a file would become: what waits for a person, each column, each row; accepted once. */
export function OfferPart({
  offered,
  isBusy,
  onMapping,
  onAccept,
  onOther,
}: {
  readonly offered: OfferTold
  readonly isBusy: boolean
  readonly onMapping: (mapping: OfferTold['mapping']) => void
  readonly onAccept: () => void
  readonly onOther: () => void
}) {
  const say = useSay()
  const { file, rows, sentences, mended, state, counts, preview, refusal } = offered
  return (
    <div className="offer" aria-busy={isBusy}>
      <p className="told" role="status">
        {say('tables/read', { file, ...rows })}
      </p>
      {refusal === null ? null : <Trouble error={new DoorError(refusal)} />}
      {state === 'known' ? <p>{say('tables/known')}</p> : null}
      {mended === null ? null : <MendedPart mended={mended} />}
      <QuestionsPart offered={offered} isBusy={isBusy} onMapping={(mapping) => onMapping({ ...mapping })} />
      {state === 'new' && sentences.length > 0 ? (
        <section>
          <h2>{say('tables/becomes')}</h2>
          <ul>
            {sentences.map((own) => (
              <li key={say.saying(own)}>{say.saying(own)}</li>
            ))}
          </ul>
        </section>
      ) : null}
      <h2>{say('tables/columns')}</h2>
      <ColumnsPart offered={offered} isBusy={isBusy} onMapping={(mapping) => onMapping({ ...mapping })} />
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
