import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { basename } from 'node:path'
import { describeRead, type Mapping, parseMapping } from '@thrum/exchange'
import { bringCounts, type CountsOffered, offerCounts, openProject, requireWritable } from '@thrum/host'
import { saying, ThrumError } from '@thrum/model/ground'
import { withTexts, wrap } from '@thrum/report'
import { type Arguments, single } from '../terminal/arguments.ts'
import type { Terminal } from '../terminal/terminal.ts'
import type { Command } from './command.ts'
import { type MappingMade, mappingFor, mappingOptions } from './import-mapping.ts'
import { readBytes } from './read-file.ts'
import { whichProject } from './which-project.ts'

function readMapping(path: string): Mapping {
  let text: string
  try {
    text = readFileSync(path, 'utf8')
  } catch (cause) {
    throw new ThrumError('cli/import/no-mapping', { file: path }, { cause })
  }
  try {
    return parseMapping(JSON.parse(text))
  } catch (cause) {
    if (cause instanceof ThrumError) throw cause
    throw new ThrumError('cli/import/mapping-not-json', { file: path }, { cause })
  }
}

/** The mapping kept beside the sheet, so that a person can read it, change it, and use it again. */
function keepMapping(path: string, mapping: Mapping): void {
  writeFileSync(path, `${JSON.stringify(mapping, null, 2)}\n`)
}

/** What a column becomes, in the words of the mapping file, with the kind or the factor it names. */
function asOf({ columns }: Mapping, header: string, as: string): string {
  const column = columns.find((own) => own.header === header)
  const named = column?.kind ?? column?.factor
  return named === undefined ? as : `${as}, ${named}`
}

function show(terminal: Terminal, path: string, made: MappingMade, offered: CountsOffered, mappingPath: string): void {
  const { say, print } = terminal
  const bullets = (sayings: readonly Parameters<typeof say>[0][]): void => {
    for (const own of sayings) for (const line of wrap(say(own), '  - ', '    ')) print(line)
  }
  print(say(saying('cli/import/read', { file: basename(path), rows: offered.read.rows.read })))
  if (made.reasons.length > 0) {
    print('')
    print(say(saying('cli/import/columns', { file: mappingPath })))
    bullets(
      made.reasons.map(({ header, as, because }) =>
        saying('cli/import/column', { header, as: asOf(made.mapping, header, as), because }),
      ),
    )
  }
  if (made.questions.length > 0) {
    print('')
    print(say(saying('cli/import/questions')))
    bullets(
      made.questions.map(({ asks, proposed }) => (proposed === null ? asks : saying('cli/import/proposed', { asks, proposed }))),
    )
  }
  print('')
  print(say(saying('cli/import/becomes')))
  bullets(describeRead(offered.read))
}

async function isAccepted(given: Arguments, terminal: Terminal): Promise<boolean> {
  if (given.flags.has('accept')) return true
  if (!terminal.isInteractive) return false
  const reply = await terminal.ask(`\n${terminal.say(saying('cli/import/accept'))} `)
  return /^(y|yes)$/iu.test(reply.trim())
}

export const importCommand: Command = {
  name: 'import',
  options: ['in', 'mapping', ...mappingOptions],
  flags: ['accept'],
  run: async (given, terminal) => {
    const [path, ...more] = given.words
    if (path === undefined || more.length > 0) throw new ThrumError('cli/import/usage')
    const projectPath = whichProject(given)
    const bytes = readBytes(path)
    const named = single(given, 'mapping')
    const mappingPath = named ?? `${path}.mapping.json`
    const project = await openProject(projectPath, 'write')
    try {
      requireWritable(project)
      const kept = named !== undefined || existsSync(mappingPath) ? readMapping(mappingPath) : null
      const made = mappingFor(bytes, kept, given)
      // Kept before the rows are read, so that a file that cannot be read yet leaves something to mend.
      keepMapping(mappingPath, made.mapping)
      const offered = await offerCounts(bytes, made.mapping, terminal.work)
      show(terminal, path, made, offered, mappingPath)
      const accepted = await isAccepted(given, terminal)
      if (!accepted) {
        terminal.print(
          `\n${wrap(terminal.say(saying('cli/import/not-yet', { file: path, mapping: mappingPath, project: projectPath }))).join('\n')}`,
        )
        terminal.json(resultOf(terminal, path, mappingPath, made, offered, 'offered'))
        return 0
      }
      const brought = await bringCounts(project, path, bytes, offered, terminal.work)
      terminal.print(
        `\n${terminal.say(saying(brought.added ? 'cli/import/done' : 'cli/import/known', { file: basename(path), counts: offered.read.counts, project: projectPath }))}`,
      )
      terminal.json(resultOf(terminal, path, mappingPath, made, offered, brought.added ? 'accepted' : 'known'))
      return 0
    } finally {
      await project.close()
    }
  },
}

function resultOf(
  terminal: Terminal,
  path: string,
  mapping: string,
  made: MappingMade,
  offered: CountsOffered,
  state: 'offered' | 'accepted' | 'known',
): unknown {
  const { read } = offered
  const { reasons, questions } = made
  return withTexts(
    {
      file: path,
      state,
      mapping,
      rows: read.rows,
      counts: read.counts,
      tallies: read.tallies,
      kinds: read.kinds,
      reasons,
      questions,
      read: describeRead(read),
    },
    terminal.say,
  )
}
