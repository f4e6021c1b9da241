import { requireQuestion, version } from '@thrum/host'
import type { OptionDeclaration } from '@thrum/model'
import { saying, ThrumError } from '@thrum/model/ground'
import { questions } from '@thrum/questions'
import { wrap } from '@thrum/report'
import { typedName } from '../terminal/arguments.ts'
import type { Terminal } from '../terminal/terminal.ts'
import { filledIn } from './ask.ts'
import type { Command } from './command.ts'
import { commandLine, helpLines } from './help-text.ts'
import { figureOptions } from './write-figure.ts'

const commandNames = [
  'new',
  'import',
  'check',
  'settle',
  'correct',
  'withdraw',
  'history',
  'forget',
  'merge',
  'restore',
  'ask',
  'fit',
  'serve',
  'help',
] as const

/** What stands for the value of an option: its choices, or a word for its type. */
function valueWord({ say }: Terminal, declared: OptionDeclaration): string {
  return declared.type === 'choice' ? declared.choices.join('|') : say(saying(`cli/help/value/${declared.type}`))
}

function overview({ say, print }: Terminal): void {
  for (const line of wrap(say(saying('cli/help/title', { version })))) print(line)
  print('')
  for (const name of commandNames) for (const line of commandLine(say(saying(`cli/help/line/${name}`)))) print(line)
  print('')
  print(say(saying('cli/help/questions')))
  for (const { id } of questions)
    for (const line of wrap(`${id}: ${say(saying(`questions/${id}/title`))}`, '  ', '      ')) print(line)
  print('')
  for (const line of wrap(say(saying('cli/help/more')))) print(line)
}

function ofQuestion(terminal: Terminal, id: string): void {
  const { say, print } = terminal
  const question = requireQuestion(id)
  print(say(saying('cli/help/ask-one', { id })))
  for (const line of wrap(say(saying(`questions/${id}/title`)))) print(line)
  print('')
  for (const [name, declared] of Object.entries(question.options)) {
    if (filledIn.includes(name)) continue
    const told = `--${typedName(name)} ${valueWord(terminal, declared)}: ${say(saying(declared.explained))}`
    for (const line of wrap(told, '  ', '      ')) print(line)
  }
  if (id === 'is-design-sound') for (const line of wrap(say(saying('cli/help/option/plan')), '  ', '      ')) print(line)
  for (const name of ['in', 'receipt', ...figureOptions, 'seed', 'brief', 'json'])
    for (const line of wrap(say(saying(`cli/help/option/${typedName(name)}`)), '  ', '      ')) print(line)
  print('')
  for (const line of wrap(say(saying('cli/help/conditions')))) print(line)
}

export const helpCommand: Command = {
  name: 'help',
  options: [],
  flags: [],
  run: async (given, terminal) => {
    const [topic, ...more] = given.words
    if (more.length > 0) throw new ThrumError('cli/help/usage')
    if (topic === undefined) overview(terminal)
    else if (commandNames.some((name) => name === topic))
      for (const line of helpLines(terminal.say(saying(`cli/help/command/${topic}`)))) terminal.print(line)
    else ofQuestion(terminal, topic)
    terminal.json({ version, commands: commandNames, questions: questions.map(({ id, options }) => ({ id, options })) })
    return 0
  },
}
