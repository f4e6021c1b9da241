import type { Project } from '@thrum/host'
import type { ProjectEvent } from '../api/stream.ts'

/** Looks whether facts came to a project since the last look: the state it has then, or null. */
export function createWatch(): (project: Project) => Promise<ProjectEvent | null> {
  let last: { readonly path: string; readonly seq: number; readonly event: ProjectEvent } | null = null
  return async (project) => {
    const seq = await project.log.lastSeq()
    if (last?.path === project.path && last.seq === seq) return null
    const { digest, askedDigest } = await project.snapshot()
    const event = { digest, askedDigest }
    const before = last
    last = { path: project.path, seq, event }
    // The batches of a file that nobody has accepted yet are facts, and change nothing.
    if (before?.path === project.path && same(before.event, event)) return null
    return event
  }
}

const same = (a: ProjectEvent, b: ProjectEvent): boolean => a.digest === b.digest && a.askedDigest === b.askedDigest
