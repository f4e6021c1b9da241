import { basename } from 'node:path'
import { type Asking, ask, askSnapshot, factsOf, localAuthor, planSnapshot, requireQuestion } from '@thrum/host'
import { ThrumError } from '@thrum/model/ground'
import { answerJson, printAnswer, withTexts, wrap } from '@thrum/report'
import { type Arguments, requireKnown, single } from '../terminal/arguments.ts'
import type { Terminal } from '../terminal/terminal.ts'
import type { Command } from './command.ts'
import { openForWriting } from './open-for-writing.ts'
import { readBytes } from './read-file.ts'
import { whichProject } from './which-project.ts'
import { figureOptions, readFigureAsked, writeFigure } from './write-figure.ts'
import { requireReceiptFolder, writeReceipt } from './write-receipt.ts'

const own: readonly string[] = ['in', 'plan', 'receipt', ...figureOptions, 'seed', 'brief']

/** Options that the host fills in from the log; nobody types them. */
export const filledIn: readonly string[] = ['worthSet', 'looks']

type Raw = { readonly [name: string]: readonly string[] }

/** Tells an answer. Its machine form comes last: where figure or receipt fails, that failure is the one thing told. */
async function tell({ answer, snapshot, question }: Asking, given: Arguments, terminal: Terminal): Promise<void> {
  terminal.print(printAnswer(answer, terminal.say, given.flags.has('brief') ? 'short' : 'full'))
  const figure = readFigureAsked(given)
  if (figure !== null) await writeFigure(figure, answer, terminal)
  const folder = single(given, 'receipt')
  if (folder !== undefined) {
    const { files } = question.receipt(snapshot, answer)
    writeReceipt(folder, [...files, { name: 'answer.json', text: `${answerJson(answer, terminal.say)}\n` }], terminal)
  }
  terminal.json(withTexts(answer, terminal.say))
}

async function askProject(id: string, raw: Raw, given: Arguments, terminal: Terminal): Promise<void> {
  const project = await openForWriting(whichProject(given, terminal), terminal)
  try {
    if (project.access.mode === 'read') terminal.note(wrap(terminal.say(project.access.because)).join('\n'))
    await tell(await ask(project, id, raw, terminal.work, single(given, 'seed')), given, terminal)
  } finally {
    await project.close()
  }
}

/** A plan is asked of together with what the project knows of its fields, if one is named. */
async function askPlan(id: string, plan: string, raw: Raw, given: Arguments, terminal: Terminal): Promise<void> {
  if (id !== 'is-design-sound') throw new ThrumError('cli/ask/plan-only-audit', { id })
  const named = single(given, 'in')
  const known = named === undefined ? [] : await factsOf(named)
  const snapshot = await planSnapshot(readBytes(plan), basename(plan), known, localAuthor(), terminal.work)
  await tell(await askSnapshot(snapshot, id, raw, terminal.work, single(given, 'seed')), given, terminal)
}

export const askCommand: Command = {
  name: 'ask',
  options: own,
  flags: ['brief'],
  run: async (given, terminal) => {
    const [id, ...more] = given.words
    if (id === undefined || more.length > 0) throw new ThrumError('cli/ask/usage')
    readFigureAsked(given)
    requireReceiptFolder(single(given, 'receipt'))
    const question = requireQuestion(id)
    requireKnown(given, [...own, ...Object.keys(question.options).filter((name) => !filledIn.includes(name))])
    const raw = Object.fromEntries([...given.options].filter(([name]) => !own.includes(name)))
    const plan = single(given, 'plan')
    if (plan === undefined) await askProject(id, raw, given, terminal)
    else await askPlan(id, plan, raw, given, terminal)
    return 0
  },
}
