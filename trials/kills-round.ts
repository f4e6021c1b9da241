import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { setTimeout } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import type { ProjectLog } from '@thrum/store'
import { checkProjectFile, openProjectFile } from '@thrum/store/sqlite'
import { isAsWritten } from './kills-facts.ts'
import { readLines, type WriterLine } from './kills-protocol.ts'

const writer = fileURLToPath(new URL('kills-writer.ts', import.meta.url))

/** What everybody was told is kept, over all rounds on one project. */
export interface Acknowledged {
  readonly facts: Set<string>
  readonly files: Set<string>
}

export interface Round {
  /** Moment of the kill, after the writer was ready [ms]. */
  readonly after: number
  /** Facts and files acknowledged in this round. */
  readonly facts: number
  readonly files: number
  /** Of all that was ever acknowledged: what is missing or not as it was written. */
  readonly lost: number
  /** Steps of which a part is there and a part is not. */
  readonly torn: number
  /** Facts that were kept although the kill came before their acknowledgement. Allowed, and counted. */
  readonly unsaid: number
  /** What the check of the whole file said: sound, or the code of the failure. */
  readonly check: string
}

/** Starts a writer, kills it (and nothing else) after `after` ms of writing, opens the project again, and looks. */
export async function killOnce(path: string, seed: string, after: number, acknowledged: Acknowledged): Promise<Round> {
  const lines = readLines(await writeAndKill(path, seed, after))
  const before = { facts: acknowledged.facts.size, files: acknowledged.files.size }
  for (const line of lines) {
    if (line.kind === 'done') for (const id of line.ids) acknowledged.facts.add(id)
    if (line.kind === 'kept') acknowledged.files.add(line.hash)
  }
  const check = await checkProjectFile(path).then(
    () => 'sound',
    (cause: unknown) => (cause instanceof Error && 'code' in cause ? String(cause.code) : String(cause)),
  )
  const log = await openProjectFile(path, { mode: 'write' })
  try {
    return {
      after,
      facts: acknowledged.facts.size - before.facts,
      files: acknowledged.files.size - before.files,
      lost: await countLost(log, acknowledged),
      ...(await lookAtLastStep(log, lines, acknowledged)),
      check,
    }
  } finally {
    await log.close()
  }
}

async function writeAndKill(path: string, seed: string, after: number): Promise<string> {
  const child = spawn(process.execPath, [writer, path, seed], { stdio: ['ignore', 'pipe', 'inherit'] })
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
