import { copyFileSync, rmSync } from 'node:fs'
import { ask, createProject, factsOf, mergeProject, openProject, type Project } from '@thrum/host'
import { type Fact, fieldDescribed, foldFacts, makeFact, type RawOption } from '@thrum/model'
import { unwatched } from '@thrum/model/ground'
import { runCommand } from '../packages/cli/src/run-command.ts'
import { speaker } from '../packages/cli/src/terminal/terminal.ts'
import { requireEqual, requireRates, requireStripRatio, totalOf } from './planted.ts'
import { kinds, type Planted } from './sheet.ts'

/** Seconds by what was timed. */
export type Timed = { readonly [what: string]: number }

/** What a work is handed: the sheet and what was planted in it, and the project it works on. */
export interface WorkGiven {
  readonly sheet: string
  readonly project: string
  readonly planted: Planted
  /** For a merge: what was planted in the sheet that only the other copy holds. */
  readonly other?: { readonly project: string; readonly planted: Planted }
}

const secondsSince = (start: number): number => (performance.now() - start) / 1000

async function timed<T>(work: () => T | Promise<T>): Promise<readonly [T, number]> {
  const start = performance.now()
  const result = await work()
  return [result, secondsSince(start)]
}

/** The command line as a person gives it, its printed lines and its result in the machine form kept from the screen. */
async function command(...argv: readonly string[]): Promise<unknown> {
  let told: unknown
  const say = speaker()
  const code = await runCommand([...argv, '--json'], {
    say,
    isJson: true,
    isInteractive: false,
    here: '.',
    work: { ...unwatched, breathe: () => new Promise((resolve) => setImmediate(resolve)) },
    print: () => undefined,
    json: (value) => {
      told = value
    },
    note: (text) => process.stderr.write(`${text}\n`),
    ask: () => Promise.resolve(''),
  })
  requireEqual('exit of the command', code, 0)
  return told
}

/** Fields lie in a grid, further apart than any insect here flies, so that the sun's time of each count is looked at too. */
async function describeFields(project: Project, fields: readonly string[]): Promise<void> {
  await project.log.append(
    fields.map((field, k) => {
      const point = { latitude: 52 + 0.1 * Math.floor(k / 8), longitude: 5 + 0.1 * (k % 8) }
      return makeFact(fieldDescribed, { field, crop: 'sunflower', hectares: 4, ...point }, project.author)
    }),
  )
}

/** A sheet into a new project, by the command: proposal, reading, preview, batches and the original on disk. */
async function bringSheet({ sheet, project: path, planted }: WorkGiven): Promise<Timed> {
  for (const old of [path, `${sheet}.mapping.json`]) rmSync(old, { force: true })
  const project = await createProject(path, 'Ostrel Vale, large')
  await describeFields(project, planted.fields)
  await project.close()
  const said = ['--unit', 'individuals', '--assigned', 'strip=not known', '--accept']
  const [told, seconds] = await timed(() => command('import', sheet, '--in', path, ...said))
  const { counts, kinds: found } = told as { counts: number; kinds: readonly { kind: string; total: number }[] }
  requireEqual('counts', counts, planted.rows)
  for (const { name } of kinds)
    requireEqual(`total of ${name}`, found.find(({ kind }) => kind === name)?.total, totalOf(planted, name))
  return { import: seconds }
}

/** A copy of the project that then takes in a sheet of its own: what a colleague brings back. */
async function otherCopy({ sheet, project, planted, other }: WorkGiven): Promise<Timed> {
  if (other === undefined) throw new Error('where the copy shall lie is not said')
  copyFileSync(project, other.project)
  const said = ['--unit', 'individuals', '--assigned', 'strip=not known', '--accept']
  const [told, seconds] = await timed(() => command('import', sheet, '--in', other.project, ...said))
  requireEqual('counts', (told as { counts: number }).counts, planted.rows)
  return { import: seconds }
}

type Raw = { readonly [name: string]: RawOption }
const contrast = (kind: string): Raw => ({ between: 'strip', kinds: kind, worth: '1.5' })

/** From the file to an answer, and to another answer while the project stays open. */
async function asked(
  { project: path, planted }: WorkGiven,
  questions: readonly {
    readonly id: string
    readonly raw: Raw
    readonly check: (answer: Awaited<ReturnType<typeof ask>>['answer']) => void
  }[],
): Promise<Timed> {
  const start = performance.now()
  const project = await openProject(path, 'write')
  try {
    const { tables } = await project.snapshot()
    const open = secondsSince(start)
    requireEqual('counts', tables.count.rows, planted.rows)
    const seconds: number[] = []
    for (const { id, raw, check } of questions) {
      const [{ answer }, took] = await timed(() => ask(project, id, raw, unwatched))
      check(answer)
      seconds.push(took)
    }
    const [first = 0, second = 0] = seconds
    return { open, first, 'open to first answer': open + first, second }
  } finally {
    await project.close()
  }
}

const whatDiffers = (given: WorkGiven): Promise<Timed> =>
  asked(
    given,
    ['bumble bee', 'honey bee'].map((kind) => ({
      id: 'what-differs',
      raw: contrast(kind),
      check: (answer) => requireStripRatio(answer, given.planted, kind),
    })),
  )

const whoVisits = (given: WorkGiven): Promise<Timed> =>
  asked(
    given,
    [{}, { window: 'all' }].map((raw) => ({ id: 'who-visits', raw, check: (answer) => requireRates(answer, given.planted) })),
  )

/** What is in the file as facts, and from facts to the snapshot. */
async function fold({ project: path, planted }: WorkGiven): Promise<Timed> {
  const [facts, read] = await timed(() => factsOf(path))
  const [snapshot, seconds] = await timed(() => foldFacts(facts as readonly Fact[]))
  requireEqual('counts', snapshot.tables.count.rows, planted.rows)
  requireEqual('tallies', snapshot.tables.tally.rows, planted.rows * kinds.length)
  return { read, fold: seconds }
}

/** Another copy of the project, that holds one sheet more, is taken in. */
async function merge({ project: path, planted, other }: WorkGiven): Promise<Timed> {
  if (other === undefined) throw new Error('a merge needs another copy')
  const copy = `${path}.merging`
  copyFileSync(path, copy)
  const project = await openProject(copy, 'write')
  try {
    const [merged, seconds] = await timed(() => mergeProject(project, other.project, unwatched))
    requireEqual('counts that came', merged.counts, other.planted.rows)
    const [{ answer }, took] = await timed(() => ask(project, 'what-differs', contrast('bumble bee'), unwatched))
    requireEqual('counts in the answer', answer.receipt.rows.selected, planted.rows + other.planted.rows)
    return { merge: seconds, 'answer after it': took }
  } finally {
    await project.close()
    rmSync(copy, { force: true })
  }
}

/** Each is run in a process of its own, because the peak of memory is that of a process. */
export const works = {
  import: bringSheet,
  'other-copy': otherCopy,
  'what-differs': whatDiffers,
  'who-visits': whoVisits,
  fold,
  merge,
} as const
export type WorkName = keyof typeof works
