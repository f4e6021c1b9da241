import { type Saying, saying } from '@thrum/model/ground'
import type { Terminal } from './terminal.ts'

/** Asks a question that is answered by yes or no, in the language it is asked in or in English. Anything else is a no. */
export async function isAgreed(terminal: Terminal, question: Saying): Promise<boolean> {
  const reply = (await terminal.ask(`\n${terminal.say(question)} `)).trim().toLowerCase()
  const yes = terminal.say(saying('cli/yes')).toLowerCase()
  return ['y', 'yes', yes, yes.slice(0, 1), yes.normalize('NFD').replace(/\p{M}/gu, '')].includes(reply)
}
