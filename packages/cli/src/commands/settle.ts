import { shortened } from '@thrum/exchange'
import { openProject, settleCell, type ToSettle, whatWaits } from '@thrum/host'
import { type Saying, saying, ThrumError } from '@thrum/model/ground'
import { columnsOf, withTexts, wrap } from '@thrum/report'
import type { Arguments } from '../terminal/arguments.ts'
import type { Terminal } from '../terminal/terminal.ts'
import type { Command } from './command.ts'
import { openForWriting } from './open-for-writing.ts'
import { whichProject } from './which-project.ts'

/** Cells told one by one; of more, the number is said. The machine form has all of them. */
const mostTold = 50

/** Columns that a name of a column or kind may take: a longer one is known by its beginning, when it is typed too. */
const widestName = 60

function beginning(name: string): string {
  if (columnsOf(name) <= widestName) return name
  let most = widestName
  while (columnsOf(shortened(name, most)) > widestName) most--
  return shortened(name, most)
}

const named = <T extends { readonly column: string }>(cell: T): T => ({ ...cell, column: beginning(cell.column) })

function print(terminal: Terminal, sentence: Saying, indent = ''): void {
  for (const line of wrap(terminal.say(sentence), indent, indent === '' ? '' : '    ')) terminal.print(line)
}

function list(terminal: Terminal, title: Saying, sentences: readonly Saying[]): void {
  if (sentences.length === 0) return
  print(terminal, title)
  for (const sentence of sentences.slice(0, mostTold)) print(terminal, sentence, '  - ')
  if (sentences.length > mostTold) print(terminal, saying('cli/settle/more', { more: sentences.length - mostTold }), '  - ')
  terminal.print('')
}

function tell(terminal: Terminal, waiting: ToSettle): void {
  const cells = waiting.cells.map(named)
  const contested = waiting.contested.map(named)
  const { rows } = waiting
  list(
    terminal,
    saying('cli/settle/contested', { cells: contested.length }),
    contested.map(({ row, column, told, choices }) =>
      saying('cli/settle/choices', {
        row,
        column,
        told,
        choices: choices.map(({ to, by, at }) => saying('cli/settle/choice', { to, by, at: at.slice(0, 10) })),
      }),
    ),
  )
  list(
    terminal,
    saying('cli/settle/cells', { cells: cells.length }),
    cells.map(({ row, column, told, written, because, proposed }) =>
      saying(because === null ? 'cli/settle/cell' : 'cli/settle/cell-because', {
        row,
        column,
        told,
        written,
        because: because ?? '',
        proposed: proposed ?? '',
      }),
    ),
  )
  list(
    terminal,
    saying('cli/settle/rows', { rows: rows.length }),
    rows.map(({ row, because }) => saying('cli/settle/row', { row, because })),
  )
  if (cells.length + contested.length + rows.length === 0) print(terminal, saying('cli/settle/none'))
  if (cells.length > 0) print(terminal, saying('cli/settle/how', { row: cells[0]?.row ?? '', column: cells[0]?.column ?? '' }))
  if (contested.length > 0) {
    print(terminal, saying('cli/settle/how-contested', { row: contested[0]?.row ?? '', column: contested[0]?.column ?? '' }))
  }
}

async function settleOne(given: Arguments, terminal: Terminal, path: string): Promise<void> {
  const [row = '', column = '', value = ''] = given.words
  const project = await openForWriting(path, terminal)
  try {
    const made = await settleCell(project, { row, column, value })
    const sentences = [
      saying('cli/settle/done', { row: made.row, column: made.column, from: made.from, to: made.to }),
      saying('cli/correct/undo', { fact: made.fact }),
    ]
    for (const sentence of sentences) print(terminal, sentence)
    terminal.json(withTexts({ project: path, ...made, sentences }, terminal.say))
  } finally {
    await project.close()
  }
}

export const settleCommand: Command = {
  name: 'settle',
  options: ['in'],
  flags: [],
  run: async (given, terminal) => {
    if (given.words.length !== 0 && given.words.length !== 3) throw new ThrumError('cli/settle/usage')
    const path = whichProject(given, terminal)
    if (given.words.length === 3) {
      await settleOne(given, terminal, path)
      return 0
    }
    const project = await openProject(path, 'read')
    try {
      const waiting = await whatWaits(project)
      tell(terminal, waiting)
      terminal.json(withTexts({ project: path, ...waiting }, terminal.say))
      return 0
    } finally {
      await project.close()
    }
  },
}
