import { basename } from 'node:path'
import {
  type CountsRead,
  isReadByDetection,
  type Mapping,
  readCounts,
  readSheet,
  type Sheet,
  sheetFacts,
  sheetId,
} from '@thrum/exchange'
import { countedSheets, type Fact, rowsBrought, sheetKinds } from '@thrum/model'
import { type LongWork, ThrumError } from '@thrum/model/ground'
import { type Project, requireWritable } from '../project/project.ts'

/** A file read under a mapping: nothing is written yet. */
export interface CountsOffered {
  readonly sheet: Sheet
  readonly mapping: Mapping
  readonly read: CountsRead
}

/**
 * Reads a file of counts under a mapping.
 *
 * @param found the same file as it was read by detection, where it was: it is not read again unless the mapping says otherwise
 * @throws ThrumError exchange/... where the file cannot be read as a whole; nothing was written
 */
export async function offerCounts(
  bytes: Uint8Array,
  mapping: Mapping,
  work: LongWork,
  found: Sheet | null = null,
): Promise<CountsOffered> {
  const sheet = found !== null && isReadByDetection(mapping.file) ? found : readSheet(bytes, mapping.file)
  await work.breathe()
  return { sheet, mapping, read: await readCounts(sheet, mapping, work) }
}

export interface CountsBrought {
  /** False: the same file under the same mapping was there already, and nothing was added. */
  readonly added: boolean
  readonly batches: number
  /** False where the file itself was not kept, because it holds what is forgotten here. */
  readonly kept: boolean
}

/**
 * Accepts an offered file: the original is kept as an attachment, then its batches, each in a transaction of its own, and
 * last the word that makes them count. Stopped half way, nothing of it counts.
 *
 * @throws ThrumError store/..., host/read-only, host/same-file-other-mapping, host/not-counted (it was forgotten here)
 */
export async function bringCounts(
  project: Project,
  path: string,
  bytes: Uint8Array,
  offered: CountsOffered,
  work: LongWork,
): Promise<CountsBrought> {
  requireWritable(project)
  const snapshot = await project.snapshot()
  const id = snapshot.project?.id
  if (id === undefined) throw new ThrumError('host/no-project-record', { file: project.path })
  const sheet = sheetId(id, offered.sheet.fileHash, offered.mapping)
  if (snapshot.sheets.some((own) => own.sheet === sheet)) return { added: false, batches: 0, kept: true }
  const sameFile = snapshot.sheets.find((own) => own.fileHash === offered.sheet.fileHash)
  if (sameFile !== undefined) throw new ThrumError('host/same-file-other-mapping', { file: basename(path) })
  const { kept } = await project.log.putAttachment('text/csv', [bytes])
  let batches = 0
  let rows = 0
  for (const fact of sheetFacts({
    project: id,
    file: basename(path),
    bytes,
    mapping: offered.mapping,
    read: offered.read,
    author: project.author,
  })) {
    if (work.signal.aborted) throw new ThrumError('host/stopped', { file: basename(path) })
    await project.log.append([fact])
    batches += 1
    if (fact.kind === rowsBrought.kind) rows += (fact.body as { readonly rows: number }).rows
    work.onProgress?.({ done: rows, total: offered.read.counts + offered.read.tallies, unit: 'rows' })
    await work.breathe()
  }
  if (!(await countedIn(project.log)).has(sheet)) {
    throw new ThrumError('host/not-counted', { file: basename(path) })
  }
  return { added: true, batches, kept }
}

/** Sheets that count in a log; their rows are not unpacked. */
async function countedIn(log: Project['log']): Promise<ReadonlySet<string>> {
  const facts: Fact[] = []
  for await (const chunk of log.factsAfter(0, { kinds: sheetKinds })) {
    for (const fact of chunk) facts.push({ ...fact, data: null })
  }
  return countedSheets(facts)
}
