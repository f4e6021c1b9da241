import type { Asking, Options, OptionValue } from '../door/shapes.ts'

/** The questions that the desk can put. */
export const questions = ['who-visits', 'what-differs', 'is-design-sound'] as const
export type QuestionName = (typeof questions)[number]

/** The part of an address that says what is asked. */
export interface AskingSearch {
  readonly q?: QuestionName
  readonly o?: Options
}

const isValue = (value: unknown): value is OptionValue =>
  typeof value === 'string' ||
  typeof value === 'number' ||
  (Array.isArray(value) && value.every((own) => typeof own === 'string'))

/** An address is typed by anyone: what is no question of ours is left out. */
export function readAsking(search: Record<string, unknown>): AskingSearch {
  const q = questions.find((name) => name === search.q)
  if (q === undefined) return {}
  const given = typeof search.o === 'object' && search.o !== null ? Object.entries(search.o) : []
  return { q, o: Object.fromEntries(given.filter((own): own is [string, OptionValue] => isValue(own[1]))) }
}

export const askingOf = ({ q, o }: AskingSearch): Asking | null => (q === undefined ? null : { question: q, options: o ?? {} })

/** The same asking with one option changed; an option without a value is not given. */
export function withOption({ q, o }: AskingSearch, changes: Options): AskingSearch {
  const merged = { ...o, ...changes }
  const kept = Object.entries(merged).filter(([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0))
  return { ...(q === undefined ? {} : { q }), o: Object.fromEntries(kept) }
}
