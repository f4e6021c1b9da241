import { readdirSync } from 'node:fs'
import { ThrumError } from '@thrum/model/ground'
import { type Arguments, single } from '../terminal/arguments.ts'

/** The project meant: --in, else the only one in this folder. @throws ThrumError cli/which-project */
export function whichProject(given: Arguments): string {
  const named = single(given, 'in')
  if (named !== undefined) return named
  const here = readdirSync('.').filter((name) => name.endsWith('.thrum'))
  if (here.length === 1 && here[0] !== undefined) return here[0]
  throw new ThrumError(here.length === 0 ? 'cli/no-project-here' : 'cli/which-project', { found: here.join(', ') })
}
