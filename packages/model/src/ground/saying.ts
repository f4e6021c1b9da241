/** A value inside a sentence: a number, a text as a person wrote it, or another sentence (or a list of them). */
export type SayingValue = string | number | Saying | readonly Saying[]

/** A sentence as data: its id, and what fills its blanks. The words stand in one file a language, beside what says it. */
export interface Saying {
  readonly id: string
  readonly values: { readonly [name: string]: SayingValue }
}

export function saying(id: string, values: Saying['values'] = {}): Saying {
  return { id, values }
}

/** Words of one language: ICU message text by saying id. */
export type Words = { readonly [id: string]: string }
