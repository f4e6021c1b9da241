import type { Answer } from '@thrum/model'
import type { Saying } from '@thrum/model/ground'

/** A sentence with its English beside it, as every reply holds it. */
export type ToldSaying = Saying & { readonly text?: string }

export interface ProjectTold {
  readonly title: string
  readonly file: string
  readonly digest: string
  readonly mode: 'write' | 'read'
  readonly because: string | null
  readonly counts: number
  readonly fields: readonly { readonly name: string; readonly crop: string | null }[]
  /** Ordered by the project's own frequencies. */
  readonly kinds: readonly { readonly name: string; readonly count: number }[]
  readonly seasons: readonly string[]
  readonly crops: readonly string[]
  readonly factors: readonly { readonly name: string; readonly levels: readonly string[]; readonly measured: boolean }[]
  readonly waiting: number
  readonly contested: number
  readonly demonstration: boolean
  readonly version: string
}

export type OptionValue = string | number | readonly string[]
export interface Options {
  readonly [name: string]: OptionValue | undefined
}

/** A question with its options. */
export interface Asking {
  readonly question: string
  readonly options: Options
}

export interface AskedTold extends Asking {
  readonly asked: string
  readonly looks: number
  readonly lastAt: string
  readonly lastVerdict: Answer['verdict']
  readonly pinned: boolean
  /** The data have changed since. */
  readonly stale: boolean
}

/** A stretch of the counts grid, column by column. */
export interface CountsPage {
  readonly total: number
  readonly offset: number
  readonly rows: readonly string[]
  readonly lines: readonly string[]
  readonly columns: readonly {
    readonly name: string
    readonly title: string
    readonly type: 'number' | 'text'
    readonly unit: string | null
    readonly values: readonly (string | number | null)[]
    readonly marks: readonly (string | null)[] | null
  }[]
}
