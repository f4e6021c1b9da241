// Random histories of two copies, merged in either order: node trials/merges.ts --histories 100 [--steps 40] [--seed S]
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { type Fact, foldFacts } from '@thrum/model'
import { createRng, unwatched } from '@thrum/model/ground'
import { mergeLogs, type ProjectLog } from '@thrum/store'
import { backupProject, createProjectFile, openProjectFile } from '@thrum/store/sqlite'
import { drawHistory, playHistory } from './merges-history.ts'
import { sharedState } from './merges-state.ts'

const { values } = parseArgs({
  options: {
    histories: { type: 'string', default: '100' },
    steps: { type: 'string', default: '40' },
    seed: { type: 'string', default: 'merges-1' },
  },
})

interface Outcome {
  readonly facts: number
  readonly added: number
  readonly replaced: number
  readonly heldBack: number
  readonly disagreements: readonly string[]
}

async function foldOf(log: ProjectLog): Promise<string> {
  const facts: Fact[] = []
  for await (const chunk of log.factsAfter(0)) facts.push(...chunk)
  // Sheets that were never accepted stay at their copy, so only they may differ.
  const { unfinishedSheets: _, ...snapshot } = foldFacts(facts)
  return JSON.stringify(snapshot, (_key, value) => (value instanceof Map ? [...value] : value))
}

/** One history: two copies, each taking from the other as it was, must end alike; taking again must change nothing. */
async function mergeBothWays(folder: string, seed: string, steps: number): Promise<Outcome> {
  const path = (name: string): string => join(folder, `${name}.thrum`)
  const first = await createProjectFile(path('first'))
  const second = await createProjectFile(path('second'))
  await playHistory(drawHistory(createRng(seed), steps, 2), [first, second])
  await backupProject(path('first'), path('first-takes'))
  await backupProject(path('second'), path('second-takes'))
  const firstTakes = await openProjectFile(path('first-takes'), { mode: 'write' })
  const secondTakes = await openProjectFile(path('second-takes'), { mode: 'write' })
  const merged = await mergeLogs(firstTakes, second, unwatched)
  const mergedBack = await mergeLogs(secondTakes, first, unwatched)

  const disagreements: string[] = []
  const [a, b] = [await sharedState(firstTakes), await sharedState(secondTakes)]
  if (JSON.stringify(a) !== JSON.stringify(b)) disagreements.push('facts or files')
  if ((await foldOf(firstTakes)) !== (await foldOf(secondTakes))) disagreements.push('fold')
  const seq = await firstTakes.lastSeq()
  const again = await mergeLogs(firstTakes, second, unwatched)
  if (again.added + again.replaced + again.attachments > 0 || (await firstTakes.lastSeq()) !== seq)
    disagreements.push('taking twice')
  for (const log of [first, second, firstTakes, secondTakes]) await log.close()
  return {
    facts: a.facts.length,
    added: merged.added + mergedBack.added,
    replaced: merged.replaced + mergedBack.replaced,
    heldBack: merged.heldBack + mergedBack.heldBack,
    disagreements,
  }
}

const total = { facts: 0, added: 0, replaced: 0, heldBack: 0 }
let failed = 0
for (let number = 0; number < Number(values.histories); number++) {
  const folder = mkdtempSync(join(tmpdir(), 'thrum-merges-'))
  const seed = `${values.seed}/${number}`
  const { disagreements, ...counts } = await mergeBothWays(folder, seed, Number(values.steps))
  rmSync(folder, { recursive: true, force: true })
  for (const name of ['facts', 'added', 'replaced', 'heldBack'] as const) total[name] += counts[name]
  if (disagreements.length > 0) {
    failed += 1
    process.stdout.write(`history ${seed}: copies differ in ${disagreements.join(', ')}\n`)
  }
}
process.stdout.write(
  `${values.histories} histories of ${values.steps} steps (seed ${values.seed}): ${failed} where copies differ; ` +
    `${total.facts} shared facts, ${total.added} taken, ${total.replaced} copies replaced, ${total.heldBack} held back\n`,
)
process.exitCode = failed === 0 ? 0 : 1
