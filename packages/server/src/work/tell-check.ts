import { basename } from 'node:path'
import type { Project } from '@thrum/host'
import { rowAddress } from '@thrum/model'
import { checkProject } from '@thrum/questions'

/** What is missing or cannot be right in the project: what the terminal's check finds. */
export async function tellCheck(project: Project): Promise<unknown> {
  const snapshot = await project.snapshot()
  const findings = checkProject(snapshot)
  return {
    project: basename(project.path),
    digest: snapshot.digest,
    holds: findings.every(({ severity }) => severity !== 'block'),
    findings: findings.map(({ rows, ...rest }) => ({
      ...rest,
      rows: rows.map((row) => rowAddress(snapshot.tables.count, row)),
    })),
    unfinishedSheets: snapshot.unfinishedSheets,
  }
}
