import { type Saying, saying, ThrumError } from '@thrum/model/ground'

/** Everything the store can fail with. Codes are public, words are not. */
export type StoreCode =
  | 'store/no-such-file'
  | 'store/not-a-project'
  | 'store/exists'
  | 'store/same-file'
  | 'store/folder-missing'
  | 'store/folder-protected'
  | 'store/unreadable'
  | 'store/newest-out-of-reach'
  | 'store/damaged'
  | 'store/busy'
  | 'store/in-use'
  | 'store/disk-full'
  | 'store/write-failed'
  | 'store/read-only'
  | 'store/older-layout'
  | 'store/layout-unreadable'
  | 'store/fact-misshapen'
  | 'store/too-large'
  | 'store/attachment-damaged'
  | 'store/backup-unsound'

/** Why a project was opened for reading only. */
export type ReadingReason =
  | 'store/read/asked'
  | 'store/read/file-protected'
  | 'store/read/folder-protected'
  | 'store/read/newer-layout'

/** What was found instead of a project. */
export type FoundInstead = 'store/found/empty' | 'store/found/folder' | 'store/found/other-database' | 'store/found/other-file'

export function storeError(code: StoreCode, values: Saying['values'] = {}, cause?: unknown): ThrumError {
  return new ThrumError(code, values, cause === undefined ? undefined : { cause })
}

export function notAProject(file: string, found: FoundInstead): ThrumError {
  return storeError('store/not-a-project', { file, found: saying(found) })
}

/** What to do about a reason why a project takes no writing. */
export function remedyOf(because: Saying): Saying {
  return saying(`${because.id}/remedy`, because.values)
}

export function readOnlyError(file: string, because: Saying): ThrumError {
  return storeError('store/read-only', { file, because, remedy: remedyOf(because) })
}
