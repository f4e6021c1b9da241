import { ThrumError } from '@thrum/model/ground'
import type { BroughtSheet } from './brought-rows.ts'

/** A file as a person names it: `counts.csv`, or `counts.csv@2` for the second that came under that name. */
export interface FileName {
  readonly name: string
  readonly version: number | null
}

export function parseFileName(text: string): FileName {
  const found = /^(.+)@(\d{1,4})$/u.exec(text)
  return found === null ? { name: text, version: null } : { name: found[1] ?? text, version: Number(found[2]) }
}

/** The day on which something was written, as its clock says it. */
export function dayOf(at: string): string {
  return at.slice(0, 10)
}

/** Files that no later version mends; those that were withdrawn count only where no other is left. */
function latestOf(own: readonly BroughtSheet[], sheets: readonly BroughtSheet[]): readonly BroughtSheet[] {
  const standing = own.filter(({ stands }) => stands)
  const mended = new Set(sheets.filter(({ stands }) => stands).map(({ mends }) => mends))
  return (standing.length > 0 ? standing : own).filter(({ sheet }) => !mended.has(sheet))
}

/**
 * The file that a name means: of several versions of one file the latest; of several files that share a name the one whose
 * number stands behind it.
 *
 * @returns null where no file of that name was brought
 * @throws ThrumError host/file/which, naming each; host/file/no-version
 */
export function findFile(named: FileName, sheets: readonly BroughtSheet[]): BroughtSheet | null {
  const own = sheets.filter(({ file }) => file === named.name)
  if (own.length === 0) return null
  if (named.version !== null) {
    const found = own[named.version - 1]
    if (found === undefined) throw new ThrumError('host/file/no-version', { file: named.name, versions: own.length })
    return found
  }
  const latest = latestOf(own, sheets)
  const only = latest[0]
  if (only !== undefined && latest.length === 1) return only
  throw new ThrumError('host/file/which', {
    file: named.name,
    found: latest.map((sheet) => `${named.name}@${own.indexOf(sheet) + 1} (${dayOf(sheet.at)})`).join(', '),
  })
}

/** The name by which a person can mean this file and no other. */
export function fileNameOf(sheet: BroughtSheet, sheets: readonly BroughtSheet[]): string {
  const own = sheets.filter(({ file }) => file === sheet.file)
  const latest = latestOf(own, sheets)
  return latest.length === 1 && latest[0] === sheet ? sheet.file : `${sheet.file}@${own.indexOf(sheet) + 1}`
}
