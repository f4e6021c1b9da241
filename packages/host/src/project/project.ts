import {
  type Author,
  type Fact,
  foldAsked,
  foldFacts,
  isAboutAsking,
  makeFact,
  projectDescribed,
  type Snapshot,
} from '@thrum/model'
import { type Clock, type Saying, ThrumError } from '@thrum/model/ground'
import { type Access, type ProjectLog, remedyOf } from '@thrum/store'
import { createProjectFile, openProjectFile } from '@thrum/store/sqlite'
import { v7 } from 'uuid'
import { withDailyBackup } from '../backup/daily-backup.ts'
import { localAuthor } from '../platform/person.ts'
import { systemClock } from '../platform/system-clock.ts'

/** An open project: its log, who writes, and the snapshot of what it holds now. */
export interface Project {
  readonly path: string
  readonly log: ProjectLog
  readonly author: Author
  readonly access: Access
  /** Folds what is in the log now; folds again only when something new came. */
  snapshot(): Promise<Snapshot>
  close(): Promise<void>
}

/** All facts of a project file, for reading only. @throws ThrumError store/... */
export async function factsOf(path: string): Promise<readonly Fact[]> {
  const log = await openProjectFile(path, { mode: 'read' })
  try {
    return await readAfter(log, localAuthor(), 0)
  } finally {
    await log.close()
  }
}

async function readAfter(log: ProjectLog, author: Author, seq: number): Promise<Fact[]> {
  const facts: Fact[] = []
  for await (const chunk of log.factsAfter(seq)) {
    for (const fact of chunk) {
      facts.push(fact)
      author.clock.see(fact.at)
    }
  }
  return facts
}

/** A snapshot and what it was folded from: up to which `seq`, and the facts without the bytes of their batches. */
interface Folded {
  readonly seq: number
  readonly snapshot: Snapshot
  readonly facts: readonly Fact[]
}

/** What was kept, with facts that came since and are about asking alone: that must not fold a million counts again. */
async function foldOn(log: ProjectLog, author: Author, seq: number, kept: Folded): Promise<Folded | null> {
  const came = await readAfter(log, author, kept.seq)
  if (!came.every(isAboutAsking)) return null
  const facts = [...kept.facts, ...came]
  return { seq, snapshot: foldAsked(kept.snapshot, facts), facts }
}

async function foldWhole(log: ProjectLog, author: Author, seq: number): Promise<Folded> {
  const facts = await readAfter(log, author, 0)
  return { seq, snapshot: foldFacts(facts), facts: facts.map((fact) => ({ ...fact, data: null })) }
}

function openOver(path: string, log: ProjectLog, author: Author): Project {
  let kept: Folded | null = null
  return {
    path,
    log,
    author,
    access: log.access,
    snapshot: async () => {
      const seq = await log.lastSeq()
      if (kept !== null && kept.seq !== seq) kept = await foldOn(log, author, seq, kept)
      // The one before is let go first: two of a million counts need not lie in memory.
      const now = kept ?? (await foldWhole(log, author, seq))
      kept = now
      return now.snapshot
    },
    close: () => log.close(),
  }
}

export interface OpenProject {
  /** Who writes; the person at this machine unless told. */
  readonly author?: Author
  readonly clock?: Clock
  /** Told what a person should know beside the result: a backup that could not be made. */
  readonly onNote?: (note: Saying) => void
}

/** Opens a project. Before the first writing of a day it is backed up beside its file. @throws ThrumError store/... */
export async function openProject(path: string, mode: 'write' | 'read', options: OpenProject = {}): Promise<Project> {
  const log = await openProjectFile(path, { mode })
  const { author = localAuthor(), clock = systemClock, onNote } = options
  return openOver(path, mode === 'read' ? log : withDailyBackup(log, path, { clock, onNote }), author)
}

/** A new, empty project. @throws ThrumError store/exists, ... */
export async function createProject(path: string, title: string, author: Author = localAuthor()): Promise<Project> {
  // Checked before the file is there: a title that cannot be one leaves no file behind.
  const described = makeFact(projectDescribed, { project: v7(), title }, author)
  const log = await createProjectFile(path)
  await log.append([described])
  return openOver(path, log, author)
}

/** @throws ThrumError host/read-only, with the reason why the project cannot be written, and its remedy */
export function requireWritable(project: Project): void {
  const { access } = project
  if (access.mode === 'write') return
  const { because } = access
  throw new ThrumError('host/read-only', { file: project.path, because, remedy: remedyOf(because) })
}
