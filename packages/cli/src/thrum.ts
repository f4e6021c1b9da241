import { runCommand } from './run-command.ts'
import { nodeTerminal } from './terminal/node-terminal.ts'

const argv = process.argv.slice(2)
const terminal = nodeTerminal(argv.includes('--json'), process.env.THRUM_CALLED)
process.exitCode = await runCommand(argv, terminal)
if (terminal.work.signal.aborted) process.exitCode = 130
