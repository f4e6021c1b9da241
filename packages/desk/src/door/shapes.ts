import type { AskedTold as AskedItems } from '@thrum/server/api'

export type OptionValue = string | number | readonly string[]
export interface Options {
  readonly [name: string]: OptionValue | undefined
}

/** A question with its options. */
export interface Asking {
  readonly question: string
  readonly options: Options
}

export type AskedTold = AskedItems[number]
