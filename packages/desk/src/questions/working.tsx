import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { useConnection } from '../frame/connection.tsx'
import { useSay } from '../say/say.ts'

/** True once something has been going on for a while [ms]; false again at once when it is over. */
export function useLasting(isGoingOn: boolean, after: number): boolean {
  const [isLasting, setLasting] = useState(false)
  useEffect(() => {
    setLasting(false)
    if (!isGoingOn) return
    const timer = setTimeout(() => setLasting(true), after)
    return () => clearTimeout(timer)
  }, [isGoingOn, after])
  return isGoingOn && isLasting
}

/** Something is being worked out: how far it is, and the way to stop it. */
export function Working({ canStop = false }: { readonly canStop?: boolean }) {
  const say = useSay()
  const queries = useQueryClient()
  const { progress: latest } = useConnection()
  // What was told before this began is of something else.
  const [before] = useState(latest)
  const progress = latest === before ? null : latest
  return (
    <div className="working" role="status">
      <p>{say('working')}</p>
      {progress === null ? null : <progress value={progress.done} max={progress.total} aria-label={say('working')} />}
      {canStop ? (
        <button type="button" onClick={() => void queries.cancelQueries({ queryKey: ['answer'] })}>
          {say('stop')}
        </button>
      ) : null}
    </div>
  )
}
