import { ThrumError } from '@thrum/model/ground'
import { askCommand } from './commands/ask.ts'
import { checkCommand } from './commands/check.ts'
import type { Command, ExitCode } from './commands/command.ts'
import { correctCommand } from './commands/correct.ts'
import { fitCommand } from './commands/fit.ts'
import { forgetCommand } from './commands/forget.ts'
import { helpCommand } from './commands/help.ts'
import { historyCommand } from './commands/history.ts'
import { importCommand } from './commands/import.ts'
import { mergeCommand } from './commands/merge.ts'
import { newCommand } from './commands/new.ts'
import { restoreCommand } from './commands/restore.ts'
import { serveCommand } from './commands/serve.ts'
import { settleCommand } from './commands/settle.ts'
import { withdrawCommand } from './commands/withdraw.ts'
import { commonFlags, parseArguments, requireKnown } from './terminal/arguments.ts'
import { failureJson, failureLines, mishap, type Terminal } from './terminal/terminal.ts'

/** Every command there is. */
export const commands: readonly Command[] = [
  newCommand,
  importCommand,
  checkCommand,
  settleCommand,
  correctCommand,
  withdrawCommand,
  historyCommand,
  forgetCommand,
  mergeCommand,
  restoreCommand,
  askCommand,
  fitCommand,
  serveCommand,
  helpCommand,
]

async function run(argv: readonly string[], terminal: Terminal): Promise<ExitCode> {
  // --json may stand before the command as well as behind it.
  const [name, ...rest] = argv[0] === '--json' && argv.length > 1 ? [...argv.slice(1), '--json'] : argv
  if (name === undefined || name === '--json' || name === '--help' || name === '-h')
    return helpCommand.run(parseArguments([], commonFlags), terminal)
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
    const failure = error instanceof ThrumError ? error : mishap(error)
    if (terminal.isJson) terminal.json(failureJson(failure, terminal.say))
    else terminal.note(failureLines(failure, terminal.say).join('\n'))
    return 2
  }
}
