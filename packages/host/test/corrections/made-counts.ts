import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Mapping, proposeMapping, readSheet } from '@thrum/exchange'
import {
  bringCounts,
  bringMended,
  createProject,
  type MendedBrought,
  type MendedOptions,
  type MendedOr,
  offerCounts,
  offerMended,
  openProject,
  type Project,
} from '@thrum/host'
import { type Author, createLogicalClock, textAt } from '@thrum/model'
import { unwatched } from '@thrum/model/ground'
import { mergeLogs } from '@thrum/store'
import { backupProject } from '@thrum/store/sqlite'
import { onTestFinished } from 'vitest'

/** Somebody on a device of their own, a second between two facts. */
export function person(device: string, start = Date.UTC(2031, 5, 1)): Author {
  let now = start
  const clock = { now: () => (now += 1000), monotonic: () => now, zone: () => 'UTC' }
  return { by: `walker of ${device}`, device, clock: createLogicalClock(clock, device) }
}

export function testFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'thrum-host-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

async function closedAtTheEnd(project: Promise<Project>): Promise<Project> {
  const open = await project
  onTestFinished(() => open.close())
  return open
}

export async function madeProject(folder = testFolder(), author = person('desk')): Promise<Project> {
  return await closedAtTheEnd(createProject(join(folder, 'vale.thrum'), 'Ostrel Vale', author))
}

/** A copy of a project as somebody else takes it along. */
export async function copyOf(project: Project, name: string, author: Author): Promise<Project> {
  const path = `${project.path}.${name}.thrum`
  await backupProject(project.path, path)
  return await closedAtTheEnd(openProject(path, 'write', { author }))
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)

export function mappingOf(text: string, more: Partial<Mapping> = {}): Mapping {
  return { ...proposeMapping(readSheet(bytesOf(text))).mapping, ...more }
}

/** Offers a table to a project. */
export async function offer(
  project: Project,
  file: string,
  text: string,
  mapping: Mapping = mappingOf(text),
  options: MendedOptions = {},
): Promise<MendedOr> {
  return await offerMended(project, file, await offerCounts(bytesOf(text), mapping, unwatched), options)
}

/** Brings a table to a project, as a new file or as a mended one. */
export async function bring(
  project: Project,
  file: string,
  text: string,
  mapping: Mapping = mappingOf(text),
  options: MendedOptions & { readonly withdrawMissing?: boolean } = {},
): Promise<MendedBrought | 'new' | 'known'> {
  const offered = await offerCounts(bytesOf(text), mapping, unwatched)
  const mended = await offerMended(project, file, offered, options)
  if (mended.kind === 'known') return 'known'
  if (mended.kind === 'mended') return await bringMended(project, file, bytesOf(text), mended, options, unwatched)
  await bringCounts(project, file, bytesOf(text), offered, unwatched)
  return 'new'
}

export async function exchange(a: Project, b: Project): Promise<void> {
  await mergeLogs(a.log, b.log, unwatched)
  await mergeLogs(b.log, a.log, unwatched)
}

/** What a project says of each count: field, plot, minutes, and each kind with its number. */
export async function told(project: Project): Promise<readonly string[]> {
  const { tables, tallyCount, tallyKind, kinds } = await project.snapshot()
  const { field, plot, minutes } = tables.count.columns
  return Array.from({ length: tables.count.rows }, (_, row) => {
    const tallies = Array.from(tallyCount).flatMap((count, tally) => {
      const number = tables.tally.columns.number.values[tally] ?? Number.NaN
      return count === row ? [`${kinds[tallyKind[tally] ?? -1]?.name} ${Number.isNaN(number) ? '?' : number}`] : []
    })
    return [textAt(field, row), textAt(plot, row), minutes.values[row], ...tallies.sort()].join(' ')
  }).sort()
}

export async function factLines(project: Project): Promise<readonly string[]> {
  const lines: string[] = []
  for await (const facts of project.log.factsAfter(0)) lines.push(...facts.map(({ id, kind, at }) => `${kind} ${id} ${at}`))
  return lines.sort()
}
