import { useQueryClient } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { ProjectTold } from '@thrum/server/api'
import { type FormEvent, useState } from 'react'
import { send } from '../door/request.ts'
import { Trouble } from '../frame/trouble.tsx'
import { useSay } from '../say/say.ts'

interface FieldTyped {
  readonly field: string
  readonly crop: string
}

/** Fields by hand: names and crops, one after the other. */
function FieldsByHand({ onDone }: { readonly onDone: () => void }) {
  const say = useSay()
  const [typed, setTyped] = useState<readonly FieldTyped[]>([{ field: '', crop: '' }])
  const [trouble, setTrouble] = useState<unknown>(null)
  const change = (place: number, part: Partial<FieldTyped>): void =>
    setTyped(typed.map((own, k) => (k === place ? { ...own, ...part } : own)))
  const keep = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const named = typed.filter(({ field, crop }) => field.trim() !== '' && crop.trim() !== '')
    try {
      await send(
        'fields',
        named.map(({ field, crop }) => ({ field: field.trim(), crop: crop.trim() })),
      )
      onDone()
    } catch (error) {
      setTrouble(error)
    }
  }
  return (
    <form className="fields" onSubmit={(event) => void keep(event)}>
      {typed.map(({ field, crop }, k) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines of a form that is being typed have no other name than their place
        <p key={k}>
          <label>
            {say('begin/fields/name')}
            <input value={field} onChange={({ target }) => change(k, { field: target.value })} />
          </label>
          <label>
            {say('begin/fields/crop')}
            <input value={crop} onChange={({ target }) => change(k, { crop: target.value })} />
          </label>
        </p>
      ))}
      <p>
        <button
          type="button"
          className="quiet"
          onClick={() => setTyped([...typed, { field: '', crop: typed.at(-1)?.crop ?? '' }])}
        >
          {say('begin/fields/more')}
        </button>
        <button type="submit">{say('begin/fields/keep')}</button>
      </p>
      {trouble === null ? null : <Trouble error={trouble} />}
    </form>
  )
}

/** A project without counts: three honest ways in. */
export function BeginPart({ project }: { readonly project: ProjectTold }) {
  const say = useSay()
  const queries = useQueryClient()
  const [byHand, setByHand] = useState(false)
  const [trouble, setTrouble] = useState<unknown>(null)
  const look = async (): Promise<void> => {
    try {
      await send('projects', { how: 'demonstration' })
      await queries.invalidateQueries()
    } catch (error) {
      setTrouble(error)
    }
  }
  return (
    <div className="begin">
      <title>{`${say('begin')} – Thrum`}</title>
      <h1>{say('begin')}</h1>
      <p>{say('begin/fields/there', { fields: project.fields.length })}</p>
      <ol className="ways">
        <li>
          <h2>{say('begin/table')}</h2>
          <p>{say('begin/table/how')}</p>
          <Link className="button" to="/tables">
            {say('begin/table')}
          </Link>
        </li>
        <li>
          <h2>{say('begin/demonstration')}</h2>
          <p>{say('begin/demonstration/how')}</p>
          <button type="button" onClick={() => void look()}>
            {say('begin/demonstration')}
          </button>
        </li>
        <li>
          <h2>{say('begin/hand')}</h2>
          <p>{say('begin/hand/how')}</p>
          {byHand ? (
            <FieldsByHand
              onDone={() => {
                setByHand(false)
                void queries.invalidateQueries()
              }}
            />
          ) : (
            <button type="button" onClick={() => setByHand(true)}>
              {say('begin/hand')}
            </button>
          )}
        </li>
      </ol>
      {trouble === null ? null : <Trouble error={trouble} />}
    </div>
  )
}
