import type { Failure } from '@thrum/server/api'
import { key } from './key.ts'

/** What the server refused, or that it could not be reached: with what to do. */
export class DoorError extends Error {
  readonly code: string
  readonly values: Failure['values']
  readonly remedy: string

  constructor({ code, values, text, remedy }: Failure) {
    super(text)
    this.code = code
    this.values = values
    this.remedy = remedy
  }
}

async function refusal(reply: Response): Promise<DoorError> {
  const told: Partial<Failure> = await reply.json().catch(() => ({}))
  return new DoorError({ code: `status-${reply.status}`, values: {}, text: reply.statusText, remedy: '', ...told })
}

/** One request to the server of this page. @throws DoorError; `gone` where the server cannot be reached */
export async function request(path: string, options: RequestInit = {}): Promise<Response> {
  let reply: Response
  try {
    reply = await fetch(`/api/${path}`, { ...options, headers: { ...options.headers, 'x-thrum-token': key() } })
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') throw error
    throw new DoorError({ code: 'gone', values: {}, text: '', remedy: '' })
  }
  if (!reply.ok) throw await refusal(reply)
  return reply
}

export async function get<T>(path: string): Promise<T> {
  return (await (await request(path)).json()) as T
}

export async function send<T>(path: string, body: unknown, options: RequestInit = {}): Promise<T> {
  const reply = await request(path, {
    method: 'POST',
    ...options,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  })
  return (await reply.json()) as T
}

/** Bytes of a file the server makes, handed to the person. */
export async function download(path: string, body: unknown, name: string): Promise<void> {
  const reply = await request(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  })
  const address = URL.createObjectURL(await reply.blob())
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  URL.revokeObjectURL(address)
}
