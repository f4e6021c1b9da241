import { projectDescribed } from '@thrum/model'
import type { ProjectLog } from '@thrum/store'

/** Which project a log is of, by the id that every copy of it has; null where nothing says so. */
export async function projectIdOf(log: Pick<ProjectLog, 'factsAfter'>): Promise<string | null> {
  let id: string | null = null
  for await (const facts of log.factsAfter(0, { kinds: [projectDescribed.kind] })) {
    for (const { body } of facts) if (typeof body.project === 'string') id = body.project
  }
  return id
}
