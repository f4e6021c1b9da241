import { contrastOptions, verdictOptions } from '../contrast/options.ts'

/** What may be asked of a difference: one declaration for the terminal, a form and the HTTP door. */
export const whatDiffersOptions = { ...contrastOptions, ...verdictOptions } as const
