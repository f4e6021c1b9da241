import { basename } from 'node:path'
import { createProject } from '@thrum/host'
import { saying, ThrumError } from '@thrum/model/ground'
import { wrap } from '@thrum/report'
import { single } from '../terminal/arguments.ts'
import type { Command } from './command.ts'

/** What Windows cannot hold in a file name, so that a project can be handed to anybody. */
const unheld = /[<>:"\\|?*\p{Cc}]|[. ]$/u
const reserved = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/iu

export const newCommand: Command = {
  name: 'new',
  options: ['title'],
  flags: [],
  run: async (given, terminal) => {
    const [path, ...more] = given.words
    if (path === undefined || more.length > 0) throw new ThrumError('cli/new/usage')
    const file = path.endsWith('.thrum') ? path : `${path}.thrum`
    const name = basename(file)
    if (unheld.test(name) || reserved.test(name)) throw new ThrumError('cli/new/name', { name })
    const project = await createProject(file, single(given, 'title') ?? basename(file, '.thrum'))
    await project.close()
    for (const line of wrap(terminal.say(saying('cli/new/made', { file })))) terminal.print(line)
    terminal.json({ project: file })
    return 0
  },
}
