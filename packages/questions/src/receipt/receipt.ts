/** What anyone needs to check an answer: tidy tables, and a self-contained R script that recomputes the headline from them. */
export interface Receipt {
  readonly files: readonly { readonly name: string; readonly text: string }[]
}
