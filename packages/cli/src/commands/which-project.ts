import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { ThrumError } from '@thrum/model/ground'
import { type Arguments, single } from '../terminal/arguments.ts'
import type { Terminal } from '../terminal/terminal.ts'

/** The project named as a word of its own; else as elsewhere. @throws ThrumError cli/arguments/named-twice, cli/which-project */
export function projectOrWord(given: Arguments, word: string | undefined, terminal: Terminal): string {
  const named = single(given, 'in')
  if (word !== undefined && named !== undefined && word !== named)
    throw new ThrumError('cli/arguments/named-twice', { word, named })
  return word ?? whichProject(given, terminal)
}

/** The project meant: --in, else the only one in this folder. @throws ThrumError cli/which-project */
export function whichProject(given: Arguments, { here }: Terminal): string {
  const named = single(given, 'in')
  if (named !== undefined) return named
  const found = readdirSync(here).filter((name) => name.endsWith('.thrum'))
  if (found.length === 1 && found[0] !== undefined) return join(here, found[0])
  throw new ThrumError(found.length === 0 ? 'cli/no-project-here' : 'cli/which-project', { found: found.join(', ') })
}
