import { dayLocale } from '@thrum/report'
import { useId, useState } from 'react'
import { useSay } from '../say/say.ts'
import { Blank } from './blank.tsx'

export interface Choice {
  readonly value: string
  readonly label: string
  /** What the project says of it, such as how many were counted. */
  readonly note?: string
}

/** A blank filled with one of several. */
export function OneOf({
  label,
  choices,
  chosen,
  none,
  onChoose,
  isWanting = false,
  wanting = '…',
}: {
  readonly label: string
  readonly choices: readonly Choice[]
  readonly chosen: string | undefined
  /** Words for none of them; without, one has to be chosen. */
  readonly none?: string
  readonly onChoose: (value: string | undefined) => void
  readonly isWanting?: boolean
  /** What stands there before one is chosen. */
  readonly wanting?: string
}) {
  const name = useId()
  const all = none === undefined ? choices : [{ value: '', label: none }, ...choices]
  const shown = all.find(({ value }) => value === (chosen ?? ''))?.label ?? chosen ?? wanting
  return (
    <Blank label={label} value={shown} isWanting={isWanting}>
      {(close) =>
        all.map(({ value, label: text, note }) => (
          <label key={value}>
            <input
              type="radio"
              name={name}
              checked={value === (chosen ?? '')}
              onChange={() => onChoose(value === '' ? undefined : value)}
              onClick={close}
              onKeyDown={(event) => {
                if (event.key === 'Enter') close()
              }}
            />
            <span>{text}</span>
            {note === undefined ? null : <span className="note">{note}</span>}
          </label>
        ))
      }
    </Blank>
  )
}

/** A blank filled with some of several, in the order in which they were chosen; none chosen means all of them. */
export function SomeOf({
  label,
  choices,
  chosen,
  all,
  onChoose,
}: {
  readonly label: string
  readonly choices: readonly Choice[]
  readonly chosen: readonly string[]
  /** Words for all of them. */
  readonly all: string
  readonly onChoose: (values: readonly string[]) => void
}) {
  const say = useSay()
  const list = new Intl.ListFormat(say.language, { style: 'long', type: 'conjunction' })
  const shown = chosen.length === 0 ? all : list.format(chosen)
  return (
    <Blank label={label} value={shown}>
      {(close) => (
        <>
          <label>
            <input type="checkbox" checked={chosen.length === 0} onChange={() => onChoose([])} />
            <span>{all}</span>
          </label>
          {choices.map(({ value, label: text, note }) => (
            <label key={value}>
              <input
                type="checkbox"
                checked={chosen.includes(value)}
                onChange={({ target }) => onChoose(target.checked ? [...chosen, value] : chosen.filter((own) => own !== value))}
              />
              <span>{text}</span>
              {note === undefined ? null : <span className="note">{note}</span>}
            </label>
          ))}
          <button type="button" onClick={close}>
            {say('done')}
          </button>
        </>
      )}
    </Blank>
  )
}

/** A blank filled with a number above a limit: one of those suggested, or typed. */
export function NumberAbove({
  label,
  above,
  chosen,
  suggested,
  told,
  onChoose,
}: {
  readonly label: string
  readonly above: number
  readonly chosen: number | undefined
  readonly suggested: readonly { readonly value: number; readonly note: string }[]
  /** The number in words, or that none is chosen yet. */
  readonly told: string
  readonly onChoose: (value: number) => void
}) {
  const say = useSay()
  const [typed, setTyped] = useState('')
  const value = Number(typed.replace(',', '.'))
  const isFit = typed !== '' && Number.isFinite(value) && value > above
  return (
    <Blank label={label} value={told} isWanting={chosen === undefined}>
      {(close) => (
        <>
          {suggested.map((own) => (
            <button
              type="button"
              key={own.value}
              className="choice"
              onClick={() => {
                onChoose(own.value)
                close()
              }}
            >
              {new Intl.NumberFormat(say.language).format(own.value)} <span className="note">{own.note}</span>
            </button>
          ))}
          <form
            onSubmit={(event) => {
              event.preventDefault()
              if (!isFit) return
              onChoose(value)
              close()
            }}
          >
            <label>
              <span>{say('number/other', { above })}</span>
              <input inputMode="decimal" value={typed} size={6} onChange={({ target }) => setTyped(target.value)} />
            </label>
            <button type="submit" disabled={!isFit}>
              {say('done')}
            </button>
          </form>
        </>
      )}
    </Blank>
  )
}

/** A blank filled with a day. */
export function Day({
  label,
  chosen,
  none,
  onChoose,
}: {
  readonly label: string
  readonly chosen: string | undefined
  readonly none: string
  readonly onChoose: (day: string | undefined) => void
}) {
  const say = useSay()
  const shown =
    chosen === undefined
      ? none
      : say('blank/since/on', {
          day: new Intl.DateTimeFormat(dayLocale(say.language), {
            dateStyle: 'long',
            timeZone: 'UTC',
          }).format(new Date(chosen)),
        })
  return (
    <Blank label={label} value={shown}>
      {(close) => (
        <>
          <label>
            <span>{label}</span>
            <input type="date" value={chosen ?? ''} onChange={({ target }) => onChoose(target.value || undefined)} />
          </label>
          <button
            type="button"
            onClick={() => {
              onChoose(undefined)
              close()
            }}
          >
            {none}
          </button>
        </>
      )}
    </Blank>
  )
}
