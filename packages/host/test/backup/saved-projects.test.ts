import { cpSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { ask, correctCell, historyOfRow, openProject } from '@thrum/host'
import { unwatched } from '@thrum/model/ground'
import { checkProjectFile } from '@thrum/store/sqlite'
import { describe, expect, it } from 'vitest'
import { person, testFolder } from '../corrections/made-counts.ts'

const saved = fileURLToPath(new URL('../../../store/test/projects/', import.meta.url))
const versions = readdirSync(saved).flatMap((name) => (name.endsWith('.thrum') ? [name.slice(0, -'.thrum'.length)] : []))

interface State {
  readonly digest: string
  readonly counts: number
  readonly tallies: number
  readonly conflicts: number
  readonly worths: readonly unknown[]
  readonly estimates: readonly {
    readonly id: string
    readonly value: number
    readonly low: number | null
    readonly high: number | null
    readonly n: number
  }[]
}

/** A copy to open: opening writes files beside a project. */
function copyOf(version: string): string {
  const path = join(testFolder(), `${version}.thrum`)
  cpSync(join(saved, `${version}.thrum`), path)
  return path
}

// Golden, and meant to be: a project of any release opens for ever. Where a later version answers with another number on
// purpose, the number changes here together with the changelog; that it opens, and what was counted, never does.
describe.each(versions)('the project saved by release %s', (version) => {
  const state = JSON.parse(readFileSync(join(saved, `${version}.who-visits.json`), 'utf8')) as State

  it('is sound, and answers as it did', async () => {
    const path = copyOf(version)
    await checkProjectFile(path)
    const project = await openProject(path, 'read')
    try {
      const { answer, snapshot } = await ask(project, 'who-visits', {}, unwatched)
      expect(snapshot.digest).toBe(state.digest)
      expect({ counts: snapshot.tables.count.rows, tallies: snapshot.tables.tally.rows }).toEqual({
        counts: state.counts,
        tallies: state.tallies,
      })
      expect(snapshot.worths.map(({ question, worth }) => ({ question, worth }))).toEqual(state.worths)
      expect(snapshot.waitingFacts).toEqual([])
      for (const { id, value, low, high, n } of state.estimates) {
        const now = answer.estimates.find((estimate) => estimate.id === id)
        expect(now?.n).toBe(n)
        // One part in a million million: the arithmetic may be ordered otherwise, the method may not.
        expect(Math.abs((now?.value ?? Number.NaN) / value - 1)).toBeLessThan(1e-12)
        if (low !== null)
          expect(Math.abs((now?.interval?.low ?? Number.NaN) - low)).toBeLessThan(1e-9 * Math.max(1, Math.abs(low)))
        if (high !== null)
          expect(Math.abs((now?.interval?.high ?? Number.NaN) - high)).toBeLessThan(1e-9 * Math.max(1, Math.abs(high)))
      }
    } finally {
      await project.close()
    }
  })

  it('can be written in, and tells the history of its rows', async () => {
    const project = await openProject(copyOf(version), 'write', { author: person('later', Date.UTC(2040, 0, 1)) })
    try {
      expect(project.access.mode).toBe('write')
      const history = await historyOfRow(project, { row: 'counts.csv:2' })
      expect(history.cells).toMatchObject([{ column: 'honey bee', steps: [{ to: '9', reason: 'digits swapped' }] }])
      expect(
        await correctCell(project, { row: 'counts.csv:2', column: 'honey bee', value: '10', reason: 'again' }),
      ).toMatchObject({ from: '9' })
    } finally {
      await project.close()
    }
  })
})

it('every release so far has left one', () => {
  expect(versions).toContain('0.1.0')
})
