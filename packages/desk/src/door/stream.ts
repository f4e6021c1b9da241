import { DoorError, request } from './request.ts'

/** What the server tells without being asked. */
export type Told =
  | { readonly event: 'progress'; readonly job: string; readonly done: number; readonly total: number; readonly unit: string }
  | { readonly event: 'project'; readonly digest: string; readonly askedDigest: string }
  | { readonly event: 'ping' }
  /** The server went away; is there, and will not have this page; or is there again. */
  | { readonly event: 'gone' }
  | { readonly event: 'refused' }
  | { readonly event: 'back' }

const again = 1500

function readEvent(text: string): Told | null {
  const lines = text.split('\n')
  const event = lines.find((line) => line.startsWith('event: '))?.slice(7)
  const data = lines.find((line) => line.startsWith('data: '))?.slice(6)
  return event === undefined ? null : ({ event, ...JSON.parse(data ?? '{}') } as Told)
}

async function listenOnce(tell: (told: Told) => void, signal: AbortSignal, isAgain: boolean): Promise<void> {
  const reply = await request('stream', { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}', signal })
  if (isAgain) tell({ event: 'back' })
  const reader = reply.body?.pipeThrough(new TextDecoderStream()).getReader()
  let rest = ''
  for (;;) {
    const part = await reader?.read()
    if (part === undefined || part.done) return
    const events = (rest + part.value).split('\n\n')
    rest = events.pop() ?? ''
    for (const text of events) {
      const told = readEvent(text)
      if (told !== null) tell(told)
    }
  }
}

/** Listens until the signal, through every restart of the server. */
export async function listen(tell: (told: Told) => void, signal: AbortSignal): Promise<void> {
  for (let isAgain = false; !signal.aborted; isAgain = true) {
    const isRefused = await listenOnce(tell, signal, isAgain).then(
      () => false,
      // Whoever refuses is there: another start of the program, whose key this page does not have.
      (error: unknown) => error instanceof DoorError && error.code !== 'gone',
    )
    if (signal.aborted) return
    tell({ event: isRefused ? 'refused' : 'gone' })
    await new Promise((resolve) => setTimeout(resolve, again))
  }
}
