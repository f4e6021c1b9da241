import { useQueryClient } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { BroughtTold, OfferTold } from '@thrum/server/api'
import { type DragEvent, useEffect, useRef, useState } from 'react'
import { request, send } from '../door/request.ts'
import { Trouble } from '../frame/trouble.tsx'
import { useSay } from '../say/say.ts'
import { OfferPart } from './offer-part.tsx'
import { setTableInHand, tableInHand, useTableInHand } from './table-in-hand.ts'

/** Bringing a table: the file, what each column is and each row becomes, and one acceptance. */
export function TablesPage() {
  const say = useSay()
  const queries = useQueryClient()
  const state = useTableInHand()
  const setState = setTableInHand
  const [trouble, setTrouble] = useState<unknown>(null)
  const [isOver, setOver] = useState(false)
  const latest = useRef(0)

  const read = async (file: File): Promise<void> => {
    setTrouble(null)
    latest.current += 1
    setState({ is: 'reading', file: file.name })
    try {
      const reply = await request(`tables?name=${encodeURIComponent(file.name)}`, {
        method: 'POST',
        headers: { 'content-type': 'application/octet-stream' },
        body: file,
      })
      setState({ is: 'offered', file: file.name, offered: (await reply.json()) as OfferTold, busy: false })
    } catch (error) {
      setTrouble(error)
      setState({ is: 'waiting' })
    }
  }
  const remap = async (offered: OfferTold, mapping: OfferTold['mapping'], file: string): Promise<void> => {
    setTrouble(null)
    latest.current += 1
    const own = latest.current
    // What is answered shows at once, and the next answer builds on it; of several replies the last one counts.
    const answered = { ...offered, mapping }
    setState({ is: 'offered', file, offered: answered, busy: true })
    try {
      const changed = await send<OfferTold>(`tables/${offered.table}/offer`, { mapping })
      if (own === latest.current) setState({ is: 'offered', file, offered: changed, busy: false })
    } catch (error) {
      if (own !== latest.current) return
      setTrouble(error)
      setState({ is: 'offered', file, offered, busy: false })
    }
  }
  const accept = async (offered: OfferTold, file: string): Promise<void> => {
    setTrouble(null)
    setState({ is: 'offered', file, offered, busy: true })
    try {
      const brought = await send<BroughtTold>(`tables/${offered.table}/accept`, { mapping: offered.mapping })
      setState({ is: 'brought', brought })
      await queries.invalidateQueries()
    } catch (error) {
      setTrouble(error)
      setState({ is: 'offered', file, offered, busy: false })
    }
  }
  const drop = (event: DragEvent): void => {
    event.preventDefault()
    setOver(false)
    const [file] = event.dataTransfer.files
    if (file === undefined) return
    if (state.is === 'offered') setTrouble(new Error(say('tables/one')))
    else void read(file)
  }
  // A file that was dropped elsewhere on the desk; and what was brought the last time is no news any more.
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the page opens, and for each file that is dropped
  useEffect(() => {
    if (state.is === 'dropped') void read(state.file)
  }, [state])
  useEffect(
    () => () => {
      if (tableInHand().is === 'brought') setTableInHand({ is: 'waiting' })
    },
    [],
  )
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the button below chooses a file without dragging
    <div
      className={isOver ? 'tables over' : 'tables'}
      onDragOver={(event) => {
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <title>{`${say('tables')} – Thrum`}</title>
      <h1>{say('tables')}</h1>
      {state.is === 'waiting' || state.is === 'brought' ? (
        <label className="drop">
          <span>{say('tables/drop')}</span> <span className="link">{say('tables/choose')}</span>
          <input
            type="file"
            accept=".csv,.tsv,.txt,text/csv"
            onChange={({ target }) => {
              const [file] = target.files ?? []
              if (file !== undefined) void read(file)
            }}
          />
          <span className="note">{say('tables/first')}</span>
        </label>
      ) : null}
      {state.is === 'reading' ? <p role="status">{say('tables/reading', { file: state.file })}</p> : null}
      {trouble === null ? null : <Trouble error={trouble} />}
      {state.is === 'offered' ? (
        <OfferPart
          offered={state.offered}
          isBusy={state.busy}
          onMapping={(mapping) => void remap(state.offered, mapping, state.file)}
          onAccept={() => void accept(state.offered, state.file)}
          onOther={() => {
            latest.current += 1
            void request(`tables/${state.offered.table}`, { method: 'DELETE' }).catch(() => undefined)
            setState({ is: 'waiting' })
          }}
        />
      ) : null}
      {state.is === 'brought' ? (
        <p role="status" className="brought">
          {say(`tables/done/${state.brought.state}`, { counts: state.brought.counts, corrections: state.brought.corrections })}{' '}
          <Link to="/" className="button">
            {say('tables/ask')}
          </Link>
        </p>
      ) : null}
    </div>
  )
}
