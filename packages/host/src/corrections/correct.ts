import { asCorrection, cellTold, type MendedCell, readTypedCell, sameCell } from '@thrum/exchange'
import {
  amended,
  type BodyOf,
  type Fact,
  factKinds,
  isContested,
  isoDate,
  makeFact,
  mark,
  projectDescribed,
  questionLookedAt,
  readFact,
  rowsBrought,
  sheetAccepted,
  sheetRead,
  worthSet,
} from '@thrum/model'
import { type Saying, ThrumError } from '@thrum/model/ground'
import { type Project, requireWritable } from '../project/project.ts'
import { type CorrectedProject, historyOf, knowledgeOf, readCorrected } from './corrected-project.ts'
import { type Found, findRow } from './find-row.ts'
import { cellOfCount, cellOfRow, type NamedCell, standingCell } from './row-cells.ts'

export interface CorrectionAsked {
  /** `FILE:LINE`, the address of a row, or the id of a fact. */
  readonly row: string
  /** A column, something compared, or a kind. */
  readonly column: string
  readonly value: string
  readonly reason: string
}

/** A correction as it was written down. */
export interface CorrectionMade {
  readonly fact: string
  readonly of: string
  readonly row: string
  readonly column: string
  readonly from: string | Saying
  readonly to: string | Saying
  /** True where no row of the project says the new text so far: perhaps it was mistyped. */
  readonly isNewWord: boolean
  /** True where corrections that knew nothing of each other were decided between by this one. */
  readonly decides: boolean
}

/** The cell that a person names; columns of single facts are not among these. */
export function namedCell(corrected: CorrectedProject, found: Found, column: string): NamedCell {
  if (found.kind === 'count') return cellOfCount(corrected, found, column)
  if (found.kind === 'row') return cellOfRow(corrected, found, column)
  throw new ThrumError('host/row/no-row', { found: found.kind === 'file' ? found.name : found.fact.id })
}

/** A cell as it was typed. */
export function typedCell(cell: NamedCell, value: string): MendedCell {
  const { to, mark: name } = readTypedCell(cell.table, cell.column, cell.isNumber, value)
  if (name !== null) return { value: to, mark: mark[name] }
  return { value: to, mark: mark.asWritten }
}

function isNewWord({ snapshot }: CorrectedProject, cell: NamedCell, to: MendedCell): boolean {
  if (typeof to.value !== 'string' || cell.column === 'note') return false
  const table = snapshot.tables[cell.table]
  const declared = table.columns as {
    readonly [name: string]: { readonly type: string; readonly dictionary?: readonly string[] }
  }
  const factor = table.factors.get(cell.column)
  const words = declared[cell.column]?.dictionary ?? (factor?.type === 'text' ? factor.dictionary : [])
  return !words.includes(to.value)
}

/** What a correction says that leads from one cell to another. */
export function amendmentOf(
  corrected: CorrectedProject,
  cell: Pick<NamedCell, 'of' | 'column'>,
  from: MendedCell,
  to: MendedCell,
): Omit<BodyOf<typeof amended>, 'reason'> {
  const knowledge = knowledgeOf(historyOf(corrected, cell.of, cell.column))
  return { of: cell.of, column: cell.column, ...knowledge, from: from.written ?? from.value, ...asCorrection(to) }
}

/**
 * Writes a correction of one cell. What was written before stays; the correction has an author, a moment and a reason.
 *
 * @throws ThrumError host/row/..., host/cell/..., exchange/typed/... with what can stand there, host/correct/no-change,
 *   host/row/withdrawn, host/read-only; nothing was written
 */
export async function correctCell(project: Project, asked: CorrectionAsked): Promise<CorrectionMade> {
  requireWritable(project)
  if (asked.reason.trim() === '') throw new ThrumError('host/correct/no-reason')
  const corrected = await readCorrected(project)
  const found = await findRow(corrected, asked.row)
  if (found.kind === 'fact') return await correctFact(corrected, found.fact, asked)
  const cell = namedCell(corrected, found, asked.column)
  const from = standingCell(corrected, cell)
  const row = corrected.nameOf(cell.of)
  if (from === null) throw new ThrumError('host/row/withdrawn', { row })
  const to = typedCell(cell, asked.value)
  const history = historyOf(corrected, cell.of, cell.column)
  const decides = history !== null && isContested(history)
  if (sameCell(from, to) && !decides) {
    throw new ThrumError('host/correct/no-change', { row, column: cell.name, value: shown(cell, from) })
  }
  const body = { ...amendmentOf(corrected, cell, from, to), reason: asked.reason.trim() }
  const fact = makeFact(amended, body, project.author, { subject: cell.of })
  await project.log.append([fact])
  return { ...toldCorrection(corrected, cell, fact, { from, to, decides }), isNewWord: isNewWord(corrected, cell, to) }
}

/** What was written of a cell, as a person is told it. */
export function toldCorrection(
  corrected: CorrectedProject,
  cell: NamedCell,
  fact: Fact,
  { from, to, decides }: { readonly from: MendedCell; readonly to: MendedCell; readonly decides: boolean },
): CorrectionMade {
  return {
    fact: fact.id,
    of: cell.of,
    row: corrected.nameOf(cell.of),
    column: cell.name,
    from: shown(cell, from),
    to: shown(cell, to),
    isNewWord: false,
    decides,
  }
}

/** A cell as a person reads it: days as dates, times of day as times. */
export function shown(cell: Pick<NamedCell, 'column' | 'table'>, value: MendedCell): string | Saying {
  if (typeof value.value !== 'number' || cell.table === 'tally') return cellTold(value)
  if (cell.column === 'date') return isoDate(value.value)
  if (cell.column !== 'start' && cell.column !== 'end') return cellTold(value)
  const minutes = Math.floor(value.value)
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`
}

/** Kinds of facts whose properties are not for correcting one by one: files, corrections themselves, and looks. */
const notByColumn: readonly string[] = [
  sheetRead.kind,
  rowsBrought.kind,
  sheetAccepted.kind,
  'sheet-discarded',
  'amended',
  'withdrawn',
  'cell-settled',
  'redacted',
  questionLookedAt.kind,
]

/** What says which project, or which asking, a fact is about: with another it would be another fact. */
const whichOne: { readonly [kind: string]: readonly string[] | undefined } = {
  [projectDescribed.kind]: ['project'],
  [worthSet.kind]: ['question', 'asked'],
}

/** A property of a fact that a person recorded (a field's crop, a plan's last visit), checked by the shape of its kind. */
async function correctFact(corrected: CorrectedProject, fact: Fact, asked: CorrectionAsked): Promise<CorrectionMade> {
  const { project } = corrected
  const kind = factKinds.get(fact.kind)
  const read = readFact(fact)
  if (kind === undefined || read.kind !== 'read' || notByColumn.includes(fact.kind)) {
    throw new ThrumError('host/correct/not-this-fact', { kind: fact.kind, fact: fact.id })
  }
  if (whichOne[fact.kind]?.includes(asked.column) === true) {
    throw new ThrumError('host/correct/names-it', { kind: fact.kind, column: asked.column })
  }
  const history = historyOf(corrected, fact.id, asked.column)
  const body = read.body as { readonly [column: string]: string | number | null | undefined }
  const from = history?.standing == null ? (body[asked.column] ?? null) : history.standing.to
  const text = asked.value.trim()
  const number = Number(text)
  const choices: (string | number | null)[] = text === 'missing' ? [null] : Number.isNaN(number) ? [text] : [number, text]
  const fits = choices.find((to) => {
    const checked = kind.shape.safeParse({ ...body, [asked.column]: to ?? undefined })
    return checked.success && (to === null || Object.hasOwn(checked.data as object, asked.column))
  })
  if (fits === undefined || (typeof from === 'object' && from !== null)) {
    throw new ThrumError('host/correct/does-not-fit', {
      kind: fact.kind,
      column: asked.column,
      value: asked.value,
      columns: Object.keys(body).join(', '),
    })
  }
  const decides = (history?.open.length ?? 0) > 1
  if (fits === from && !decides) {
    throw new ThrumError('host/correct/no-change', { row: fact.id, column: asked.column, value: String(from ?? '–') })
  }
  const amendment = makeFact(
    amended,
    { of: fact.id, column: asked.column, ...knowledgeOf(history), from, to: fits, reason: asked.reason.trim() },
    project.author,
    { subject: fact.id },
  )
  await project.log.append([amendment])
  return {
    fact: amendment.id,
    of: fact.id,
    row: fact.id,
    column: asked.column,
    from: String(from ?? '–'),
    to: String(fits ?? '–'),
    isNewWord: false,
    decides,
  }
}
