import type { Mapping } from '@thrum/exchange'
import type { OfferTold } from '@thrum/server/api'
import { type FormEvent, useId, useState } from 'react'
import { useSay } from '../say/say.ts'
import { type AnswerForm, type Asked, answerForm, isOpen, saidSoFar, withAnswer } from './mapping-answers.ts'

type Put = (answer: string | number) => void

/** A number that is typed, and put when it is whole. */
function NumberAnswer({
  form,
  said,
  isBusy,
  onPut,
}: {
  readonly form: Extract<AnswerForm, { is: 'number' }>
  readonly said: string | number | null
  readonly isBusy: boolean
  readonly onPut: Put
}) {
  const say = useSay()
  const [typed, setTyped] = useState(said === null ? '' : String(said))
  const value = Number(typed.replace(',', '.'))
  const isGood = typed.trim() !== '' && value > form.above && value <= form.most
  const put = (event: FormEvent): void => {
    event.preventDefault()
    if (isGood && value !== said) onPut(value)
  }
  return (
    <form className="answer-number" onSubmit={put}>
      <label>
        {say(`tables/answer/${form.name}`)}
        <input
          inputMode="decimal"
          size={6}
          value={typed}
          disabled={isBusy}
          aria-invalid={typed.trim() !== '' && !isGood}
          onChange={({ target }) => setTyped(target.value)}
          onBlur={put}
        />
      </label>
    </form>
  )
}

/** One of some words. */
function WordsAnswer({
  form,
  said,
  label,
  isBusy,
  onPut,
}: {
  readonly form: Extract<AnswerForm, { is: 'words' }>
  readonly said: string | number | null
  readonly label: string
  readonly isBusy: boolean
  readonly onPut: Put
}) {
  const say = useSay()
  const name = form.name === 'role' ? 'tables/role' : `tables/answer/${form.name}`
  const wordOf = (own: string): string => (form.name === 'unit' ? own : say(`${name}/${own.replaceAll(' ', '-')}`))
  return (
    <select
      aria-label={label}
      value={said === null ? '' : String(said)}
      disabled={isBusy}
      onChange={({ target }) => onPut(target.value)}
    >
      {said === null ? <option value="">{say('tables/answer/none')}</option> : null}
      {form.words.map((own) => (
        <option key={own} value={own}>
          {wordOf(own)}
        </option>
      ))}
    </select>
  )
}

/** How many minutes each watch lasted, or that nobody wrote it down: without either nothing can be said but shares. */
function NotRecorded({ mapping, isBusy, onPut }: { readonly mapping: Mapping; readonly isBusy: boolean; readonly onPut: Put }) {
  const say = useSay()
  return mapping.effort === undefined ? (
    <button type="button" className="quiet" disabled={isBusy} onClick={() => onPut('not recorded')}>
      {say('tables/answer/not-recorded')}
    </button>
  ) : (
    <span className="note">{say('tables/answer/shares-only')}</span>
  )
}

/** What a person has to decide about a table, each with its answer beside it. */
export function QuestionsPart({
  offered,
  isBusy,
  onMapping,
}: {
  readonly offered: OfferTold
  readonly isBusy: boolean
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
              {form?.is === 'number' ? (
                <NumberAnswer key={String(said)} form={form} said={said} isBusy={isBusy} onPut={put} />
              ) : null}
              {form?.is === 'number' && form.name === 'minutes' ? (
                <NotRecorded mapping={mapping} isBusy={isBusy} onPut={put} />
              ) : null}
              {form?.is === 'words' ? (
                <WordsAnswer form={form} said={said} label={say.saying(asks)} isBusy={isBusy} onPut={put} />
              ) : null}
            </li>
          )
        })}
      </ul>
    </section>
  )
}
