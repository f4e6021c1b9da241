import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { ask, openProject, requireQuestion } from '@thrum/host'
import { saying, ThrumError } from '@thrum/model/ground'
import { answerJson, printAnswer, withTexts } from '@thrum/report'
import { requireKnown, single } from '../terminal/arguments.ts'
import type { Command } from './command.ts'
import { whichProject } from './which-project.ts'

const own = ['in', 'receipt', 'seed', 'brief']

export const askCommand: Command = {
  name: 'ask',
  options: own,
  flags: ['brief'],
  run: async (given, terminal) => {
    const [id, ...more] = given.words
    if (id === undefined || more.length > 0) throw new ThrumError('cli/ask/usage')
    const question = requireQuestion(id)
    requireKnown(given, [...own, ...Object.keys(question.options)])
    const raw = Object.fromEntries([...given.options].filter(([name]) => !own.includes(name)))
    const project = await openProject(whichProject(given), 'write')
    try {
      if (project.access.mode === 'read') terminal.note(terminal.say(project.access.because))
      const { answer, snapshot } = await ask(project, id, raw, terminal.work, single(given, 'seed'))
      terminal.print(printAnswer(answer, terminal.say, given.flags.has('brief') ? 'short' : 'full'))
      terminal.json(withTexts(answer, terminal.say))
      const folder = single(given, 'receipt')
      if (folder !== undefined) {
        mkdirSync(folder, { recursive: true })
        for (const { name, text } of question.receipt(snapshot, answer).files) writeFileSync(join(folder, name), text)
        writeFileSync(join(folder, 'answer.json'), `${answerJson(answer, terminal.say)}\n`)
        terminal.print(`\n${terminal.say(saying('cli/ask/receipt', { folder }))}`)
      }
      return 0
    } finally {
      await project.close()
    }
  },
}
