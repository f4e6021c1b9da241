import { openProject, type Project } from '@thrum/host'
import type { Snapshot } from '@thrum/model'
import { sha256Hex, ThrumError } from '@thrum/model/ground'
import type { OpenedProject } from '../thread/protocol.ts'
import { createKeptAnswers, type KeptAnswers } from './kept-answers.ts'
import { createKeptSheets, type KeptSheets } from './tables/kept-sheets.ts'
import { createTurns } from './turns.ts'

/** What the thread has before it: the folder, the open project, and what was worked out of it. */
export interface Desk {
  readonly folder: string
  readonly answers: KeptAnswers
  readonly sheets: KeptSheets
  opened(): OpenedProject | null
  /** Uses the open project; it is not closed meanwhile. @throws ThrumError server/no-project */
  use<T>(work: (project: Project) => Promise<T>): Promise<T>
  /** Opens another project, and closes the one that was open. Where that fails, the old one stays open. */
  switchTo(path: string): Promise<OpenedProject>
  /** Work that writes many facts which change nothing until the last: until it ends, nobody looks for what came. */
  writing<T>(work: () => Promise<T>): Promise<T>
  isWriting(): boolean
  /** Worked out once for each state of the data: by name, and the digest of the open project. */
  once<T>(name: string, snapshot: Snapshot, make: () => T): T
  close(): Promise<void>
}

interface Open {
  readonly project: Project
  readonly opened: OpenedProject
}

async function open(path: string): Promise<Open> {
  const project = await openProject(path, 'write')
  try {
    const { project: described } = await project.snapshot()
    return { project, opened: { path, hash: sha256Hex(`project ${described?.id ?? path}`) } }
  } catch (error) {
    await project.close()
    throw error
  }
}

/** @throws ThrumError store/... where the project cannot be opened */
export async function openDesk(folder: string, path: string | null): Promise<Desk> {
  let now: Open | null = path === null ? null : await open(path)
  let writers = 0
  const turns = createTurns()
  const made = new Map<string, { readonly of: string; readonly value: unknown }>()
  return {
    folder,
    answers: createKeptAnswers(),
    sheets: createKeptSheets(),
    opened: () => now?.opened ?? null,
    use: (work) =>
      turns.together(async () => {
        if (now === null) throw new ThrumError('server/no-project')
        return await work(now.project)
      }),
    switchTo: (next) =>
      turns.alone(async () => {
        const opening = await open(next)
        await now?.project.close()
        now = opening
        made.clear()
        return opening.opened
      }),
    writing: async (work) => {
      writers += 1
      try {
        return await work()
      } finally {
        writers -= 1
      }
    },
    isWriting: () => writers > 0,
    once: <T>(name: string, snapshot: Snapshot, make: () => T): T => {
      const known = made.get(name)
      const of = `${snapshot.project?.id ?? ''} ${snapshot.digest}`
      if (known?.of === of) return known.value as T
      const value = make()
      made.set(name, { of, value })
      return value
    },
    close: () =>
      turns.alone(async () => {
        await now?.project.close()
        now = null
      }),
  }
}
