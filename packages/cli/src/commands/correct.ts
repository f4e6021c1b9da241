import { correctCell } from '@thrum/host'
import { saying, ThrumError } from '@thrum/model/ground'
import { withTexts, wrap } from '@thrum/report'
import { single } from '../terminal/arguments.ts'
import type { Command } from './command.ts'
import { openForWriting } from './open-for-writing.ts'
import { whichProject } from './which-project.ts'

export const correctCommand: Command = {
  name: 'correct',
  options: ['in', 'reason'],
  flags: [],
  run: async (given, terminal) => {
    const [row, column, value, ...more] = given.words
    if (row === undefined || column === undefined || value === undefined || more.length > 0)
      throw new ThrumError('cli/correct/usage')
    const reason = single(given, 'reason')
    if (reason === undefined) throw new ThrumError('host/correct/no-reason')
    const path = whichProject(given, terminal)
    const project = await openForWriting(path, terminal)
    try {
      const made = await correctCell(project, { row, column, value, reason })
      const { isNewWord, decides, ...told } = made
      const sentences = [
        saying('cli/correct/done', { row: told.row, column: told.column, from: told.from, to: told.to }),
        ...(decides ? [saying('cli/correct/decides')] : []),
        ...(isNewWord ? [saying('cli/correct/new-word', { column: told.column, to: told.to })] : []),
        saying('cli/correct/undo', { fact: told.fact }),
      ]
      for (const sentence of sentences) for (const line of wrap(terminal.say(sentence))) terminal.print(line)
      terminal.json(withTexts({ project: path, ...made, sentences }, terminal.say))
      return 0
    } finally {
      await project.close()
    }
  },
}
