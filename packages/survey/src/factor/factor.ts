import type { Assignment } from '@thrum/model'

/** Anything recorded that counts can be told apart by: for each count its level, or -1 where none was recorded. */
export interface Factor {
  readonly name: string
  /** What kind of thing it is; it decides which nuisances are part of the question itself. */
  readonly about: FactorAbout
  readonly levels: readonly string[]
  /** For each count of the snapshot a position in `levels`, or -1. */
  readonly levelOf: Int32Array
  readonly assigned: Assignment
}

export type FactorAbout = 'date' | 'stage' | 'hour' | 'season' | 'observer' | 'position' | 'crop' | 'hives' | 'field' | 'other'
