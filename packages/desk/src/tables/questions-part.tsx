import { type AnswerForm, type Asked, answerForm, isOpen, type Mapping, saidSoFar, withAnswer } from '@thrum/exchange'
import type { OfferTold } from '@thrum/server/api'
import { useEffect, useId, useState } from 'react'
import { useSay } from '../say/say.ts'

type Put = (answer: string | number) => void

/** A number that is typed, and put when it is a good one; what is no good one is told, and goes back to what is said. */
function NumberAnswer({
  form,
  said,
  onPut,
}: {
  readonly form: Extract<AnswerForm, { is: 'number' }>
  readonly said: string | number | null
  readonly onPut: Put
}) {
  const say = useSay()
  const shown = said === null ? '' : String(said)
  const [typed, setTyped] = useState(shown)
  const id = useId()
  useEffect(() => setTyped(shown), [shown])
  const value = Number(typed.replace(',', '.'))
  const isGood = typed.trim() !== '' && value > form.above && value <= form.most && (!form.isWhole || Number.isInteger(value))
  const isBad = typed.trim() !== '' && !isGood
  const put = (): void => {
    if (!isGood) setTyped(shown)
    else if (value !== said) onPut(value)
  }
  return (
    <div className="answer-number">
      <label>
        {say(`tables/answer/${form.name}`)}
        <input
          inputMode="decimal"
          size={6}
          value={typed}
          aria-invalid={isBad}
          aria-describedby={isBad ? id : undefined}
          onChange={({ target }) => setTyped(target.value)}
          onBlur={put}
          onKeyDown={({ key }) => {
            if (key === 'Enter') put()
          }}
        />
      </label>
      {isBad ? (
        <p className="note" id={id} role="status">
          {say('tables/answer/range', { above: form.above, most: form.most, whole: form.isWhole ? 'yes' : 'no' })}
        </p>
      ) : null}
    </div>
  )
}

/** One of some words. */
function WordsAnswer({
  form,
  said,
  label,
  onPut,
}: {
  readonly form: Extract<AnswerForm, { is: 'words' }>
  readonly said: string | number | null
  readonly label: string
  readonly onPut: Put
}) {
  const say = useSay()
  const name = form.name === 'role' ? 'tables/role' : `tables/answer/${form.name}`
  const wordOf = (own: string): string => (form.name === 'unit' ? own : say(`${name}/${own.replaceAll(' ', '-')}`))
  // What a column is taken for may be none of what is offered here.
  const words = said === null || form.words.includes(String(said)) ? form.words : [String(said), ...form.words]
  return (
    <select aria-label={label} value={said === null ? '' : String(said)} onChange={({ target }) => onPut(target.value)}>
      {said === null ? <option value="">{say('tables/answer/none')}</option> : null}
      {words.map((own) => (
        <option key={own} value={own}>
          {wordOf(own)}
        </option>
      ))}
    </select>
  )
}

/** How many minutes each watch lasted, or that nobody wrote it down: without either nothing can be said but shares. */
function NotRecorded({ mapping, onPut }: { readonly mapping: Mapping; readonly onPut: Put }) {
  const say = useSay()
  return mapping.effort === undefined ? (
    <button type="button" onClick={() => onPut('not recorded')}>
      {say('tables/answer/not-recorded')}
    </button>
  ) : (
    <span className="note">{say('tables/answer/shares-only')}</span>
  )
}

/** What a person has to decide about a table, each with its answer beside it. */
export function QuestionsPart({
  offered,
  onMapping,
}: {
  readonly offered: OfferTold
  readonly onMapping: (mapping: Mapping) => void
}) {
  const say = useSay()
  const id = useId()
  const mapping = offered.mapping as unknown as Mapping
  const open = offered.questions.filter(({ asks, header }) => isOpen({ id: asks.id, header }, mapping))
  if (open.length === 0) return null
  return (
    <section className="asks" aria-labelledby={id}>
      <h2 id={id}>{say('tables/questions')}</h2>
      <ul>
        {open.map(({ header, asks }) => {
          const asked: Asked = { id: asks.id, header }
          const form = answerForm(asked, mapping)
          const said = saidSoFar(asked, mapping)
          const put: Put = (answer) => onMapping(withAnswer(asked, mapping, answer))
          return (
            <li key={`${asks.id} ${header}`}>
              <p>{say.saying(asks)}</p>
              {form?.is === 'number' ? <NumberAnswer form={form} said={said} onPut={put} /> : null}
              {form?.is === 'number' && form.name === 'minutes' ? <NotRecorded mapping={mapping} onPut={put} /> : null}
              {form?.is === 'words' ? <WordsAnswer form={form} said={said} label={say.saying(asks)} onPut={put} /> : null}
            </li>
          )
        })}
      </ul>
    </section>
  )
}
