// Tries something on a project and tells how it went, as JSON: node tell.ts open-write|open-read|create|fill <project>
import type { ProjectLog } from '../../src/index.ts'
import { createProjectFile, openProjectFile } from '../../src/sqlite/index.ts'
import { author, field } from '../facts.ts'

const [what = '', path = ''] = process.argv.slice(2)

async function tell(): Promise<object> {
  if (what === 'create') return await access(await createProjectFile(path))
  if (what === 'fill') return await fill(await openProjectFile(path, { mode: 'write' }))
  return await access(await openProjectFile(path, { mode: what === 'open-read' ? 'read' : 'write' }))
}

async function access(log: ProjectLog): Promise<object> {
  const told = { access: log.access, facts: await log.factCount() }
  await log.close()
  return told
}

/** Appends pairs until no more goes in; then reads, and appends nothing. */
async function fill(log: ProjectLog): Promise<object> {
  const by = author('filler')
  let kept = 0
  try {
    for (; kept < 100_000; kept += 2) {
      await log.append([field(`left ${kept}`, by), { ...field(`right ${kept}`, by), data: new Uint8Array(5000) }])
    }
    throw new Error('it never became full')
  } catch (cause) {
    const told = {
      code: cause instanceof Error && 'code' in cause ? cause.code : String(cause),
      kept,
      facts: await log.factCount(),
    }
    await log.close()
    return told
  }
}

const told = await tell().catch((cause: unknown) => ({
  code: cause instanceof Error && 'code' in cause ? cause.code : String(cause),
}))
process.stdout.write(JSON.stringify(told))
