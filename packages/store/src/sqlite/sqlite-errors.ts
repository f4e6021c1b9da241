import { ThrumError } from '@thrum/model/ground'
import { storeError } from '../errors.ts'

/** Result codes of SQLite that are told apart here. @source https://sqlite.org/rescode.html */
const code = {
  busy: 5,
  locked: 6,
  readOnly: 8,
  ioError: 10,
  corrupt: 11,
  full: 13,
  cannotOpen: 14,
  tooBig: 18,
  notADatabase: 26,
  ioErrorWrite: 778,
} as const

interface SqliteFailure extends Error {
  readonly errcode: number
}

function isSqliteFailure(cause: unknown): cause is SqliteFailure {
  return cause instanceof Error && 'errcode' in cause && typeof cause.errcode === 'number'
}

/** The plain result code of a failure of SQLite (the low byte of the extended one); 0 for anything else. */
function resultCode(cause: unknown): number {
  return isSqliteFailure(cause) ? cause.errcode & 0xff : 0
}

/** True where another connection holds what we want; trying again later is right. */
export function isBusy(cause: unknown): boolean {
  const result = resultCode(cause)
  return result === code.busy || result === code.locked
}

/** True where SQLite could not make or write the files it needs beside the project. */
export function isOutOfReach(cause: unknown): boolean {
  const result = resultCode(cause)
  return result === code.readOnly || result === code.cannotOpen
}

/** A failure as a person can act on it. What is not a failure of SQLite or of JSON comes back as it is. */
export function asStoreError(cause: unknown, file: string): unknown {
  if (cause instanceof ThrumError) return cause
  // A body that is no JSON any more can only come from damage: nothing else is ever written there.
  if (cause instanceof SyntaxError) return storeError('store/damaged', { file, what: 'the body of a fact can’t be read' }, cause)
  if (!isSqliteFailure(cause)) return cause
  const what = cause.message
  switch (resultCode(cause)) {
    case code.full:
      return storeError('store/disk-full', { file }, cause)
    case code.corrupt:
    case code.notADatabase:
      return storeError('store/damaged', { file, what }, cause)
    case code.tooBig:
      return storeError('store/too-large', { file }, cause)
    case code.readOnly:
    case code.cannotOpen:
      return storeError('store/write-failed', { file, what }, cause)
    case code.ioError:
      // A quota or a size limit of the system is told apart from a full disk by SQLite, but not by a person.
      return cause.errcode === code.ioErrorWrite
        ? storeError('store/disk-full', { file }, cause)
        : storeError('store/write-failed', { file, what }, cause)
    default:
      return cause
  }
}
