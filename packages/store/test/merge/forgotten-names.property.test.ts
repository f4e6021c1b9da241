import { readdirSync, readFileSync } from 'node:fs'
import { unwatched } from '@thrum/model/ground'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { people, playHistory, type Step, whats } from '../../../../trials/merges-history.ts'
import { sharedState } from '../../../../trials/merges-state.ts'
import { mergeLogs, type ProjectLog } from '../../src/index.ts'
import { createProjectFile } from '../../src/sqlite/index.ts'
import { allFacts, forgetName } from '../facts.ts'
import { quickFolder } from '../folder.ts'

const orders = [
  [0, 1, 2],
  [2, 1, 0],
  [1, 2, 0],
] as const

/** Everything that lies beside and in a closed project, as bytes read one to one. */
function bytesIn(folder: string, name: string): string {
  const own = readdirSync(folder).filter((file) => file.startsWith(name))
  return own.map((file) => readFileSync(`${folder}/${file}`, 'latin1')).join('\n')
}

const steps: fc.Arbitrary<Step[]> = fc.array(
  fc.record({ what: fc.constantFrom(...whats), copy: fc.nat({ max: 2 }), pick: fc.nat({ max: 999_999 }) }),
  { minLength: 10, maxLength: 30, size: 'max' },
)

it('identity: three copies of which one learned to forget a name, taken in any order: the name is in none of the bytes', async () => {
  const folder = quickFolder()
  let run = 0
  let held = 0
  await fc.assert(
    fc.asyncProperty(steps, fc.nat({ max: 2 }), fc.nat({ max: 2 }), async (history, who, where) => {
      const person = people[who] ?? ''
      const name = (copy: string): string => `${run}-${copy}.thrum`
      run += 1
      const copies = await Promise.all([0, 1, 2].map((k) => createProjectFile(`${folder}/${name(`copy-${k}`)}`)))
      // At least one copy holds the person: the sheet of that number names them.
      const brought: Step = { what: 'accepted sheet', copy: (where + 2) % 3, pick: who }
      await playHistory([brought, ...history], copies)
      held += (await Promise.all(copies.map(allFacts))).some((facts) => JSON.stringify(facts).includes(person)) ? 1 : 0
      await copies[where]?.append([forgetName(person, 'project of the trial')])
      const states = []
      for (const order of orders) {
        const hub = await createProjectFile(`${folder}/${name(`hub-${order.join('')}`)}`)
        for (const k of [...order, ...order]) await mergeLogs(hub, copies[k] as ProjectLog, unwatched)
        states.push(await sharedState(hub))
        await hub.close()
        expect(bytesIn(folder, name(`hub-${order.join('')}`))).not.toContain(person)
      }
      expect(states[1]).toEqual(states[0])
      expect(states[2]).toEqual(states[0])
      // A copy that takes from one that knows forgets as well, though nothing new came to it.
      const other = copies[(where + 1) % 3] as ProjectLog
      await mergeLogs(other, copies[where] as ProjectLog, unwatched)
      for (const copy of copies) await copy.close()
      for (const k of [where, (where + 1) % 3]) expect(bytesIn(folder, name(`copy-${k}`))).not.toContain(person)
    }),
    { numRuns: 40, seed: 2026 },
  )
  // The histories do hold the names before.
  expect(held).toBeGreaterThan(30)
})
