import type { Answer } from '@thrum/model'
import type { Saying } from '@thrum/model/ground'
import type { Speaker } from '../say/say.ts'

function isSaying(value: unknown): value is Saying {
  return (
    typeof value === 'object' &&
    value !== null &&
    Object.keys(value).length === 2 &&
    typeof (value as { id?: unknown }).id === 'string' &&
    typeof (value as { values?: unknown }).values === 'object'
  )
}

/** The machine form of anything that holds sentences: each saying keeps its id and values and gets its text beside them. */
export function withTexts(value: unknown, say: Speaker): unknown {
  if (Array.isArray(value)) return value.map((item) => withTexts(item, say))
  if (isSaying(value)) return { ...value, text: say(value) }
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, withTexts(item, say)]))
}

/** Answer, JSON version 1, with its English. */
export function answerJson(answer: Answer, say: Speaker): string {
  return JSON.stringify(withTexts(answer, say), null, 2)
}
