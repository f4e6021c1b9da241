import type { AskedTold, Asking, Options } from '../door/shapes.ts'

/** What was asked before, with the S that it was held against last. */
export const askedOptions = ({ options, worth }: Pick<AskedTold, 'options' | 'worth'>): Options =>
  worth === null ? options : { ...options, worth }

/** Options that say how an answer is judged, not what is asked. */
const judging = ['worth', 'expect']

function keyOf({ question, options }: Asking): string {
  const asked = Object.entries(options).filter(([name, value]) => !judging.includes(name) && value !== undefined)
  return JSON.stringify([question, asked.sort(([a], [b]) => (a < b ? -1 : 1))])
}

/** True where two askings are one question, whatever each is held against. */
export const isSameAsking = (one: Asking, other: Asking): boolean => keyOf(one) === keyOf(other)
