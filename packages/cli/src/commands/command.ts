import type { Arguments } from '../terminal/arguments.ts'
import type { Terminal } from '../terminal/terminal.ts'

/** 0 done; 1 the checked thing does not hold; 2 bad usage or bad input, and nothing was written. */
export type ExitCode = 0 | 1 | 2

export interface Command {
  readonly name: string
  /** Options it takes, as declared (camel case). */
  readonly options: readonly string[]
  readonly flags: readonly string[]
  run(given: Arguments, terminal: Terminal): Promise<ExitCode>
}
