import { checkProjectFile, openProject } from '@thrum/host'
import { rowAddress } from '@thrum/model'
import { saying, ThrumError } from '@thrum/model/ground'
import { checkProject } from '@thrum/questions'
import { withTexts, wrap } from '@thrum/report'
import type { Command } from './command.ts'
import { projectOrWord } from './which-project.ts'

/** Rows of one finding that are named. */
const rowsNamed = 5

export const checkCommand: Command = {
  name: 'check',
  options: ['in'],
  flags: [],
  run: async (given, terminal) => {
    const [named, ...more] = given.words
    if (more.length > 0) throw new ThrumError('cli/check/usage')
    const path = projectOrWord(given, named, terminal)
    const { say, print } = terminal
    await checkProjectFile(path)
    const project = await openProject(path, 'read')
    try {
      const snapshot = await project.snapshot()
      const findings = checkProject(snapshot)
      const { count } = snapshot.tables
      const holdings = saying('cli/check/holds', {
        counts: count.rows,
        fields: snapshot.fields.length,
        kinds: snapshot.kinds.length,
        sheets: snapshot.sheets.length,
      })
      for (const line of wrap(say(holdings))) print(line)
      for (const { severity, text, cure, rows } of findings) {
        for (const line of wrap(`${say(saying(`report/severity/${severity}`))} ${say(text)}`, '  - ', '    ')) print(line)
        if (cure !== null) for (const line of wrap(say(saying('report/cure', { cure })), '    ', '    ')) print(line)
        const lines = rows
          .slice(0, rowsNamed)
          .flatMap((row) => (Number.isNaN(count.columns.line.values[row] ?? Number.NaN) ? [] : [count.columns.line.values[row]]))
        const named = saying('cli/check/lines', { lines: lines.join(', '), more: Math.max(0, rows.length - lines.length) })
        if (lines.length > 0 && severity !== 'note') for (const line of wrap(say(named), '    ')) print(line)
      }
      for (const sheet of snapshot.unfinishedSheets)
        for (const line of wrap(say(saying('cli/check/unfinished', { sheet: sheet.slice(0, 12) })))) print(line)
      const holds = findings.every(({ severity }) => severity !== 'block')
      print(say(saying(holds ? 'cli/check/fine' : 'cli/check/blocked')))
      terminal.json(
        withTexts(
          {
            project: path,
            digest: snapshot.digest,
            holds,
            findings: findings.map(({ rows, ...rest }) => ({ ...rest, rows: rows.map((row) => rowAddress(count, row)) })),
            unfinishedSheets: snapshot.unfinishedSheets,
          },
          say,
        ),
      )
      return holds ? 0 : 1
    } finally {
      await project.close()
    }
  },
}
