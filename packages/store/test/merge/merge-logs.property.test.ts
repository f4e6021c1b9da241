import { unwatched } from '@thrum/model/ground'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { playHistory, type Step, whats } from '../../../../trials/merges-history.ts'
import { sharedState } from '../../../../trials/merges-state.ts'
import { mergeLogs, type ProjectLog } from '../../src/index.ts'
import { backupProject, createProjectFile, openProjectFile } from '../../src/sqlite/index.ts'
import { quickFolder } from '../folder.ts'

const stepsOf = (copies: number): fc.Arbitrary<Step[]> =>
  fc.array(fc.record({ what: fc.constantFrom(...whats), copy: fc.nat({ max: copies - 1 }), pick: fc.nat({ max: 999_999 }) }), {
    maxLength: 40,
    size: 'max',
  })

describe('merging, over random histories', () => {
  it('identity: two copies that take from each other hold the same facts and files, in either order', async () => {
    const folder = quickFolder()
    let run = 0
    let replaced = 0
    await fc.assert(
      fc.asyncProperty(stepsOf(2), async (steps) => {
        const path = (name: string): string => `${folder}/${run}-${name}.thrum`
        run += 1
        const open: ProjectLog[] = []
        const keep = async (log: Promise<ProjectLog>): Promise<ProjectLog> => {
          open.push(await log)
          return await log
        }
        try {
          const first = await keep(createProjectFile(path('first')))
          const second = await keep(createProjectFile(path('second')))
          await playHistory(steps, [first, second])
          await backupProject(path('first'), path('first-takes'))
          const firstTakes = await keep(openProjectFile(path('first-takes'), { mode: 'write' }))
          replaced += (await mergeLogs(firstTakes, second, unwatched)).replaced
          replaced += (await mergeLogs(second, first, unwatched)).replaced
          const state = await sharedState(firstTakes)
          expect(await sharedState(second)).toEqual(state)
          // Twice is once.
          expect(await mergeLogs(firstTakes, second, unwatched)).toMatchObject({ added: 0, replaced: 0, attachments: 0 })
          expect(await sharedState(firstTakes)).toEqual(state)
        } finally {
          for (const log of open) await log.close()
        }
      }),
      { numRuns: 100, seed: 2026 },
    )
    // The histories do meet the case of two copies of one id.
    expect(replaced).toBeGreaterThan(50)
  })

  it('identity: a hub that takes from three copies ends alike, whatever their order', async () => {
    const folder = quickFolder()
    let run = 0
    await fc.assert(
      fc.asyncProperty(stepsOf(3), async (steps) => {
        const path = (name: string): string => `${folder}/${run}-${name}.thrum`
        run += 1
        const copies = await Promise.all([0, 1, 2].map((k) => createProjectFile(path(`copy-${k}`))))
        await playHistory(steps, copies)
        const states = []
        for (const order of [
          [0, 1, 2],
          [2, 1, 0],
          [1, 2, 0],
        ]) {
          const hub = await createProjectFile(path(`hub-${order.join('')}`))
          // A second round: copies of a sheet that was held back in the first, because only a later copy had accepted it.
          for (const k of [...order, ...order]) await mergeLogs(hub, copies[k] as ProjectLog, unwatched)
          states.push(await sharedState(hub))
          await hub.close()
        }
        for (const copy of copies) await copy.close()
        expect(states[1]).toEqual(states[0])
        expect(states[2]).toEqual(states[0])
      }),
      { numRuns: 25, seed: 2026 },
    )
  })
})
