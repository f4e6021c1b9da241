import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { ThrumError } from '@thrum/model/ground'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { backupProject, checkProjectFile, createProjectFile, openProjectFile } from '../../src/sqlite/index.ts'
import { allFacts, author, field, sheet } from '../facts.ts'
import { testPath } from '../folder.ts'
import { refusal } from '../refusal.ts'

async function projectOf(facts: number): Promise<string> {
  const path = testPath()
  const log = await createProjectFile(path)
  const by = author()
  await log.append([...sheet('spring', by), ...Array.from({ length: facts }, (_, k) => field(`field ${k}`, by))])
  await log.putAttachment('text/csv', [new Uint8Array(10_000).fill(65)])
  await log.close()
  return path
}

const hashOf = (path: string): string => createHash('sha256').update(readFileSync(path)).digest('hex')

describe('a damaged file', () => {
  it.each([0.99, 0.5, 0.01])('that lost its end is refused and left as it is (%f of it)', async (share) => {
    const path = await projectOf(300)
    truncateSync(path, Math.max(200, Math.floor(readFileSync(path).length * share)))
    const before = hashOf(path)
    for (const mode of ['write', 'read'] as const) {
      const { values } = await refusal(openProjectFile(path, { mode }), 'store/damaged')
      expect(values.file).toBe(path)
    }
    await refusal(backupProject(path, `${path}.copy`), 'store/damaged')
    expect(hashOf(path)).toBe(before)
    expect(readdirSync(dirname(path))).toEqual(['ostrel-vale.thrum'])
  })

  it('of which a piece was overwritten is refused, or read as it was, and never touched', async () => {
    const path = await projectOf(300)
    const sound = readFileSync(path)
    const log = await openProjectFile(path, { mode: 'read' })
    const facts = await allFacts(log)
    await log.close()
    let refused = 0
    // Behind the header of 100 bytes: what stands there is told apart before the database is asked.
    const somewhere = fc.integer({ min: 100, max: sound.length - 1 })
    await fc.assert(
      fc.asyncProperty(somewhere, fc.uint8Array({ minLength: 1, maxLength: 4096 }), async (start, noise) => {
        const bytes = Uint8Array.from(sound)
        bytes.set(noise.subarray(0, sound.length - start), start)
        writeFileSync(path, bytes)
        const before = hashOf(path)
        const outcome = await opened(path)
        if (outcome.code !== null) refused += 1
        // Noise inside a text keeps the structure sound: then everything else must still be there.
        if (outcome.code === null) expect(outcome.facts).toBe(facts.length)
        else expect(outcome.code).toBe('store/damaged')
        // What opens has a sound structure: only the text of a body can turn out damaged when it is read.
        if (outcome.code !== null && outcome.at === 'reading') expect(outcome.what).toBe('the body of a fact can’t be read')
        expect(hashOf(path)).toBe(before)
        expect(readdirSync(dirname(path))).toEqual(['ostrel-vale.thrum'])
      }),
      { numRuns: 60, seed: 2026 },
    )
    expect(refused).toBeGreaterThan(20)
  })

  it('with an attachment that is not what it was is found by the check', async () => {
    const path = await projectOf(3)
    const bytes = readFileSync(path)
    bytes[bytes.indexOf('AAAAAAAAAA') + 500] = 66
    writeFileSync(path, bytes)
    await refusal(checkProjectFile(path), 'store/attachment-damaged')
  })
})

interface Outcome {
  readonly code: string | null
  readonly facts: number
  readonly at: 'opening' | 'reading'
  readonly what: unknown
}

async function opened(path: string): Promise<Outcome> {
  let at: Outcome['at'] = 'opening'
  try {
    const log = await openProjectFile(path, { mode: 'write' })
    at = 'reading'
    try {
      return { code: null, facts: (await allFacts(log)).length, at, what: null }
    } finally {
      await log.close()
    }
  } catch (cause) {
    if (cause instanceof ThrumError) return { code: cause.code, facts: 0, at, what: cause.values.what }
    throw cause
  }
}
