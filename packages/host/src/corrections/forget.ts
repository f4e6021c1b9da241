import { type BodyOf, type Fact, type Json, makeFact, parseAddress, redacted, rowsBrought, sheetRead } from '@thrum/model'
import { canonicalJson, sha256Hex, ThrumError } from '@thrum/model/ground'
import { createNames, type Forgetting, forgettingOf, forgottenName, type Names, withoutForgotten } from '@thrum/store'
import { type CopiesForgot, forgetInCopies } from '../backup/forget-in-copies.ts'
import { type Project, requireWritable } from '../project/project.ts'
import { type CorrectedProject, readCorrected } from './corrected-project.ts'
import { findRow } from './find-row.ts'
import { talliesOfCount } from './row-cells.ts'

/** What can be forgotten: a person's name, the exact place of a field, or a fact (a row, a file). */
export const forgettable = ['observer', 'place', 'fact'] as const
export type Forgettable = (typeof forgettable)[number]

export interface ForgetAsked {
  readonly what: Forgettable
  /** The name of a person or field; a row, fact or file. */
  readonly name: string
  readonly because: string
}

/** Where something stands that is to be forgotten: so many rows of a column of a table, or so many facts of a kind. */
export interface StandsIn {
  readonly where: string
  readonly column: string | null
  readonly number: number
}

/** What forgetting would do. Nothing is written. */
export interface ForgetPlan {
  readonly what: Forgettable
  readonly redactions: readonly Fact[]
  readonly standsIn: readonly StandsIn[]
  /** Kinds, crops and the like that hold the same words: they are no person and stay. */
  readonly stays: readonly string[]
  /** Files as they came that will be dropped, as far as can be told beforehand. */
  readonly files: readonly string[]
}

/** What forgetting did. */
export interface Forgotten extends CopiesForgot {
  /** False where it was forgotten before. */
  readonly added: boolean
  /** Original files that are gone from the project. */
  readonly filesDropped: number
}

async function redactionsOf(corrected: CorrectedProject, asked: ForgetAsked): Promise<readonly BodyOf<typeof redacted>[]> {
  const id = corrected.snapshot.project?.id
  if (id === undefined) throw new ThrumError('host/no-project-record', { file: corrected.project.path })
  const because = asked.because.trim()
  if (because === '') throw new ThrumError('host/forget/no-reason')
  if (asked.what === 'observer') {
    const name = forgottenName(asked.name, id, asked.what)
    if (name === null) throw new ThrumError('host/forget/no-name', { name: asked.name })
    return [{ name, because: createNames([name])?.without(because) ?? because }]
  }
  if (asked.what === 'place') {
    const known = corrected.snapshot.fields.map(({ name }) => name)
    if (!known.includes(asked.name)) {
      throw new ThrumError('host/forget/no-field', { name: asked.name, known: known.slice(0, 20).join(', ') })
    }
    return [{ place: asked.name, because }]
  }
  return (await addressesOf(corrected, asked.name)).map((of) => ({ of, because }))
}

async function addressesOf(corrected: CorrectedProject, name: string): Promise<readonly string[]> {
  const found = await findRow(corrected, name)
  if (found.kind === 'count') {
    return [found.address, ...talliesOfCount(corrected, found.address).map(({ address }) => address)]
  }
  if (found.kind === 'row') return [found.address]
  if (found.kind === 'file') return [found.sheet.fact, ...found.sheet.batches.map(({ id }) => id)]
  if (found.fact.kind === 'project-described' || found.fact.kind === redacted.kind || found.fact.kind === 'sheet-accepted') {
    throw new ThrumError('host/forget/never', { kind: found.fact.kind })
  }
  return [found.fact.id]
}

/** Ids follow from what is forgotten, so that two people who forget the same write the same fact. */
function redactionFact(corrected: CorrectedProject, body: BodyOf<typeof redacted>): Fact {
  const what = body.name?.hash ?? body.place ?? null
  const id = what === null ? {} : { id: sha256Hex(canonicalJson(['forgotten', corrected.snapshot.project?.id ?? '', what])) }
  return makeFact(redacted, body, corrected.project.author, id)
}

interface Head {
  readonly name: string
  readonly dictionary?: readonly string[]
}

const headsOf = (fact: Fact): readonly Head[] =>
  fact.kind === rowsBrought.kind && Array.isArray(fact.body.columns) ? (fact.body.columns as unknown as readonly Head[]) : []

/** Everything in a log that changes when it is forgotten, counted by where it stands. */
async function lookThrough(
  { project, sheets }: CorrectedProject,
  redactions: readonly BodyOf<typeof redacted>[],
): Promise<Pick<ForgetPlan, 'standsIn' | 'stays' | 'files'>> {
  const forgetting = forgettingOf(redactions as unknown as { readonly [key: string]: Json }[])
  const names = createNames(redactions.flatMap(({ name }) => name ?? []))
  const rows = Map.groupBy(redactions.flatMap(({ of }) => of ?? []).map(parseAddress), ({ fact }) => fact)
  const standsIn = new Map<string, StandsIn>()
  const stays = new Set<string>()
  const touched = new Set<string>()
  const add = (where: string, column: string | null, number: number): void => {
    const key = `${where}/${column}`
    standsIn.set(key, { where, column, number: (standsIn.get(key)?.number ?? 0) + number })
  }
  for await (const facts of project.log.factsAfter(0)) {
    for (const fact of facts) {
      const left = withoutForgotten(
        fact,
        (rows.get(fact.id) ?? []).map(({ row }) => row),
        forgetting,
      )
      for (const word of headsOf(fact).flatMap(({ dictionary }) => dictionary ?? [])) {
        if (isLeft(word, names, left)) stays.add(word)
      }
      if (left === fact) continue
      if (fact.kind === sheetRead.kind || fact.kind === rowsBrought.kind) touched.add(String(fact.body.sheet))
      tellChange(fact, left, forgetting, add)
    }
  }
  const files = sheets.filter(({ sheet }) => touched.has(sheet)).map(({ file }) => file)
  return { standsIn: [...standsIn.values()], stays: [...stays], files: [...new Set(files)] }
}

function isLeft(word: string, names: Names | null, left: Fact): boolean {
  if (names === null || names.without(word) === word) return false
  return headsOf(left).some(({ dictionary }) => dictionary?.includes(word) === true)
}

function tellChange(
  fact: Fact,
  left: Fact,
  { names }: Forgetting,
  add: (where: string, column: string | null, number: number) => void,
): void {
  const table = fact.body.table
  if (fact.kind !== rowsBrought.kind || typeof table !== 'string' || names === null) add(fact.kind, null, 1)
  else {
    for (const { name, dictionary = [] } of headsOf(fact)) {
      const changed = dictionary.filter((word) => names.without(word) !== word)
      const isTaken = changed.some((word) => !(headsOf(left).find((own) => own.name === name)?.dictionary ?? []).includes(word))
      if (isTaken) add(table, name, changed.length)
    }
  }
}

/**
 * Says where a name, a place or a fact stands and what forgetting it would do. Nothing is written.
 *
 * @throws ThrumError host/forget/..., host/row/..., host/read-only
 */
export async function offerForget(project: Project, asked: ForgetAsked): Promise<ForgetPlan> {
  requireWritable(project)
  const corrected = await readCorrected(project)
  const bodies = await redactionsOf(corrected, asked)
  const looked = await lookThrough(corrected, bodies)
  return { what: asked.what, redactions: bodies.map((body) => redactionFact(corrected, body)), ...looked }
}

async function filesKept(project: Project): Promise<number> {
  let files = 0
  for await (const heads of project.log.attachments()) files += heads.length
  return files
}

/**
 * Forgets: in this project, in its backups, and in every copy that learns of it by a merge. It cannot be undone. The bytes
 * are gone from the file when the project is closed and no other program has it open.
 *
 * @throws ThrumError store/...
 */
export async function forget(project: Project, plan: ForgetPlan): Promise<Forgotten> {
  const before = await filesKept(project)
  const { added } = await project.log.append(plan.redactions)
  const filesDropped = before - (await filesKept(project))
  return { added: added.length > 0, filesDropped, ...(await forgetInCopies(project)) }
}
