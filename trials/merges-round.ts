import { join } from 'node:path'
import { type Fact, foldFacts } from '@thrum/model'
import { createRng, unwatched } from '@thrum/model/ground'
import { mergeLogs, type ProjectLog } from '@thrum/store'
import { backupProject, createProjectFile, openProjectFile } from '@thrum/store/sqlite'
import { drawHistory, playHistory } from './merges-history.ts'
import { sharedState } from './merges-state.ts'

/** What became of one history. */
export interface Outcome {
  readonly facts: number
  readonly added: number
  readonly replaced: number
  readonly heldBack: number
  /** In what the merged copies differ; empty as it should be. */
  readonly differences: readonly string[]
}

/** Copies of a project that live on by themselves. */
const copies = ['first', 'second', 'third'] as const

/** Each copy takes from the other two, in either order. */
const orders: readonly (readonly [number, number, number])[] = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
]

interface Ending {
  readonly digest: string
  readonly fold: string
  readonly shared: string
}

async function endingOf(log: ProjectLog): Promise<Ending & { readonly facts: number }> {
  const facts: Fact[] = []
  for await (const chunk of log.factsAfter(0)) facts.push(...chunk)
  // Sheets that were never accepted stay at their copy, so only they may differ.
  const { unfinishedSheets: _, ...snapshot } = foldFacts(facts)
  const shared = await sharedState(log)
  return {
    digest: snapshot.digest,
    fold: JSON.stringify(snapshot, (_key, value) => (value instanceof Map ? [...value] : value)),
    shared: JSON.stringify(shared),
    facts: shared.facts.length,
  }
}

/** One history: three copies, merged in all six orders, must end with one digest; taking again must change nothing. */
export async function mergeInEveryOrder(folder: string, seed: string, steps: number): Promise<Outcome> {
  const path = (name: string): string => join(folder, `${name}.thrum`)
  const logs: ProjectLog[] = []
  for (const name of copies) logs.push(await createProjectFile(path(name)))
  await playHistory(drawHistory(createRng(seed), steps, copies.length), logs)

  const told = { added: 0, replaced: 0, heldBack: 0 }
  const differences = new Set<string>()
  let first: (Ending & { readonly facts: number }) | null = null
  for (const [own, ...others] of orders) {
    const name = `${own}-takes-${others.join('-')}`
    await backupProject(path(copies[own] as string), path(name))
    const taker = await openProjectFile(path(name), { mode: 'write' })
    for (const other of others) {
      const { added, replaced, heldBack } = await mergeLogs(taker, logs[other] as ProjectLog, unwatched)
      told.added += added
      told.replaced += replaced
      told.heldBack += heldBack
    }
    const once = await endingOf(taker)
    // A copy of a sheet that was held back in the first round, because only a later copy had accepted it, comes in a second.
    for (const other of others) await mergeLogs(taker, logs[other] as ProjectLog, unwatched)
    const twice = await endingOf(taker)
    first ??= twice
    for (const what of ['digest', 'fold'] as const) if (once[what] !== first[what]) differences.add(what)
    for (const what of ['digest', 'fold', 'shared'] as const) if (twice[what] !== first[what]) differences.add(what)
    const seq = await taker.lastSeq()
    for (const other of others) await mergeLogs(taker, logs[other] as ProjectLog, unwatched)
    if ((await taker.lastSeq()) !== seq) differences.add('taking again')
    await taker.close()
  }
  for (const log of logs) await log.close()
  return { facts: first?.facts ?? 0, ...told, differences: [...differences] }
}
