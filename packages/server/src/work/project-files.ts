import { existsSync, readdirSync, realpathSync } from 'node:fs'
import { join } from 'node:path'
import { createDemonstration, createProject } from '@thrum/host'
import { ThrumError } from '@thrum/model/ground'
import type { NewProject } from '../api/project.ts'

/** Letters of a file name that is made of a title. */
const longest = 60
/** Names that Windows keeps for itself. */
const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/u

/** Names of the projects that lie in a folder. */
export function projectFiles(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.name.endsWith('.thrum') && (entry.isFile() || entry.isSymbolicLink()))
    .map(({ name }) => name)
    .sort()
}

/** A file name without its ending, made of the letters and numbers of a title. */
export function nameOfTitle(title: string): string {
  const plain = title
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .slice(0, longest)
    .replace(/^-+|-+$/gu, '')
  return plain === '' || reserved.test(plain) ? `project${plain === '' ? '' : `-${plain}`}` : plain
}

/** A name that nothing in the folder has. */
function freeName(folder: string, wished: string): string {
  for (let number = 1; ; number++) {
    const name = `${wished}${number === 1 ? '' : `-${number}`}.thrum`
    if (!existsSync(join(folder, name))) return name
  }
}

const usualTitle = 'Project'
const demonstrationName = 'ostrel-vale'

/** Makes a project in a folder; nothing that is there is ever written over. @returns its path */
export async function makeProject(folder: string, { how, title }: NewProject): Promise<string> {
  const isEmpty = how === 'empty'
  const path = join(
    folder,
    freeName(folder, title === undefined ? (isEmpty ? 'project' : demonstrationName) : nameOfTitle(title)),
  )
  if (isEmpty) await (await createProject(path, title ?? usualTitle)).close()
  else await createDemonstration(path)
  return path
}

/** The path of a project that is named. @throws ThrumError server/open/no-such-file */
export function namedProject(folder: string, file: string): string {
  if (!projectFiles(folder).includes(file)) throw new ThrumError('server/open/no-such-file', { file })
  return join(folder, file)
}

/** The projects of a folder, and which of them is open. */
export function tellProjects(folder: string, open: string | null): unknown {
  const real = (path: string): string => {
    try {
      return realpathSync(path)
    } catch {
      return path
    }
  }
  const opened = open === null ? null : real(open)
  return { files: projectFiles(folder).map((file) => ({ file, open: real(join(folder, file)) === opened })) }
}
