import { mergeProject } from '@thrum/host'
import { saying, ThrumError } from '@thrum/model/ground'
import { withTexts, wrap } from '@thrum/report'
import type { Command } from './command.ts'
import { openForWriting } from './open-for-writing.ts'
import { whichProject } from './which-project.ts'

export const mergeCommand: Command = {
  name: 'merge',
  options: ['in'],
  flags: [],
  run: async (given, terminal) => {
    const [other, ...more] = given.words
    if (other === undefined || more.length > 0) throw new ThrumError('cli/merge/usage')
    const path = whichProject(given, terminal)
    const project = await openForWriting(path, terminal)
    try {
      const merged = await mergeProject(project, other, terminal.work)
      const { added, replaced, attachments, heldBack, counts, contested, kinds, copies, copiesLeft } = merged
      const forgot = kinds.find(({ kind }) => kind === 'redacted')?.facts ?? 0
      const sentences = [
        saying(added + replaced + attachments === 0 ? 'cli/merge/nothing' : 'cli/merge/done', {
          other,
          project: path,
          facts: added,
          files: attachments,
        }),
        ...(counts === 0 ? [] : [saying('cli/merge/counts', { counts: Math.abs(counts), more: counts > 0 ? 'yes' : 'no' })]),
        ...(contested === 0 ? [] : [saying('cli/merge/contested', { cells: contested })]),
        ...(forgot === 0 ? [] : [saying('cli/merge/forgot', { facts: forgot })]),
        ...(copies.length === 0 ? [] : [saying('cli/forget/copies', { copies: copies.length })]),
        ...copiesLeft.map(({ file, because }) => saying('cli/forget/copy-left', { file, because })),
        ...(heldBack === 0 ? [] : [saying('cli/merge/held-back', { facts: heldBack })]),
      ]
      for (const sentence of sentences) for (const line of wrap(terminal.say(sentence))) terminal.print(line)
      terminal.json(withTexts({ project: path, other, ...merged, sentences }, terminal.say))
      return 0
    } finally {
      await project.close()
    }
  },
}
