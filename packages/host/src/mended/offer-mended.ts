import { basename } from 'node:path'
import { compareRows, freshRows, type Mapping, type MendedPlan, matchRows, parseMapping } from '@thrum/exchange'
import { canonicalJson, ThrumError } from '@thrum/model/ground'
import type { Forgetting } from '@thrum/store'
import { type BroughtSheet, versionsOf } from '../corrections/brought-rows.ts'
import { type CorrectedProject, readCorrected, standingWithdrawals } from '../corrections/corrected-project.ts'
import { fileNameOf, findFile, parseFileName } from '../corrections/file-versions.ts'
import type { CountsOffered } from '../counts/bring-counts.ts'
import { type Project, requireWritable } from '../project/project.ts'
import { forgettingIn, withoutForgottenMapping, withoutForgottenTables } from './forgotten-tables.ts'
import { heldRows } from './held-rows.ts'

/** What a person may say of a file that could be a mended one. */
export interface MendedOptions {
  /** The name of the file that this one mends, where it is not its own. */
  readonly mends?: string | undefined
  /** True: it is another file, though it has the name of one that was brought. */
  readonly separate?: boolean
}

/** A file that mends another: what accepting it would do. Nothing is written. */
export interface MendedOffer {
  readonly corrected: CorrectedProject
  readonly offered: CountsOffered
  /** The latest version so far. */
  readonly mends: BroughtSheet
  readonly plan: MendedPlan
}

const sameMapping = (sheet: BroughtSheet, mapping: unknown): boolean => canonicalJson(sheet.mapping) === canonicalJson(mapping)

/** What a file is called and what it mends, as the log has these names: a file may be called after somebody forgotten. */
function asKept(path: string, options: MendedOptions, { names }: Forgetting): MendedOptions & { readonly file: string } {
  const kept = (name: string): string => names?.without(name) ?? name
  return { ...options, file: kept(basename(path)), mends: options.mends === undefined ? undefined : kept(options.mends) }
}

/** The latest version that stands of the file that this one was read from, or that has its name; null where there is none. */
function earlierVersion(
  { sheets }: CorrectedProject,
  { file, mends, separate }: ReturnType<typeof asKept>,
  fileHash: string,
): BroughtSheet | null {
  if (separate === true) return null
  if (mends !== undefined) {
    const found = findFile(parseFileName(mends), sheets)
    if (found === null) throw new ThrumError('host/mended/no-such-file', { file: mends })
    return found
  }
  const standing = sheets.filter(({ stands }) => stands)
  const same = standing.find((sheet) => sheet.fileHash === fileHash)
  const latest =
    same === undefined ? null : standing.findLast((sheet) => versionsOf(sheet, sheets).some((own) => own.sheet === same.sheet))
  return latest ?? findFile(parseFileName(file), standing)
}

/** What a file is to a project that may hold an earlier version of it. */
export type MendedOr = { readonly kind: 'new' } | { readonly kind: 'known' } | ({ readonly kind: 'mended' } & MendedOffer)

/**
 * Says whether a file that was read mends one that was brought: the same bytes under another mapping, the same name with
 * other content, or the one that a person names. Its rows are matched by the columns that name a watch, and compared.
 *
 * @throws ThrumError exchange/mended/... where its rows cannot be matched, host/file/which, host/mended/withdrawn,
 *   host/mended/earlier-withdrawn, host/mended/no-such-file, host/read-only
 */
export async function offerMended(
  project: Project,
  path: string,
  offered: CountsOffered,
  options: MendedOptions = {},
): Promise<MendedOr> {
  requireWritable(project)
  const corrected = await readCorrected(project)
  const { fileHash } = offered.sheet
  const forgetting = await forgettingIn(project.log)
  const mapping = withoutForgottenMapping(offered.mapping, forgetting)
  const known = corrected.sheets.filter((sheet) => sheet.fileHash === fileHash && sameMapping(sheet, mapping))
  const standing = known.find(({ stands }) => stands)
  if (standing !== undefined) {
    requireEarlier(corrected, standing)
    return { kind: 'known' }
  }
  const gone = known[0]
  if (gone !== undefined)
    throw new ThrumError('host/mended/withdrawn', { file: basename(path), withdrawal: withdrawalOf(corrected, gone) })
  const mends = earlierVersion(corrected, asKept(path, options, forgetting), fileHash)
  if (mends === null) return { kind: 'new' }
  const read = withoutForgottenTables(offered.read, forgetting)
  const fresh = freshRows(read)
  const held = heldRows(corrected, versionsOf(mends, corrected.sheets))
  const plan = compareRows(fresh, held, matchRows(fresh, held, offered.mapping))
  return { kind: 'mended', corrected, offered: { ...offered, read }, mends, plan }
}

/** A mended file counts whole only with the earlier versions whose rows it left alone: a merge may have withdrawn one. */
function requireEarlier(corrected: CorrectedProject, sheet: BroughtSheet): void {
  const gone = versionsOf(sheet, corrected.sheets).find(({ stands }) => !stands)
  if (gone === undefined) return
  throw new ThrumError('host/mended/earlier-withdrawn', {
    file: fileNameOf(sheet, corrected.sheets),
    earlier: fileNameOf(gone, corrected.sheets),
    withdrawal: withdrawalOf(corrected, gone),
  })
}

function withdrawalOf(corrected: CorrectedProject, sheet: BroughtSheet): string {
  return standingWithdrawals(corrected, sheet.fact).at(-1)?.fact.id ?? ''
}

/**
 * The mapping under which the earlier version of a file was read, for a file that has none of its own yet; null where the
 * project holds no earlier version.
 *
 * @throws ThrumError host/file/which, host/mended/no-such-file
 */
export async function earlierMapping(project: Project, path: string, options: MendedOptions): Promise<Mapping | null> {
  const corrected = await readCorrected(project)
  const sheet = earlierVersion(corrected, asKept(path, options, await forgettingIn(project.log)), '')
  return sheet === null ? null : parseMapping(sheet.mapping)
}
