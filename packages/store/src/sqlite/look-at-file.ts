import { accessSync, closeSync, constants, fstatSync, openSync, readSync, realpathSync, statSync } from 'node:fs'
import { dirname } from 'node:path'
import { type FoundInstead, notAProject, storeError } from '../errors.ts'
import { applicationId } from './layout.ts'

/** What can be said of a project file before any database touches it. */
export interface Look {
  /** The file itself, links followed: what lies beside it lies beside this path. */
  readonly path: string
  readonly mayWriteFile: boolean
  readonly mayWriteFolder: boolean
  /** True where a file ending in -wal holds facts that are not in the project file yet. */
  readonly isUnfinished: boolean
  readonly size: number
  /** The layout that the file says it has. */
  readonly layout: number
}

/** The first 100 bytes of every SQLite database. @source https://sqlite.org/fileformat2.html section 1.3 */
const header = {
  length: 100,
  magic: 'SQLite format 3\u0000',
  pageSizeAt: 16,
  pagesAt: 28,
  layoutAt: 60,
  applicationIdAt: 68,
} as const

/**
 * Looks at a file without changing it in any way.
 *
 * @throws ThrumError store/no-such-file, store/unreadable, store/not-a-project, store/damaged (cut off)
 */
export function lookAtFile(file: string): Look {
  const path = realPath(file)
  if (statSync(path).isDirectory()) throw notAProject(file, 'store/found/folder')
  const { bytes, size } = readHeader(path, file)
  const instead = foundInstead(bytes, size)
  if (instead !== null) throw notAProject(file, instead)
  const isUnfinished = sizeOf(`${path}-wal`) > 0
  if (!isUnfinished) requireWhole(bytes, size, file)
  return {
    path,
    mayWriteFile: may(path, constants.W_OK),
    mayWriteFolder: may(dirname(path), constants.W_OK),
    isUnfinished,
    size,
    layout: bytes.getUint32(header.layoutAt),
  }
}

function realPath(file: string): string {
  try {
    return realpathSync(file)
  } catch (cause) {
    throw storeError('store/no-such-file', { file }, cause)
  }
}

function readHeader(path: string, file: string): { readonly bytes: DataView; readonly size: number } {
  let handle: number
  try {
    handle = openSync(path, 'r')
  } catch (cause) {
    throw storeError('store/unreadable', { file }, cause)
  }
  try {
    const bytes = new Uint8Array(header.length)
    readSync(handle, bytes, 0, header.length, 0)
    return { bytes: new DataView(bytes.buffer), size: fstatSync(handle).size }
  } finally {
    closeSync(handle)
  }
}

function foundInstead(bytes: DataView, size: number): FoundInstead | null {
  if (size === 0) return 'store/found/empty'
  const start = String.fromCharCode(...new Uint8Array(bytes.buffer, 0, header.magic.length))
  if (start !== header.magic) return 'store/found/other-file'
  return bytes.getUint32(header.applicationIdAt) === applicationId ? null : 'store/found/other-database'
}

/** A file shorter than its own header says lost its end, on a bad stick or in a broken download. */
function requireWhole(bytes: DataView, size: number, file: string): void {
  const written = bytes.getUint16(header.pageSizeAt)
  const expected = bytes.getUint32(header.pagesAt) * (written === 1 ? 65_536 : written)
  if (size < expected) throw storeError('store/damaged', { file, what: `it should have ${expected} bytes and has ${size}` })
}

function sizeOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.size ?? 0
}

function may(path: string, mode: number): boolean {
  try {
    accessSync(path, mode)
    return true
  } catch {
    return false
  }
}
