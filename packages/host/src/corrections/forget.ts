import { type BodyOf, type Fact, makeFact, redacted } from '@thrum/model'
import { canonicalJson, sha256Hex, ThrumError } from '@thrum/model/ground'
import { createNames, forgottenName } from '@thrum/store'
import { type CopiesForgot, forgetInCopies } from '../backup/forget-in-copies.ts'
import { type Project, requireWritable } from '../project/project.ts'
import { type CorrectedProject, readCorrected } from './corrected-project.ts'
import { whatGoesWith } from './forgotten-facts.ts'
import { type Standing, whereItStands } from './where-it-stands.ts'

/** What can be forgotten: a person's name, the exact place of a field, or a fact (a row, a file). */
export const forgettable = ['observer', 'place', 'fact'] as const
export type Forgettable = (typeof forgettable)[number]

export interface ForgetAsked {
  readonly what: Forgettable
  /** The name of a person or field; a row, fact or file. */
  readonly name: string
  readonly because: string
}

/** What forgetting would do. Nothing is written. */
export interface ForgetPlan extends Standing {
  readonly what: Forgettable
  readonly redactions: readonly Fact[]
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
  return (await whatGoesWith(corrected, asked.name)).map((forgotten) => ({ ...forgotten, because }))
}

/** Ids follow from what is forgotten, so that two people who forget the same write the same fact. */
function redactionFact(corrected: CorrectedProject, body: BodyOf<typeof redacted>): Fact {
  const what = body.name?.hash ?? body.place ?? null
  const id = what === null ? {} : { id: sha256Hex(canonicalJson(['forgotten', corrected.snapshot.project?.id ?? '', what])) }
  return makeFact(redacted, body, corrected.project.author, id)
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
  const looked = await whereItStands(corrected, bodies)
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
