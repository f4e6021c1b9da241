import { useQueryClient } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { BroughtTold, OfferTold } from '@thrum/server/api'
import { type DragEvent, useEffect, useState } from 'react'
import { request, send } from '../door/request.ts'
import { Trouble } from '../frame/trouble.tsx'
import { useSay } from '../say/say.ts'
import { OfferPart } from './offer-part.tsx'
import { nextStep, setTableInHand, tableInHand, useTableInHand } from './table-in-hand.ts'

/** Lets the server forget a table; it forgets by itself what is left behind. */
const letGo = ({ table }: OfferTold): void => void request(`tables/${table}`, { method: 'DELETE' }).catch(() => undefined)

/** Bringing a table: the file, what each column is and each row becomes, and one acceptance. */
export function TablesPage() {
  const say = useSay()
  const queries = useQueryClient()
  const state = useTableInHand()
  const setState = setTableInHand
  const [trouble, setTrouble] = useState<unknown>(null)
  const [isOver, setOver] = useState(false)

  const read = async (file: File): Promise<void> => {
    setTrouble(null)
    const isLast = nextStep()
    setState({ is: 'reading', file: file.name })
    try {
      const reply = await request(`tables?name=${encodeURIComponent(file.name)}`, {
        method: 'POST',
        headers: { 'content-type': 'application/octet-stream' },
        body: file,
      })
      const offered = (await reply.json()) as OfferTold
      if (isLast()) setState({ is: 'offered', file: file.name, offered, busy: false })
      else letGo(offered)
    } catch (error) {
      if (!isLast()) return
      setTrouble(error)
      setState({ is: 'waiting' })
    }
  }
  const remap = async (offered: OfferTold, mapping: OfferTold['mapping'], file: string): Promise<void> => {
    setTrouble(null)
    const isLast = nextStep()
    // What is answered shows at once, and the next answer builds on it; of several replies the last one counts.
    const answered = { ...offered, mapping }
    setState({ is: 'offered', file, offered: answered, busy: true })
    try {
      const changed = await send<OfferTold>(`tables/${offered.table}/offer`, { mapping })
      if (isLast()) setState({ is: 'offered', file, offered: changed, busy: false })
    } catch (error) {
      if (!isLast()) return
      setTrouble(error)
      setState({ is: 'offered', file, offered, busy: false })
    }
  }
  const accept = async (offered: OfferTold, file: string): Promise<void> => {
    setTrouble(null)
    const isLast = nextStep()
    setState({ is: 'offered', file, offered, busy: true })
    try {
      const brought = await send<BroughtTold>(`tables/${offered.table}/accept`, { mapping: offered.mapping })
      // What is accepted is in the project, even if another answer was given meanwhile.
      const now = tableInHand()
      if (isLast() || (now.is === 'offered' && now.offered.table === offered.table)) {
        nextStep()
        setState({ is: 'brought', brought })
      }
      await queries.invalidateQueries()
    } catch (error) {
      if (!isLast()) return
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
            nextStep()
            letGo(state.offered)
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
