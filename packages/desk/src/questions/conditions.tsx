import { type FormEvent, useState } from 'react'
import { useSay } from '../say/say.ts'
import { Blank } from './blank.tsx'

/** A blank filled with conditions that counts have to fulfil, such as `observer=walker 1` or `date>=2032-07-01`. */
export function Conditions({
  label,
  chosen,
  none,
  some,
  onChoose,
}: {
  readonly label: string
  readonly chosen: readonly string[]
  readonly none: string
  /** Words around those there are. */
  readonly some: string
  readonly onChoose: (conditions: readonly string[]) => void
}) {
  const say = useSay()
  const [typed, setTyped] = useState('')
  const list = new Intl.ListFormat(say.language, { style: 'long', type: 'conjunction' })
  const add = (event: FormEvent): void => {
    event.preventDefault()
    if (typed.trim() === '') return
    onChoose([...chosen, typed.trim()])
    setTyped('')
  }
  return (
    <Blank label={label} value={chosen.length === 0 ? none : say(some, { conditions: list.format(chosen) })}>
      {(close) => (
        <>
          {chosen.map((own) => (
            <label key={own}>
              <input type="checkbox" checked onChange={() => onChoose(chosen.filter((other) => other !== own))} />
              <span>{own}</span>
            </label>
          ))}
          <form onSubmit={add}>
            <label>
              <span>{say('conditions/how')}</span>
              <input value={typed} onChange={({ target }) => setTyped(target.value)} placeholder="observer=walker 1" />
            </label>
            <button type="submit" disabled={typed.trim() === ''}>
              {say('conditions/add')}
            </button>
          </form>
          <button type="button" onClick={close}>
            {say('done')}
          </button>
        </>
      )}
    </Blank>
  )
}
