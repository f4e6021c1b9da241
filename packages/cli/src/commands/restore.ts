import { listBackups, restoreBackup, systemClock } from '@thrum/host'
import { saying, ThrumError } from '@thrum/model/ground'
import { withTexts, wrap } from '@thrum/report'
import { single } from '../terminal/arguments.ts'
import type { Command } from './command.ts'
import { projectOrWord } from './which-project.ts'

const kilobytes = (bytes: number): number => Math.ceil(bytes / 1000)

export const restoreCommand: Command = {
  name: 'restore',
  options: ['in', 'day'],
  flags: [],
  run: async (given, terminal) => {
    const [named, ...more] = given.words
    if (more.length > 0) throw new ThrumError('cli/restore/usage')
    const path = projectOrWord(given, named, terminal)
    const day = single(given, 'day')
    const tell = (sentences: readonly ReturnType<typeof saying>[]): void => {
      for (const sentence of sentences) for (const line of wrap(terminal.say(sentence))) terminal.print(line)
    }
    if (day === undefined) {
      const backups = await listBackups(path)
      const usable = backups.find(({ facts, isOfOther }) => facts !== null && !isOfOther)
      const sentences = [
        saying('cli/restore/backups', { project: path, count: backups.length }),
        ...backups.map(({ day: own, facts, latest, bytes, isOfOther }) =>
          facts === null || isOfOther
            ? saying(isOfOther ? 'cli/restore/other' : 'cli/restore/unreadable', { day: own })
            : saying('cli/restore/backup', { day: own, facts, latest: latest?.slice(0, 10) ?? '', kilobytes: kilobytes(bytes) }),
        ),
        ...(usable === undefined ? [] : [saying('cli/restore/how', { project: path, day: usable.day })]),
      ]
      tell(sentences)
      terminal.json(withTexts({ project: path, backups, sentences }, terminal.say))
      return 0
    }
    const restored = await restoreBackup(path, day, systemClock)
    const { before, missing, facts } = restored
    const sentences = [
      saying('cli/restore/done', { project: path, day, facts }),
      ...(before === null ? [] : [saying('cli/restore/kept', { before })]),
      ...(before !== null && missing !== null && missing > 0
        ? [saying('cli/restore/missing', { missing, before, project: path })]
        : []),
    ]
    tell(sentences)
    terminal.json(withTexts({ ...restored, sentences }, terminal.say))
    return 0
  },
}
