import { historyOfRow, openProject, type RowHistory, type ToldCell, type ToldStep } from '@thrum/host'
import { type Saying, saying, ThrumError } from '@thrum/model/ground'
import { withTexts, wrap } from '@thrum/report'
import type { Terminal } from '../terminal/terminal.ts'
import type { Command } from './command.ts'
import { whichProject } from './which-project.ts'

/** Day and minute of a moment; clocks of facts are in UTC. */
const moment = (at: string): string => `${at.slice(0, 16).replace('T', ' ')} UTC`

function stepSaying({ to, by, at, reason, file, takenBack, fact }: ToldStep): Saying {
  const values = { to, by, at: moment(at), reason: reason ?? '', file: file ?? '', fact, taken: takenBack ? 'yes' : 'no' }
  if (file !== null) return saying('cli/history/by-file', values)
  return saying(reason === null ? 'cli/history/settled' : 'cli/history/corrected', values)
}

function tellCell(terminal: Terminal, row: string, cell: ToldCell): void {
  const { say, print } = terminal
  const lines = (sentence: Saying, first: string): void => {
    for (const line of wrap(say(sentence), first, `${' '.repeat(first.length)}`)) print(line)
  }
  lines(saying('cli/history/cell', { column: cell.column, brought: cell.brought ?? '–' }), '  ')
  for (const step of cell.steps) lines(stepSaying(step), '    - ')
  if (cell.contested) lines(saying('cli/history/contested', { row, column: cell.column, stands: cell.stands ?? '–' }), '    ')
  else if (cell.stands !== null) lines(saying('cli/history/stands', { stands: cell.stands }), '    ')
}

function tell(terminal: Terminal, { row, told, line, cells, withdrawals, stands }: RowHistory): void {
  const { say, print } = terminal
  for (const text of wrap(say(saying(told === '' ? 'cli/history/fact' : 'cli/history/row', { row, told })))) print(text)
  if (line !== null) {
    const written = line.cells.filter(([, text]) => text.trim() !== '').map(([header, text]) => `${header}: ${text.trim()}`)
    const sentence = saying('cli/history/line', { file: line.file, line: line.number, cells: written.join(' · ') })
    for (const text of wrap(say(sentence), '  ', '    ')) print(text)
  }
  for (const cell of cells) tellCell(terminal, row, cell)
  if (cells.length === 0) print(`  ${say(saying('cli/history/never'))}`)
  for (const { by, at, reason, fact, takenBack } of withdrawals) {
    const values = { by, at: moment(at), reason, fact, taken: takenBack ? 'yes' : 'no' }
    for (const text of wrap(say(saying('cli/history/withdrawn', values)), '  ', '    ')) print(text)
  }
  if (!stands) print(`  ${say(saying('cli/history/gone'))}`)
}

export const historyCommand: Command = {
  name: 'history',
  options: ['in'],
  flags: [],
  run: async (given, terminal) => {
    const [row, column, ...more] = given.words
    if (row === undefined || more.length > 0) throw new ThrumError('cli/history/usage')
    const path = whichProject(given)
    const project = await openProject(path, 'read')
    try {
      const history = await historyOfRow(project, { row, column })
      tell(terminal, history)
      terminal.json(withTexts({ project: path, ...history }, terminal.say))
      return 0
    } finally {
      await project.close()
    }
  },
}
