import { chmodSync, closeSync, fsyncSync, openSync, renameSync, rmSync, statSync } from 'node:fs'
import { dirname } from 'node:path'
import { backup, DatabaseSync } from 'node:sqlite'
import { pathToFileURL } from 'node:url'
import { ThrumError } from '@thrum/model/ground'
import { storeError } from '../errors.ts'
import { requireSound } from './open-database.ts'
import { asStoreError } from './sqlite-errors.ts'

/** All pages in one step: a copy in several starts again whenever somebody writes. */
const everyPage = 2_147_483_647

/**
 * Copies an open database to a new file: written beside its place, checked from end to end, then renamed. Whatever goes
 * wrong, nothing half written is left, and nothing stands at `to` that did not pass. Readers and writers go on meanwhile.
 *
 * @param file the project's name as the person gave it, for messages
 * @param to where the copy shall stand; replaced if it is there
 * @throws ThrumError store/backup-unsound, disk-full, folder-missing, folder-protected
 */
export async function copyDatabase(from: DatabaseSync, file: string, to: string): Promise<void> {
  const partial = `${to}.partial-${process.pid}`
  removeWithSides(partial)
  try {
    // Made by us first, so that a project that only its owner may read is copied as one.
    closeSync(openNew(partial, to))
    chmodSync(partial, statSync(from.location() ?? file).mode & 0o777)
    await backup(from, partial, { rate: everyPage })
    requireSoundCopy(partial, file)
    syncToDisk(partial)
    renameSync(partial, to)
  } catch (cause) {
    removeWithSides(partial)
    throw asStoreError(cause, to)
  }
  syncToDisk(dirname(to))
}

function requireSoundCopy(partial: string, file: string): void {
  const address = pathToFileURL(partial)
  address.search = '?immutable=1'
  const copy = new DatabaseSync(address, { readOnly: true })
  try {
    requireSound(copy, file, 'integrity_check')
  } catch (cause) {
    const what = cause instanceof ThrumError ? (cause.values.what ?? '') : String(cause)
    throw storeError('store/backup-unsound', { file, what }, cause)
  } finally {
    copy.close()
  }
}

/** A new file, or the reason why there can't be one there. */
export function openNew(path: string, meant = path): number {
  try {
    return openSync(path, 'wx')
  } catch (cause) {
    throw newFileRefused(cause, meant)
  }
}

function newFileRefused(cause: unknown, meant: string): unknown {
  const code = cause instanceof Error && 'code' in cause ? cause.code : ''
  const folder = dirname(meant)
  if (code === 'EEXIST') return storeError('store/exists', { file: meant }, cause)
  if (code === 'ENOENT' || code === 'ENOTDIR') return storeError('store/folder-missing', { folder }, cause)
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') return storeError('store/folder-protected', { folder }, cause)
  if (code === 'ENOSPC' || code === 'EDQUOT') return storeError('store/disk-full', { file: meant }, cause)
  return cause
}

export function removeWithSides(path: string): void {
  for (const side of ['', '-wal', '-shm', '-journal']) rmSync(path + side, { force: true })
}

/** Makes a file, or the entry of a new one in its folder, last through a power cut. Not every system can for folders. */
export function syncToDisk(path: string): void {
  try {
    const handle = openSync(path, 'r')
    try {
      fsyncSync(handle)
    } finally {
      closeSync(handle)
    }
  } catch {
    return
  }
}
