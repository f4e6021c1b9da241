import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { basename } from 'node:path'
import { describeRead, type Mapping, parseMapping } from '@thrum/exchange'
import {
  bringCounts,
  bringMended,
  type CountsOffered,
  earlierMapping,
  type MendedOr,
  offerCounts,
  offerMended,
  type Project,
  requireWritable,
} from '@thrum/host'
import { type Saying, saying, ThrumError } from '@thrum/model/ground'
import { commandWord, withTexts, wrap } from '@thrum/report'
import { isAgreed } from '../terminal/agreed.ts'
import { type Arguments, single, typedName } from '../terminal/arguments.ts'
import type { Terminal } from '../terminal/terminal.ts'
import type { Command, ExitCode } from './command.ts'
import { type MappingMade, mappingFor, mappingOptions } from './import-mapping.ts'
import { mendedResult, mendedSayings } from './import-mended.ts'
import { openForWriting } from './open-for-writing.ts'
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

/**
 * The mapping kept beside the sheet, so that a person can read it, change it, and use it again.
 *
 * @throws ThrumError cli/import/mapping-not-kept
 */
function keepMapping(path: string, mapping: Mapping): void {
  try {
    writeFileSync(path, `${JSON.stringify(mapping, null, 2)}\n`)
  } catch (cause) {
    throw new ThrumError('cli/import/mapping-not-kept', { file: path }, { cause })
  }
}

/** What a column becomes, in the words of the mapping file, with the kind or the factor it names. */
function asOf({ columns }: Mapping, header: string, as: string): string {
  const column = columns.find((own) => own.header === header)
  const named = column?.kind ?? column?.factor
  return named === undefined ? as : `${as}, ${named}`
}

function show(
  terminal: Terminal,
  path: string,
  made: MappingMade,
  offered: CountsOffered,
  mended: MendedOr,
  mappingPath: string,
): void {
  const { say, print } = terminal
  const bullets = (sayings: readonly Parameters<typeof say>[0][]): void => {
    for (const own of sayings) for (const line of wrap(say(own), '  - ', '    ')) print(line)
  }
  for (const line of wrap(say(saying('cli/import/read', { file: basename(path), rows: offered.read.rows.read })))) print(line)
  if (made.reasons.length > 0) {
    print('')
    for (const line of wrap(say(saying('cli/import/columns', { file: mappingPath })))) print(line)
    bullets(
      made.reasons.map(({ header, as, because }) =>
        saying('cli/import/column', { header, as: asOf(made.mapping, header, as), because }),
      ),
    )
  }
  if (made.questions.length > 0) {
    print('')
    for (const line of wrap(say(saying('cli/import/questions')))) print(line)
    bullets(
      made.questions.map(({ asks, proposed }) => (proposed === null ? asks : saying('cli/import/proposed', { asks, proposed }))),
    )
  }
  if (mended.kind === 'known') return
  print('')
  if (mended.kind === 'mended') {
    for (const own of mendedSayings(path, mended)) {
      for (const line of own.isItem ? wrap(say(own.saying), '  - ', '    ') : wrap(say(own.saying))) print(line)
    }
    return
  }
  print(say(saying('cli/import/becomes')))
  bullets(describeRead(offered.read))
}

async function isAccepted(given: Arguments, terminal: Terminal, isMended: boolean): Promise<boolean> {
  if (given.flags.has('accept')) return true
  if (!terminal.isInteractive) return false
  return await isAgreed(terminal, saying(isMended ? 'cli/mended/accept' : 'cli/import/accept'))
}

/** Brings what was offered: the sentence that says what was done. */
async function bring(
  project: Project,
  path: string,
  bytes: Uint8Array,
  offered: CountsOffered,
  mended: MendedOr,
  given: Arguments,
  terminal: Terminal,
): Promise<readonly Saying[]> {
  const file = basename(path)
  const notKept = (kept: boolean): readonly Saying[] => (kept ? [] : [saying('cli/import/file-not-kept', { file })])
  if (mended.kind === 'mended') {
    const options = { withdrawMissing: given.flags.has('withdrawMissing') }
    const { kept, ...done } = await bringMended(project, path, bytes, mended, options, terminal.work)
    return [saying('cli/mended/done', { file, project: project.path, ...done }), ...notKept(kept)]
  }
  const { kept } = await bringCounts(project, path, bytes, offered, terminal.work)
  return [saying('cli/import/done', { file, counts: offered.read.counts, project: project.path }), ...notKept(kept)]
}

/** What has to be said again when it is accepted; the rest of what was said stands in the mapping. */
function saidAgain(given: Arguments): Saying {
  const options = ['mapping', 'mends'].flatMap((name) => {
    const value = single(given, name)
    return value === undefined ? [] : [`--${name} ${commandWord(value)}`]
  })
  const flags = ['separate', 'withdrawMissing'].filter((name) => given.flags.has(name)).map((name) => `--${typedName(name)}`)
  return saying('cli/import/said-again', { options: [...options, ...flags].map((own) => ` ${own}`).join('') })
}

export const importCommand: Command = {
  name: 'import',
  options: ['in', 'mapping', 'mends', ...mappingOptions],
  flags: ['accept', 'separate', 'withdrawMissing'],
  run: async (given, terminal) => {
    const [path, ...more] = given.words
    if (path === undefined || more.length > 0) throw new ThrumError('cli/import/usage')
    const projectPath = whichProject(given, terminal)
    const bytes = readBytes(path)
    const named = single(given, 'mapping')
    const mappingPath = named ?? `${path}.mapping.json`
    const options = { mends: single(given, 'mends'), separate: given.flags.has('separate') }
    const project = await openForWriting(projectPath, terminal)
    try {
      requireWritable(project)
      const own = named !== undefined || existsSync(mappingPath) ? readMapping(mappingPath) : null
      const made = mappingFor(bytes, own ?? (await earlierMapping(project, path, options)), given)
      // Kept before the rows are read, so that a file that cannot be read yet leaves something to mend.
      keepMapping(mappingPath, made.mapping)
      const offered = await offerCounts(bytes, made.mapping, terminal.work, made.sheet)
      const mended = await offerMended(project, path, offered, options)
      show(terminal, path, made, offered, mended, mappingPath)
      const result = (state: 'offered' | 'accepted' | 'known', done: readonly Saying[]): ExitCode => {
        terminal.print('')
        for (const sentence of done) for (const line of wrap(terminal.say(sentence))) terminal.print(line)
        terminal.json(resultOf(terminal, path, mappingPath, made, offered, mended, state, done))
        return 0
      }
      if (mended.kind === 'known') return result('known', [saying('cli/import/known', { file: basename(path) })])
      if (!(await isAccepted(given, terminal, mended.kind === 'mended'))) {
        const notYet = mended.kind === 'mended' ? 'cli/mended/not-yet' : 'cli/import/not-yet'
        return result('offered', [
          saying(notYet, { file: path, mapping: mappingPath, project: projectPath, more: saidAgain(given) }),
        ])
      }
      return result('accepted', await bring(project, path, bytes, offered, mended, given, terminal))
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
  mended: MendedOr,
  state: 'offered' | 'accepted' | 'known',
  sentences: readonly Saying[],
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
      readings: read.shown,
      ...(mended.kind === 'mended' ? { mended: mendedResult(mended) } : {}),
      sentences,
    },
    terminal.say,
  )
}
