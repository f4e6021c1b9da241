import type { BroughtTold, OfferTold } from '@thrum/server/api'
import { useSyncExternalStore } from 'react'

/** How far a table has come on its way in. */
export type TableState =
  | { readonly is: 'waiting' }
  /** Dropped somewhere on the desk, and not taken up yet. */
  | { readonly is: 'dropped'; readonly file: File }
  | { readonly is: 'reading'; readonly file: string }
  | { readonly is: 'offered'; readonly file: string; readonly offered: OfferTold; readonly busy: boolean }
  | { readonly is: 'brought'; readonly brought: BroughtTold }

// It outlives the page: who looks something up elsewhere finds the table and its answers as they were.
let inHand: TableState = { is: 'waiting' }
let steps = 0
const listeners = new Set<() => void>()

export const tableInHand = (): TableState => inHand

export function setTableInHand(state: TableState): void {
  inHand = state
  for (const listener of listeners) listener()
}

/**
 * Begins a step with the table in hand, such as reading it or answering for it. What is given back tells whether it is still the last
 * one: only then does its reply count, whichever visit of the page began it.
 */
export function nextStep(): () => boolean {
  steps += 1
  const own = steps
  return () => own === steps
}

export function useTableInHand(): TableState {
  return useSyncExternalStore((listener) => {
    listeners.add(listener)
    return () => listeners.delete(listener)
  }, tableInHand)
}
