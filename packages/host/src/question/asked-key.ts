import { canonicalJson } from '@thrum/model/ground'

/** Options that say how an answer is judged, not what is asked. */
const judging = ['worth', 'worthSet', 'looks', 'expect', 'seed']

/** One text for one question asked: the same whatever S it is held against. */
export function askedKey(options: { readonly [name: string]: unknown }): string {
  return canonicalJson(Object.fromEntries(Object.entries(options).filter(([name]) => !judging.includes(name))))
}
