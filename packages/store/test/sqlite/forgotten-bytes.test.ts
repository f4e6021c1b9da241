import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { createProjectFile } from '../../src/sqlite/index.ts'
import { author, field, forget, sheet } from '../facts.ts'
import { testPath } from '../folder.ts'

describe('what was forgotten', () => {
  it('is not in the bytes of the closed file either', async () => {
    const path = testPath()
    const log = await createProjectFile(path)
    const by = author()
    const secret = 'nest behind the third lime tree'
    await log.append(Array.from({ length: 200 }, (_, k) => field(`before ${k}`, by)))
    await log.append([{ ...field('Weir', by), body: { field: 'Weir', note: secret } }, ...sheet('spring', by)])
    await log.append(Array.from({ length: 200 }, (_, k) => field(`behind ${k}`, by)))
    await log.keepDerived('snapshot', { digest: 'd', bytes: new TextEncoder().encode(secret) })
    const everything = (): string =>
      readdirSync(dirname(path))
        .map((name) => readFileSync(join(dirname(path), name), 'latin1'))
        .join('')
    expect(everything()).toContain(secret)
    expect(everything()).toContain('Orla Invented')
    await log.append([forget('field-Weir', by), forget('spring-batch-0#1', by), forget('spring-batch-1#1', by)])
    await log.close()
    expect(everything()).toContain('behind 199')
    expect(everything()).not.toContain(secret)
    expect(everything()).not.toContain('Orla Invented')
  })
})
