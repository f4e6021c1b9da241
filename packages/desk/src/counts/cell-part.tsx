import { useQuery, useQueryClient } from '@tanstack/react-query'
import type { HistoryTold } from '@thrum/server/api'
import { type FormEvent, useEffect, useRef, useState } from 'react'
import { get, send } from '../door/request.ts'
import { Trouble } from '../frame/trouble.tsx'
import { useSay } from '../say/say.ts'

/** A cell of the grid that a person opened. */
export interface OpenCell {
  /** Address of its row. */
  readonly row: string
  readonly line: string
  readonly column: string
  readonly title: string
  readonly value: string
  /** Where the grid has it, to go back to. */
  readonly place: string
}

function Steps({ history, column }: { readonly history: HistoryTold; readonly column: string }) {
  const say = useSay()
  const cell = history.cells.find((own) => own.column === column) ?? history.cells[0]
  if (cell === undefined) return <p className="note">{say('cell/history/none')}</p>
  return (
    <>
      {cell.contested ? <p className="bad">{say('cell/contested')}</p> : null}
      <ol className="steps">
        {cell.brought === null ? null : <li>{say('cell/brought', { value: say.cell(cell.brought) })}</li>}
        {cell.steps.map(({ fact, to, by, at, reason, takenBack }) => (
          <li key={fact}>
            {say('cell/step', {
              to: say.cell(to),
              by,
              at: at.slice(0, 16).replace('T', ' '),
              reason: reason ?? 'none',
              back: takenBack ? 'yes' : 'no',
            })}
          </li>
        ))}
      </ol>
      {cell.steps.length === 0 ? <p className="note">{say('cell/history/none')}</p> : null}
    </>
  )
}

/** A cell with what stands in it, its history, and the way to correct it: a new fact with a reason, the old value stays. */
export function CellPart({
  open,
  canWrite,
  onClose,
}: {
  readonly open: OpenCell
  readonly canWrite: boolean
  readonly onClose: () => void
}) {
  const say = useSay()
  const queries = useQueryClient()
  const place = useRef<HTMLDialogElement>(null)
  const [value, setValue] = useState('')
  const [reason, setReason] = useState('')
  const [state, setState] = useState<'typing' | 'keeping' | 'kept' | 'withdrawn'>('typing')
  const [trouble, setTrouble] = useState<unknown>(null)
  const history = useQuery({
    queryKey: ['history', open.row, open.column],
    queryFn: () => get<HistoryTold>(`history?row=${encodeURIComponent(open.row)}&column=${encodeURIComponent(open.column)}`),
  })
  useEffect(() => place.current?.showModal(), [])
  const act = async (work: Promise<unknown>, done: 'kept' | 'withdrawn'): Promise<void> => {
    setState('keeping')
    setTrouble(null)
    try {
      await work
      setState(done)
      await queries.invalidateQueries()
    } catch (error) {
      setState('typing')
      setTrouble(error)
    }
  }
  const stands = state === 'kept' ? value : open.value
  const correct = (event: FormEvent): void => {
    event.preventDefault()
    void act(send('corrections', { row: open.row, column: open.column, value, reason }), 'kept')
  }
  return (
    <dialog ref={place} className="cell" aria-labelledby="cell" onClose={onClose}>
      <h2 id="cell">{say('cell', { column: open.title, row: open.line })}</h2>
      <p className="note">{history.data?.told}</p>
      {state === 'withdrawn' ? null : <p>{say('cell/stands', { value: stands === '' ? say('cell/blank') : stands })}</p>}
      {canWrite && (state === 'typing' || state === 'keeping') ? (
        <form onSubmit={correct}>
          <h3>{say('cell/correct')}</h3>
          <label>
            {say('cell/value')}
            <input value={value} required onChange={({ target }) => setValue(target.value)} />
          </label>
          <label>
            {say('cell/reason')}
            <input value={reason} required onChange={({ target }) => setReason(target.value)} />
          </label>
          <p>
            <button type="submit" disabled={state === 'keeping' || value.trim() === '' || reason.trim() === ''}>
              {say('cell/keep')}
            </button>{' '}
            <button
              type="button"
              className="quiet"
              disabled={state === 'keeping' || reason.trim() === ''}
              onClick={() => void act(send('withdrawals', { row: open.row, reason }), 'withdrawn')}
            >
              {say('cell/withdraw')}
            </button>
          </p>
        </form>
      ) : null}
      {state === 'kept' || state === 'withdrawn' ? <p role="status">{say(`cell/${state}`)}</p> : null}
      {trouble === null ? null : <Trouble error={trouble} />}
      <h3>{say('cell/history')}</h3>
      {history.isError ? <Trouble error={history.error} /> : null}
      {history.data === undefined ? null : <Steps history={history.data} column={open.column} />}
      <p>
        <button type="button" onClick={() => place.current?.close()}>
          {say('cell/close')}
        </button>
      </p>
    </dialog>
  )
}
