import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { readdirSync } from 'node:fs'
import { dirname } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { checkProjectFile, createProjectFile, openProjectFile } from '../../src/sqlite/index.ts'
import { allFacts, author, field } from '../facts.ts'
import { testPath } from '../folder.ts'
import { refusal } from '../refusal.ts'

const writer = fileURLToPath(new URL('../children/writer.ts', import.meta.url))

describe('two programs at one project', () => {
  it('write 200 facts each at the same time, and all 400 are there', async () => {
    const path = testPath()
    await (await createProjectFile(path)).close()
    const programs = ['tablet', 'desk'].map((device) =>
      spawn(process.execPath, [writer, path, device, '200'], { stdio: ['pipe', 'pipe', 'inherit'] }),
    )
    await Promise.all(programs.map(({ stdout }) => once(stdout, 'data')))
    const ends = programs.map((program) => endOf(program))
    for (const { stdin } of programs) stdin.write('go\n')
    // A third program reads by its cursor meanwhile, and misses nothing.
    const reader = await openProjectFile(path, { mode: 'read' })
    const seen: string[] = []
    let cursor = 0
    let isWriting = true
    const ended = Promise.all(ends).finally(() => {
      isWriting = false
    })
    for (let isLast = false; !isLast; ) {
      isLast = !isWriting
      for await (const chunk of reader.factsAfter(cursor)) {
        seen.push(...chunk.map(({ id }) => id))
        cursor = chunk.at(-1)?.seq ?? cursor
      }
      await new Promise((resolve) => setTimeout(resolve, 5))
    }
    expect(await ended).toEqual([0, 0])
    const facts = await allFacts(reader)
    expect(facts.map(({ seq }) => seq)).toEqual(Array.from({ length: 400 }, (_, k) => k + 1))
    expect(new Set(facts.map(({ id }) => id)).size).toBe(400)
    expect(seen).toEqual(facts.map(({ id }) => id))
    await reader.close()
    expect(await checkProjectFile(path)).toEqual({ facts: 400, attachments: 0 })
    expect(readdirSync(dirname(path))).toEqual(['ostrel-vale.thrum'])
  })

  it('a writer that finds the other holding on gives up with a reason, and loses nothing', async () => {
    const path = testPath()
    await (await createProjectFile(path)).close()
    const log = await openProjectFile(path, { mode: 'write', patience: 40 })
    const other = new DatabaseSync(path)
    other.exec('begin immediate')
    const { values } = await refusal(log.append([field('Weir')]), 'store/busy')
    expect(values).toEqual({ file: path, seconds: 1 })
    expect(await log.factCount()).toBe(0)
    other.exec('rollback')
    other.close()
    expect(await log.append([field('Weir')])).toEqual({ added: ['field-Weir'], replaced: [] })
    await log.close()
  })

  it('a writer waits for the other without holding up its own program', async () => {
    const path = testPath()
    await (await createProjectFile(path)).close()
    const log = await openProjectFile(path, { mode: 'write' })
    const other = new DatabaseSync(path)
    other.exec('begin immediate')
    const waiting = log.append([field('Weir')])
    // Released by this very event loop: were it blocked by the wait, this would never run.
    setTimeout(() => other.exec('rollback'), 30)
    expect(await waiting).toEqual({ added: ['field-Weir'], replaced: [] })
    other.close()
    await log.close()
  })

  it('two logs in one program take turns too', async () => {
    const path = testPath()
    const one = await createProjectFile(path)
    const two = await openProjectFile(path, { mode: 'write' })
    const by = author()
    const facts = Array.from({ length: 40 }, (_, k) => field(`f${k}`, by))
    await Promise.all(facts.map((fact, k) => (k % 2 === 0 ? one : two).append([fact])))
    expect(await two.factCount()).toBe(40)
    await one.close()
    await two.close()
  })
})

async function endOf(program: ChildProcess): Promise<number | null> {
  const [code] = await once(program, 'exit')
  return code as number | null
}
