import { type Saying, type SayingValue, ThrumError } from '@thrum/model/ground'
import { expect } from 'vitest'
import { words } from '../src/index.ts'

/**
 * Waits for a failure that a person can act on, and reads its words with it: the sentence and the remedy are there, and
 * every blank in them has a value.
 */
export async function refusal(doing: Promise<unknown>, code: string): Promise<ThrumError> {
  const failure = await doing.then(
    () => new Error(`expected ${code}, but it was done`),
    (cause: unknown) => cause,
  )
  if (!(failure instanceof ThrumError)) throw failure
  expect(failure.code).toBe(code)
  requireWords(failure.saying)
  requireWords(failure.remedy)
  return failure
}

export function requireWords({ id, values }: Saying): void {
  const text = words[id]
  expect(text, `words of ${id}`).toBeTypeOf('string')
  for (const [, name] of (text ?? '').matchAll(/\{(\w+)[,}]/gu))
    expect(Object.keys(values), `${id} fills {${name}}`).toContain(name)
  for (const value of Object.values(values)) if (isSaying(value)) requireWords(value)
}

function isSaying(value: SayingValue): value is Saying {
  return typeof value === 'object' && 'id' in value
}
