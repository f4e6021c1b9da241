import { Buffer } from 'node:buffer'
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Mapping, parseMapping, readSheet, type ShownReading } from '@thrum/exchange'
import { openProject } from '@thrum/host'
import type { Snapshot } from '@thrum/model'
import { linesUnaccounted } from '../../../exchange/test/mutated/lines-unaccounted.ts'
import { askedOf } from './asked-of.ts'
import type { MutatedInput } from './mutated-input.ts'
import { printBack } from './printed-back.ts'
import { rowsIn } from './rows-in.ts'
import { type ToldCommand, toldByProgram, toldInProcess } from './told-command.ts'

/** What became of one file on its way through the program. */
export type Outcome =
  | { readonly kind: 'refused'; readonly code: string }
  | {
      readonly kind: 'brought'
      readonly rows: { readonly accepted: number; readonly waiting: number; readonly refused: number }
      /** True where the rows were counted without the reader. */
      readonly countedApart: boolean
      readonly cells: number
      readonly shown: number
      readonly figures: number
    }
  | { readonly kind: 'failed'; readonly because: string }

const failed = (because: string): Outcome => ({ kind: 'failed', because })

/** Which of the costly steps an input takes. */
export interface Steps {
  /** Also run as a program of its own. */
  readonly program: boolean
  /** Also drawn. */
  readonly figure: boolean
}

interface Kept {
  readonly snapshot: Snapshot
  readonly attachment: Uint8Array | null
}

/** What stands in the project, opened anew. */
async function keptIn(path: string): Promise<Kept> {
  const project = await openProject(path, 'read')
  try {
    const snapshot = await project.snapshot()
    const hash = snapshot.sheets[0]?.fileHash
    const attachment = hash === undefined ? null : await project.log.attachment(hash)
    if (attachment === null) return { snapshot, attachment }
    const parts: Uint8Array[] = []
    for await (const part of attachment.parts()) parts.push(part)
    return { snapshot, attachment: Buffer.concat(parts) }
  } finally {
    await project.close()
  }
}

/** Only of a mapping that lies beside the file can a person mend what is wrong in it; a proposed one may be incomplete. */
const ofGivenMapping = /^exchange\/mapping\/(?!no-key$)/u

/** A file that was refused left nothing behind. */
async function refused(project: string, input: MutatedInput, { refusal }: ToldCommand): Promise<Outcome> {
  if (input.mapping === null && ofGivenMapping.test(refusal ?? '')) return failed(`what was proposed is refused with ${refusal}`)
  const { snapshot } = await keptIn(project)
  const { count, tally, setAside } = snapshot.tables
  const left = snapshot.sheets.length + snapshot.unfinishedSheets.length + count.rows + tally.rows + setAside.rows
  return left === 0 ? { kind: 'refused', code: refusal ?? '' } : failed(`refused with ${refusal}, and left something behind`)
}

/** Rows of the file against the rows of the project, and against what the person was told. */
function rowsWrong(input: MutatedInput, mapping: Mapping, { snapshot }: Kept, told: string): string | null {
  const rows = snapshot.sheets[0]?.rows
  if (rows === undefined) return 'accepted, and no file stands in the project'
  if (rows.accepted + rows.waiting + rows.refused !== rows.read) return `rows do not add up: ${JSON.stringify(rows)}`
  const counted = rowsIn(input.bytes, input.mapping)
  if (counted !== null && counted !== rows.read) return `${counted} rows in the file, ${rows.read} read`
  const sheet = readSheet(input.bytes, mapping.file)
  if (rows.read !== sheet.rows + sheet.refused.length) return 'rows in differ from rows of the sheet'
  const lines = linesUnaccounted(input.bytes, sheet, mapping)
  if (lines !== 0) return `${lines} lines of the file are in no row, note or refusal`
  const { count, tally, setAside } = snapshot.tables
  const aside = new Set(setAside.columns.line.values)
  if (aside.size !== rows.waiting + rows.refused) return `${aside.size} lines set aside, ${rows.waiting + rows.refused} told`
  const clean = new Set(
    [...count.columns.line.values, ...tally.columns.line.values].filter((line) => line > 0 && !aside.has(line)),
  )
  if (mapping.shape === 'wide' ? clean.size !== rows.accepted : clean.size > rows.accepted)
    return `${clean.size} lines stand clean, ${rows.accepted} told`
  const sentence = `${rows.accepted} accepted, ${rows.waiting} waiting for an answer, ${rows.refused} set aside`
  return told.replace(/\s+/gu, ' ').includes(sentence) ? null : `the person was not told: ${sentence}`
}

interface Place {
  readonly folder: string
  readonly project: string
  readonly sheet: string
}

/** A fresh folder with the file, its mapping if it has one, and an empty project. */
async function laid(folder: string, input: MutatedInput): Promise<Place> {
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder, { recursive: true })
  process.env.THRUM_HOME = join(folder, 'home')
  process.env.THRUM_BY = 'walker'
  const place = { folder, project: join(folder, 'own.thrum'), sheet: join(folder, 'mutated.csv') }
  writeFileSync(place.sheet, input.bytes)
  if (input.mapping !== null) writeFileSync(`${place.sheet}.mapping.json`, JSON.stringify(input.mapping))
  await toldInProcess(['new', place.project])
  return place
}

/** What a person answers where the program asks and the file cannot. */
const answers: { readonly [code: string]: readonly string[] } = {
  'exchange/sheet/effort-unmapped': ['--effort', 'not recorded'],
}

async function offeredThenAccepted({
  project,
  sheet,
}: Place): Promise<{ offered: ToldCommand; accepted: ToldCommand; said: readonly string[] }> {
  const argv = ['import', sheet, '--in', project]
  const first = await toldInProcess(argv, true)
  const said = answers[first.refusal ?? ''] ?? []
  const offered = said.length === 0 || first.wrong !== null ? first : await toldInProcess([...argv, ...said], true)
  return { offered, accepted: await toldInProcess([...argv, ...said, '--accept']), said }
}

/** The same file by the program itself, in a project of its own: it must end in the same way. */
function byProgram({ folder }: Place, accepted: ToldCommand, said: readonly string[]): string | null {
  const made = toldByProgram(folder, ['new', 'program.thrum'])
  if (made.wrong !== null) return made.wrong
  const argv = ['import', 'mutated.csv', '--in', 'program.thrum', ...said]
  const offered = toldByProgram(folder, [...argv, '--json'])
  if (offered.wrong !== null) return offered.wrong
  if (offered.refusal !== accepted.refusal) return `the program says ${offered.refusal}, in process it was ${accepted.refusal}`
  const brought = toldByProgram(folder, [...argv, '--accept'])
  if (brought.wrong !== null) return brought.wrong
  if (brought.code !== accepted.code) return `the program ends with ${brought.code}, in process with ${accepted.code}`
  if (brought.code !== 0) return null
  const checked = toldByProgram(folder, ['check', 'program.thrum'])
  if (checked.wrong !== null) return checked.wrong
  return toldByProgram(folder, ['ask', 'who-visits', '--in', 'program.thrum', '--figure', 'program.png']).wrong
}

/** Takes one file the whole way: read, offered, accepted, opened anew, checked, asked of, drawn. */
export async function tryImport(input: MutatedInput, folder: string, steps: Steps): Promise<Outcome> {
  const place = await laid(folder, input)
  const { offered, accepted, said } = await offeredThenAccepted(place)
  const wrong = offered.wrong ?? accepted.wrong
  if (wrong !== null) return failed(wrong)
  if (offered.refusal !== accepted.refusal) return failed(`offered: ${offered.refusal}, accepted: ${accepted.refusal}`)
  if (steps.program) {
    const differs = byProgram(place, accepted, said)
    if (differs !== null) return failed(`as a program: ${differs}`)
  }
  if (accepted.code !== 0) return refused(place.project, input, accepted)
  const kept = await keptIn(place.project)
  if (kept.attachment === null || !Buffer.from(input.bytes).equals(kept.attachment))
    return failed('the file is not kept as it came')
  const mapping = parseMapping(JSON.parse(readFileSync(`${place.sheet}.mapping.json`, 'utf8')))
  const rows = rowsWrong(input, mapping, kept, accepted.out)
  if (rows !== null) return failed(rows)
  const sheet = readSheet(kept.attachment, mapping.file)
  const { readings } = offered.json as { readonly readings: readonly ShownReading[] }
  const { cells, shown, wrong: silent } = printBack({ snapshot: kept.snapshot, sheet, mapping, readings })
  if (silent !== null) return failed(silent)
  const asked = await askedOf(place.project, kept.snapshot, mapping, steps.figure ? join(folder, 'answer.svg') : null)
  if (asked.wrong !== null) return failed(asked.wrong)
  const { accepted: taken = 0, waiting = 0, refused: aside = 0 } = kept.snapshot.sheets[0]?.rows ?? {}
  return {
    kind: 'brought',
    rows: { accepted: taken, waiting, refused: aside },
    countedApart: rowsIn(input.bytes, input.mapping) !== null,
    cells,
    shown,
    figures: asked.figures,
  }
}
