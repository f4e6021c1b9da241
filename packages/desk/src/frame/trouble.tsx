import { DoorError } from '../door/request.ts'
import { useSay } from '../say/speaker.tsx'

/** Why something failed, and what to do. */
export function Trouble({ error, again }: { readonly error: unknown; readonly again?: () => void }) {
  const say = useSay()
  const isGone = error instanceof DoorError && error.code === 'gone'
  const isLocked = error instanceof DoorError && error.code === 'server/door/token'
  const text = isGone ? say('gone') : isLocked ? say('locked') : error instanceof Error ? error.message : String(error)
  return (
    <div className="trouble" role="alert">
      <p>{text}</p>
      {error instanceof DoorError && error.remedy !== '' ? <p>{error.remedy}</p> : null}
      {again === undefined ? null : (
        <button type="button" onClick={again}>
          {say('again')}
        </button>
      )}
    </div>
  )
}
