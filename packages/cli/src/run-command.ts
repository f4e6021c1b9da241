import { ThrumError } from '@thrum/model/ground'
import { askCommand } from './commands/ask.ts'
import { checkCommand } from './commands/check.ts'
import type { Command, ExitCode } from './commands/command.ts'
import { correctCommand } from './commands/correct.ts'
import { helpCommand } from './commands/help.ts'
import { historyCommand } from './commands/history.ts'
import { importCommand } from './commands/import.ts'
import { newCommand } from './commands/new.ts'
import { settleCommand } from './commands/settle.ts'
import { withdrawCommand } from './commands/withdraw.ts'
import { commonFlags, parseArguments, requireKnown } from './terminal/arguments.ts'
import { failureJson, failureLines, mishapLines, type Terminal } from './terminal/terminal.ts'

/** Every command there is. */
export const commands: readonly Command[] = [
  newCommand,
  importCommand,
  checkCommand,
  settleCommand,
  correctCommand,
  withdrawCommand,
  historyCommand,
  askCommand,
  helpCommand,
]

async function run(argv: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const [name, ...rest] = argv
  if (name === undefined || name === '--help' || name === '-h') return helpCommand.run(parseArguments([], commonFlags), terminal)
  const command = commands.find((own) => own.name === name)
  if (command === undefined)
    throw new ThrumError('cli/no-such-command', { name, known: commands.map((own) => own.name).join(', ') })
  const given = parseArguments(rest, [...commonFlags, ...command.flags])
  if (given.flags.has('help')) {
    const topic = command.name === 'ask' ? (given.words[0] ?? 'ask') : command.name
    return helpCommand.run(parseArguments([topic], commonFlags), terminal)
  }
  // `ask` knows its own names only with its question.
  if (command.name !== 'ask') requireKnown(given, [...command.options, ...command.flags])
  return command.run(given, terminal)
}

/** Runs a command line. Failures that a person can act on are told with their remedy, and end with 2. */
export async function runCommand(argv: readonly string[], terminal: Terminal): Promise<ExitCode> {
  try {
    return await run(argv, terminal)
  } catch (error) {
    if (error instanceof ThrumError) {
      if (terminal.isJson) terminal.json(failureJson(error, terminal.say))
      else terminal.note(failureLines(error, terminal.say).join('\n'))
    } else terminal.note(mishapLines(error, terminal.say).join('\n'))
    return 2
  }
}
