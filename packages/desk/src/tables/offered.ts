/** A mapping as it stands in its file: which column is what. The desk changes only what a column is taken as. */
export interface MappingHeld {
  readonly columns: readonly { readonly header: string; readonly as: string; readonly [more: string]: unknown }[]
  readonly [more: string]: unknown
}

/** A file as it was read: nothing counts yet. */
export interface Offered {
  readonly table: string
  readonly mapping: MappingHeld
  readonly rows: { readonly read: number; readonly accepted: number; readonly waiting: number; readonly refused: number }
  readonly counts: number
  readonly reasons: readonly { readonly header: string; readonly as: string; readonly because: string }[]
  readonly questions: readonly { readonly asks: string; readonly proposed: string | null }[]
  readonly becomes: readonly string[]
  readonly preview: {
    readonly headers: readonly string[]
    readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[]
  }
  readonly state: 'new' | 'known' | 'mended'
  readonly mended: readonly string[]
}

export interface Brought {
  readonly counts: number
  readonly sentences: readonly string[]
}
