import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { useAsked } from '../door/project.ts'
import { download, send } from '../door/request.ts'
import type { Asking } from '../door/shapes.ts'
import { useLook } from '../frame/look.ts'
import { Trouble } from '../frame/trouble.tsx'
import { useSay } from '../say/say.ts'
import { isSameAsking } from './same-asking.ts'

/** Taking an answer away: its receipt, its figure; and pinning it. */
export function TakeAway({ asking }: { readonly asking: Asking }) {
  const say = useSay()
  const queries = useQueryClient()
  const look = useLook()
  const { data: asked } = useAsked()
  const [trouble, setTrouble] = useState<unknown>(null)
  const isPinned = asked?.some((own) => own.pinned && isSameAsking(own, asking)) ?? false
  const take = (work: Promise<unknown>): void => {
    setTrouble(null)
    work.catch(setTrouble)
  }
  const pin = async (): Promise<void> => {
    await send('pins', { ...asking, pinned: !isPinned })
    await queries.invalidateQueries({ queryKey: ['asked'] })
  }
  return (
    <section className="take" aria-label={say('heading/take')}>
      <button type="button" onClick={() => take(download('receipt', asking, `${asking.question}-receipt.zip`))}>
        {say('take/receipt')}
      </button>
      {(['svg', 'png'] as const).map((format) => (
        <button
          type="button"
          key={format}
          onClick={() =>
            take(download('figure', { ...asking, look, language: say.language, format }, `${asking.question}.${format}`))
          }
        >
          {say(`take/${format}`)}
        </button>
      ))}
      <button type="button" aria-pressed={isPinned} onClick={() => take(pin())}>
        {say(isPinned ? 'take/unpin' : 'take/pin')}
      </button>
      <button type="button" onClick={() => print()}>
        {say('take/print')}
      </button>
      {trouble === null ? null : <Trouble error={trouble} />}
    </section>
  )
}
