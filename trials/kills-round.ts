import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, readdirSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { openProject } from '@thrum/host'
import type { ProjectLog } from '@thrum/store'
import { checkProjectFile } from '@thrum/store/sqlite'
import { isAsWritten, roundAuthor } from './kills-facts.ts'
import { lookAtTables } from './kills-imports.ts'
import { readLines, type WriterLine } from './kills-protocol.ts'

const writer = fileURLToPath(new URL('kills-writer.ts', import.meta.url))

/** What everybody was told is kept, over all rounds on one project. */
export interface Acknowledged {
  readonly facts: Set<string>
  readonly files: Set<string>
  /** Tables that were brought. */
  readonly tables: Set<string>
}

export const nothingAcknowledged = (): Acknowledged => ({ facts: new Set(), files: new Set(), tables: new Set() })

export interface Round {
  /** Moment of the kill, after the writer was ready [ms]. */
  readonly after: number
  /** Facts, files and tables acknowledged in this round. */
  readonly facts: number
  readonly files: number
  readonly tables: number
  /** Of all that was ever acknowledged: what is missing or not as it was written. */
  readonly lost: number
  /** Steps of which a part is there and a part is not; tables that count and are not whole. */
  readonly torn: number
  /** Facts that were kept although the kill came before their acknowledgement. Allowed, and counted. */
  readonly unsaid: number
  /** Backups that lie beside, and those of them that did not pass their check. */
  readonly backups: number
  readonly unsoundBackups: number
  /** What the check of the whole file said: sound, or the code of the failure. */
  readonly check: string
}

/** What the check of a whole file says: sound, or the code of the failure. */
export async function checkOf(path: string): Promise<string> {
  return await checkProjectFile(path).then(
    () => 'sound',
    (cause: unknown) => (cause instanceof Error && 'code' in cause ? String(cause.code) : String(cause)),
  )
}

/** Starts a writer, kills it (and nothing else) after `after` ms of writing, opens the project again, and looks. */
export async function killOnce(path: string, seed: string, after: number, acknowledged: Acknowledged): Promise<Round> {
  const lines = readLines(await runAndKill([writer, path, seed], after))
  const before = { facts: acknowledged.facts.size, files: acknowledged.files.size, tables: acknowledged.tables.size }
  for (const line of lines) {
    if (line.kind === 'done') for (const id of line.ids) acknowledged.facts.add(id)
    if (line.kind === 'kept') acknowledged.files.add(line.hash)
    if (line.kind === 'brought') acknowledged.tables.add(line.file)
  }
  const check = await checkOf(path)
  const backups = backupsOf(path)
  const checks = await Promise.all(backups.map(checkOf))
  const project = await openProject(path, 'read', { author: roundAuthor('looker') })
  try {
    const { counted, torn } = await lookAtTables(project)
    const lostTables = [...acknowledged.tables].filter((file) => !counted.has(file)).length
    const last = await lookAtLastStep(project.log, lines, acknowledged)
    return {
      after,
      facts: acknowledged.facts.size - before.facts,
      files: acknowledged.files.size - before.files,
      tables: acknowledged.tables.size - before.tables,
      lost: (await countLost(project.log, acknowledged)) + lostTables,
      torn: last.torn + torn,
      unsaid: last.unsaid,
      backups: backups.length,
      unsoundBackups: checks.filter((own) => own !== 'sound').length,
      check,
    }
  } finally {
    await project.close()
  }
}

/** Runs a program until it is killed; what it printed. The program must never end by itself. */
export async function runAndKill(argv: readonly string[], after: number): Promise<string> {
  const child = spawn(process.execPath, [...argv], { stdio: ['ignore', 'pipe', 'inherit'] })
  let told = ''
  child.stdout.setEncoding('utf8')
  child.stdout.on('data', (text: string) => {
    told += text
  })
  const closed = once(child, 'close')
  await Promise.race([once(child.stdout, 'data'), closed])
  await setTimeout(after)
  child.kill('SIGKILL')
  const [code, signal] = await closed
  if (signal !== 'SIGKILL') throw new Error(`the writer ended by itself (${code ?? signal}) before it was killed`)
  return told
}

/** Finished backups of a project. What a kill cut off has another name and is swept away later. */
function backupsOf(path: string): readonly string[] {
  const folder = join(dirname(path), 'backups')
  const name = basename(path, '.thrum')
  const files = existsSync(folder) ? readdirSync(folder) : []
  return files.filter((file) => file.startsWith(`${name}.`) && file.endsWith('.thrum')).map((file) => join(folder, file))
}

async function countLost(log: ProjectLog, acknowledged: Acknowledged): Promise<number> {
  let lost = 0
  for (const id of acknowledged.facts) {
    const fact = await log.factById(id)
    if (fact === null || !isAsWritten(fact)) lost += 1
  }
  // The check of the file has compared every attachment that is there with its hash.
  for (const hash of acknowledged.files) if ((await log.attachment(hash)) === null) lost += 1
  return lost
}

/** Only the last step can have begun without being acknowledged: all of it must be there, or none. */
async function lookAtLastStep(
  log: ProjectLog,
  lines: readonly WriterLine[],
  acknowledged: Acknowledged,
): Promise<{ readonly torn: number; readonly unsaid: number }> {
  const begun = lines
    .flatMap((line) => (line.kind === 'begin' ? [line.ids] : []))
    .filter((ids) => !acknowledged.facts.has(ids[0] ?? ''))
  let torn = 0
  let unsaid = 0
  for (const ids of begun) {
    let there = 0
    for (const id of ids) if ((await log.factById(id)) !== null) there += 1
    unsaid += there
    if (there !== 0 && there !== ids.length) torn += 1
  }
  return { torn, unsaid }
}
