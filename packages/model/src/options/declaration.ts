/** What the blanks of an option may be filled with, from the project in hand. */
export type Offer = 'kinds' | 'fields' | 'crops' | 'seasons' | 'factors' | 'levels' | 'conditions' | 'none'

interface Common {
  /** Id of the sentence that explains it; the words lie with the question. */
  readonly explained: string
  readonly offers?: Offer
}

export type OptionDeclaration =
  | (Common & { readonly type: 'text' })
  | (Common & { readonly type: 'texts' })
  | (Common & { readonly type: 'date' })
  | (Common & { readonly type: 'number'; readonly above: number })
  | (Common & { readonly type: 'choice'; readonly choices: readonly string[] })

/**
 * The options of a question, declared once: words of the terminal (`--name value`), a form's blanks, and the check at the
 * HTTP door all come from it.
 */
export type OptionsSpec = { readonly [name: string]: OptionDeclaration }

type ValueOf<D extends OptionDeclaration> = D extends { readonly type: 'number' }
  ? number
  : D extends { readonly type: 'texts' }
    ? readonly string[]
    : D extends { readonly type: 'choice'; readonly choices: readonly (infer C)[] }
      ? C
      : string

/** The options as a question gets them: what was not given is absent. */
export type OptionsOf<S extends OptionsSpec> = { readonly [N in keyof S]?: ValueOf<S[N]> }
