import { type ForgetPlan, type Forgettable, type Forgotten, forget, forgettable, offerForget } from '@thrum/host'
import { type Saying, saying, ThrumError } from '@thrum/model/ground'
import { withTexts, wrap } from '@thrum/report'
import { isAgreed } from '../terminal/agreed.ts'
import { single } from '../terminal/arguments.ts'
import type { Terminal } from '../terminal/terminal.ts'
import type { Command } from './command.ts'
import { openForWriting } from './open-for-writing.ts'
import { whichProject } from './which-project.ts'

/** Words named in one sentence. */
const mostNamed = 12

function offered(name: string, { what, standsIn, stays, files }: ForgetPlan): readonly Saying[] {
  return [
    saying(standsIn.length === 0 ? 'cli/forget/nowhere' : 'cli/forget/stands', { what, name }),
    ...standsIn.map(({ where, column, number }) =>
      column === null ? saying('cli/forget/facts', { where, number }) : saying('cli/forget/words', { where, column, number }),
    ),
    ...(stays.length === 0
      ? []
      : [saying('cli/forget/stays', { words: stays.slice(0, mostNamed).join(', '), count: stays.length })]),
    ...(files.length === 0 ? [] : [saying('cli/forget/files', { files: files.join(', '), count: files.length })]),
    saying('cli/forget/for-ever', { what }),
  ]
}

function done(name: string, plan: ForgetPlan, { added, filesDropped, copies, copiesLeft }: Forgotten): readonly Saying[] {
  const instead = plan.redactions.flatMap(({ body }) => {
    const own = body.name as { readonly instead?: string } | undefined
    return own?.instead ?? []
  })
  return [
    saying(added ? 'cli/forget/done' : 'cli/forget/known', { what: plan.what, name, instead: instead[0] ?? '' }),
    ...(filesDropped > 0 ? [saying('cli/forget/dropped', { files: filesDropped })] : []),
    ...(copies.length > 0 ? [saying('cli/forget/copies', { copies: copies.length })] : []),
    ...copiesLeft.map(({ file, because }) => saying('cli/forget/copy-left', { file, because })),
    saying('cli/forget/elsewhere'),
  ]
}

async function isAccepted(accept: boolean, terminal: Terminal): Promise<boolean> {
  if (accept) return true
  if (!terminal.isInteractive) return false
  return await isAgreed(terminal, saying('cli/forget/accept'))
}

function isForgettable(what: string): what is Forgettable {
  return forgettable.some((own) => own === what)
}

export const forgetCommand: Command = {
  name: 'forget',
  options: ['in', 'because'],
  flags: ['accept'],
  run: async (given, terminal) => {
    const [what, name, ...more] = given.words
    if (what === undefined || name === undefined || more.length > 0 || !isForgettable(what))
      throw new ThrumError('cli/forget/usage')
    const because = single(given, 'because')
    if (because === undefined) throw new ThrumError('host/forget/no-reason')
    const path = whichProject(given, terminal)
    const project = await openForWriting(path, terminal)
    const tell = (sentences: readonly Saying[]): void => {
      for (const sentence of sentences) for (const line of wrap(terminal.say(sentence))) terminal.print(line)
    }
    try {
      const plan = await offerForget(project, { what, name, because })
      const told = offered(name, plan)
      tell(told)
      const { standsIn, stays, files } = plan
      if (!(await isAccepted(given.flags.has('accept'), terminal))) {
        const notYet = saying('cli/forget/not-yet', { what, name, project: path })
        terminal.print('')
        tell([notYet])
        terminal.json(
          withTexts({ project: path, state: 'offered', standsIn, stays, files, sentences: [...told, notYet] }, terminal.say),
        )
        return 0
      }
      const result = await forget(project, plan)
      const sentences = done(name, plan, result)
      terminal.print('')
      tell(sentences)
      terminal.json(withTexts({ project: path, state: 'forgotten', standsIn, stays, files, ...result, sentences }, terminal.say))
      return 0
    } finally {
      await project.close()
    }
  },
}
