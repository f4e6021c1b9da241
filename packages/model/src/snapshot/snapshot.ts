import type { RowAddress } from '../facts/fact.ts'
import type { Assignment } from '../facts/kinds.ts'
import type { Saying } from '../ground/index.ts'
import type { TableName } from '../tables/declarations.ts'
import type { Table } from '../tables/table.ts'

export interface Point {
  readonly latitude: number
  readonly longitude: number
}

export interface Field {
  readonly name: string
  readonly crop: string | null
  readonly cultivar: string | null
  readonly point: Point | null
  /** Corners as [longitude, latitude]. */
  readonly polygon: readonly (readonly [number, number])[] | null
  readonly hectares: number | null
  /** Null where counts name the field but nobody described it. */
  readonly address: RowAddress | null
}

/** A visitor group or taxon as the project sorts it. */
export interface Kind {
  readonly name: string
  readonly taxon: string | null
  /** What the person said this kind is (bumble bee, hover fly ...); null where nobody said. */
  readonly group: string | null
  readonly address: RowAddress | null
}

export interface Treatment {
  readonly factor: string
  readonly level: string
  readonly field: string | null
  readonly plot: string | null
  /** Day numbers; null where open. */
  readonly from: number | null
  readonly to: number | null
  readonly assigned: Assignment
  readonly address: RowAddress
}

export interface HivePlacement {
  readonly hives: number
  readonly point: Point | null
  /** The field it was measured from, with the metres between; null where a point is given. */
  readonly field: string | null
  readonly metres: number | null
  readonly from: number | null
  readonly to: number | null
  readonly address: RowAddress
}

export interface HivesLookedFor {
  readonly field: string
  readonly result: 'counted' | 'none found' | 'not looked for'
  readonly from: number | null
  readonly to: number | null
  readonly address: RowAddress
}

export interface Plan {
  /** Day number of the last visit that was planned. */
  readonly lastVisit: number | null
  readonly primaryKind: string | null
  /** A factor whose levels are blocks of fields. */
  readonly block: string | null
  readonly at: string
  readonly address: RowAddress
}

/** A file that was brought and accepted. */
export interface Sheet {
  readonly sheet: string
  readonly file: string
  readonly fileHash: string
  readonly rows: { readonly read: number; readonly accepted: number; readonly waiting: number; readonly refused: number }
  readonly notes: readonly Saying[]
  readonly mapping: unknown
  readonly at: string
}

/** Two corrections of one cell that were made without knowledge of each other. Until a person decides, the latest stands. */
export interface Conflict {
  readonly of: RowAddress
  readonly column: string
  readonly choices: readonly {
    readonly fact: string
    readonly to: string | number | null
    readonly by: string
    readonly at: string
  }[]
}

/** The smallest ratio worth acting on, as it was set for one question asked. */
export interface Worth {
  readonly question: string
  readonly asked: string
  readonly worth: number
  readonly at: string
}

/** That an answer was looked at: before S was set, or again and again, it matters. */
export interface Look {
  readonly question: string
  readonly asked: string
  readonly digest: string
  readonly verdict: string | null
  readonly at: string
}

/** A question that somebody keeps at hand, with the options it is asked with. */
export interface Pin {
  readonly question: string
  readonly asked: string
  readonly options: { readonly [name: string]: string | number | readonly string[] }
  readonly at: string
}

/** The read model: everything a question may see. It can be thrown away and folded again. */
export interface Snapshot {
  /** Hash of the set of folded fact ids; answers and receipts name it. */
  readonly digest: string
  readonly askedDigest: string
  readonly project: { readonly id: string; readonly title: string } | null
  readonly fields: readonly Field[]
  readonly kinds: readonly Kind[]
  readonly tables: { readonly [N in TableName]: Table<N> }
  /** For each count its field in `fields` (-1: none named). */
  readonly countField: Int32Array
  /** For each tally its count and its kind in `kinds`. */
  readonly tallyCount: Int32Array
  readonly tallyKind: Int32Array
  readonly treatments: readonly Treatment[]
  /** How the levels of a factor came to their fields, where somebody said so. */
  readonly assigned: ReadonlyMap<string, Assignment>
  readonly hives: readonly HivePlacement[]
  readonly hivesLookedFor: readonly HivesLookedFor[]
  readonly plan: Plan | null
  readonly sheets: readonly Sheet[]
  /** Files begun and neither accepted nor discarded. */
  readonly unfinishedSheets: readonly string[]
  readonly worths: readonly Worth[]
  readonly looks: readonly Look[]
  /** Questions that are pinned now, in the order in which they were. */
  readonly pins: readonly Pin[]
  readonly conflicts: readonly Conflict[]
  /** Facts that this version cannot read: kept, merged, and said. */
  readonly waitingFacts: readonly { readonly id: string; readonly kind: string; readonly because: string }[]
}
