import type { Saying } from './saying.ts'

/**
 * A failure that a person can act on. It carries the id of a sentence and its values, never the sentence:
 * the words lie beside what says them (`words.en.ts`), with the remedy under `<code>/remedy`.
 */
export class ThrumError extends Error {
  readonly code: string
  readonly values: Saying['values']

  constructor(code: string, values: Saying['values'] = {}, options?: { readonly cause?: unknown }) {
    super(`${code} ${JSON.stringify(values)}`, options)
    this.name = 'ThrumError'
    this.code = code
    this.values = values
  }

  get saying(): Saying {
    return { id: this.code, values: this.values }
  }

  get remedy(): Saying {
    return { id: `${this.code}/remedy`, values: this.values }
  }
}

/** The caller broke a contract of a function. A mistake in the program, not in what a person typed. */
export class InputError extends Error {
  readonly code: string

  constructor(code: string, message: string) {
    super(message)
    this.name = 'InputError'
    this.code = code
  }
}
