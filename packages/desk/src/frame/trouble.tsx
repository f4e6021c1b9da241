import { DoorError } from '../door/request.ts'
import { type Say, useSay } from '../say/say.ts'

function toldOf(error: unknown, say: Say): { readonly text: string; readonly remedy: string } {
  if (!(error instanceof DoorError)) return { text: error instanceof Error ? error.message : String(error), remedy: '' }
  const { code, values, message, remedy } = error
  if (code === 'gone') return { text: say('gone/here'), remedy: '' }
  if (code === 'server/door/token') return { text: say('locked/here'), remedy: '' }
  return {
    text: say.saying({ id: code, values, text: message }),
    remedy: remedy === '' ? '' : say.saying({ id: `${code}/remedy`, values, text: remedy }),
  }
}

/** Why something failed, and what to do. */
export function Trouble({ error, again }: { readonly error: unknown; readonly again?: () => void }) {
  const say = useSay()
  const { text, remedy } = toldOf(error, say)
  return (
    <div className="trouble" role="alert">
      <p>{text}</p>
      {remedy === '' ? null : <p>{remedy}</p>}
      {again === undefined ? null : (
        <button type="button" onClick={again}>
          {say('again')}
        </button>
      )}
    </div>
  )
}
