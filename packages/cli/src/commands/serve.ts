import { readdirSync } from 'node:fs'
import { ThrumError } from '@thrum/model/ground'
import { serve } from '../serve-project.ts'
import { type Arguments, single } from '../terminal/arguments.ts'
import type { Terminal } from '../terminal/terminal.ts'
import type { Command } from './command.ts'
import { projectOrWord, whichProject } from './which-project.ts'

/** @throws ThrumError cli/serve/port */
function portSaid(given: Arguments): number | null {
  const found = single(given, 'port')
  if (found === undefined) return null
  const port = Number(found)
  if (!/^\d{1,5}$/u.test(found) || port > 65_535) throw new ThrumError('cli/serve/port', { found })
  return port
}

/** The project meant; null where this folder holds none, so that the desk can make the first. */
function projectSaid(given: Arguments, terminal: Terminal): string | null {
  const isNoneHere = !given.options.has('in') && !readdirSync(terminal.here).some((name) => name.endsWith('.thrum'))
  return isNoneHere ? null : whichProject(given, terminal)
}

export const serveCommand: Command = {
  name: 'serve',
  options: ['in', 'port'],
  flags: [],
  run: async (given, terminal) => {
    const [named, ...more] = given.words
    if (more.length > 0) throw new ThrumError('cli/serve/usage')
    const port = portSaid(given)
    await serve(named === undefined ? projectSaid(given, terminal) : projectOrWord(given, named, terminal), port, terminal)
    return 0
  },
}
