import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The root of the repository. */
export const repository = fileURLToPath(new URL('../../..', import.meta.url))

function listed(...which: readonly string[]): readonly string[] {
  const names = execFileSync('git', ['ls-files', '-z', ...which], { cwd: repository, encoding: 'utf8', maxBuffer: 2 ** 26 })
  return names.split('\0').filter((name) => name !== '' && existsSync(join(repository, name)))
}

/** Names of the files that belong to the repository and are there, from its root. */
export const trackedFiles = (): readonly string[] => listed()

/** The same, with files that are not committed yet. */
export const allFiles = (): readonly string[] => listed('--cached', '--others', '--exclude-standard')
