import { ask, createDemonstration, openProject, plantedQuestions } from '@thrum/host'
import { saying, ThrumError } from '@thrum/model/ground'
import { pageWidth, printAnswer, wrap } from '@thrum/report'
import { serve } from './serve-project.ts'
import { nodeTerminal } from './terminal/node-terminal.ts'
import { failureLines, type Terminal } from './terminal/terminal.ts'

/** The demonstration lies where the command was given, beside the README. */
const path = 'ostrel-vale.thrum'

/** Makes the demonstration if there is none, and prints its main answers. */
async function tellAnswers(terminal: Terminal): Promise<void> {
  const { say, print, work } = terminal
  const line = '─'.repeat(pageWidth.columns)
  await createDemonstration(path)
  for (const text of wrap(say(saying('cli/start/welcome', { file: path })))) print(text)
  const project = await openProject(path, 'write')
  try {
    const visits = await ask(project, 'who-visits', {}, work)
    print(`\n${line}\n`)
    print(printAnswer(visits.answer, say, 'short'))
    for (const { question, options } of plantedQuestions) {
      const { answer } = await ask(project, question, { ...options }, work)
      print(`\n${line}\n`)
      print(printAnswer(answer, say, 'short'))
    }
  } finally {
    await project.close()
  }
  print(`\n${line}\n`)
  for (const text of wrap(say(saying('cli/start/next', { file: path })))) print(text)
}

// npm runs it in the folder of the command line.
const terminal = nodeTerminal(false, process.platform === 'win32' ? 'thrum' : './thrum')
try {
  await tellAnswers(terminal)
  if (!process.argv.includes('--exit')) await serve(path, null, terminal)
} catch (error) {
  if (!(error instanceof ThrumError)) throw error
  terminal.note(failureLines(error, terminal.say).join('\n'))
  process.exitCode = 2
}
