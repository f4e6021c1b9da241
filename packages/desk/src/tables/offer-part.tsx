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
  const { file, rows, sentences, mended, state, counts, preview, refusal, questions } = offered
  const isAsked =
    refusal?.code === 'exchange/sheet/effort-unmapped' && questions.some(({ asks }) => asks.id.startsWith('exchange/ask/effort'))
  return (
    <div className="offer" aria-busy={isBusy}>
      <p className="told" role="status">
        {isAsked ? say('tables/asks-first', { file, read: rows.read }) : say('tables/read', { file, ...rows })}
      </p>
      {/* What is asked below needs no second, sterner word above. */}
      {refusal === null || isAsked ? null : <Trouble error={new DoorError(refusal)} />}
      {state === 'known' ? <p>{say('tables/known')}</p> : null}
      {mended === null ? null : <MendedPart mended={mended} />}
      <QuestionsPart offered={offered} onMapping={(mapping) => onMapping({ ...mapping })} />
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
      <ColumnsPart offered={offered} onMapping={(mapping) => onMapping({ ...mapping })} />
      <FirstRows rows={preview} />
      <p className="accept">
        {state === 'known' || state === 'refused' ? null : (
          <button type="button" aria-disabled={isBusy} onClick={isBusy ? undefined : onAccept}>
            {isBusy ? say('tables/anew') : say(state === 'mended' ? 'tables/accept-mended' : 'tables/accept', { counts })}
          </button>
        )}{' '}
        <button type="button" className="quiet" onClick={onOther}>
          {say('tables/other')}
        </button>
      </p>
    </div>
  )
}
