import { withdraw } from '@thrum/host'
import { saying, ThrumError } from '@thrum/model/ground'
import { withTexts, wrap } from '@thrum/report'
import { single } from '../terminal/arguments.ts'
import type { Command } from './command.ts'
import { openForWriting } from './open-for-writing.ts'
import { whichProject } from './which-project.ts'

export const withdrawCommand: Command = {
  name: 'withdraw',
  options: ['in', 'reason'],
  flags: [],
  run: async (given, terminal) => {
    const [row, kind, ...more] = given.words
    if (row === undefined || more.length > 0) throw new ThrumError('cli/withdraw/usage')
    const reason = single(given, 'reason')
    if (reason === undefined) throw new ThrumError('host/correct/no-reason')
    const path = whichProject(given, terminal)
    const project = await openForWriting(path, terminal)
    try {
      const made = await withdraw(project, { row, kind, reason })
      const sentences = [
        saying('cli/withdraw/done', { row: made.row, what: made.what, told: made.told, tallies: made.tallies, kind: kind ?? '' }),
        saying('cli/withdraw/undo', { fact: made.fact }),
      ]
      for (const sentence of sentences) for (const line of wrap(terminal.say(sentence))) terminal.print(line)
      terminal.json(withTexts({ project: path, ...made, sentences }, terminal.say))
      return 0
    } finally {
      await project.close()
    }
  },
}
