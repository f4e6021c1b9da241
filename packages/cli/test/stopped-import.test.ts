import { existsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { checkProjectFile, openProject } from '@thrum/host'
import { describe, expect, it } from 'vitest'
import { tell, testFolder } from './in-process.ts'
import { thrum, thrumBegun } from './spawned.ts'

/** A sheet of many watches; each is its own by field, plot, date and start. */
function largeSheet(rows: number): string {
  const text = Array.from({ length: rows }, (_, k) => {
    const day = 1 + (k % 28)
    return `Field ${k % 40},plot ${Math.floor(k / 28) % 1000},2031-05-${String(day).padStart(2, '0')},${8 + (k % 9)}:${10 + (k % 50)},10,${k % 7},${k % 3}`
  })
  return `field,plot,date,start,minutes,honey bee,hover fly\n${text.join('\n')}\n`
}

async function held(
  path: string,
): Promise<{ readonly counts: number; readonly accepted: number; readonly unfinished: number; readonly digest: string }> {
  await checkProjectFile(path)
  const project = await openProject(path, 'read')
  try {
    const { tables, sheets, unfinishedSheets, digest } = await project.snapshot()
    return { counts: tables.count.rows, accepted: sheets.length, unfinished: unfinishedSheets.length, digest }
  } finally {
    await project.close()
  }
}

describe('an import that is stopped', () => {
  it('by Ctrl-C: ends with 130, nothing counts, and the project is whole', async () => {
    const folder = testFolder()
    thrum({ folder }, 'new', 'own')
    writeFileSync(join(folder, 'large.csv'), largeSheet(120_000))
    const before = await held(join(folder, 'own.thrum'))
    const { child, ended } = thrumBegun({ folder }, 'import', 'large.csv', '--accept')
    // The mapping is kept before the rows are read: then the work has begun, and far from ended.
    while (!existsSync(join(folder, 'large.csv.mapping.json'))) await pause(5)
    child.kill('SIGINT')
    const { code, out, err } = await ended
    expect(code).toBe(130)
    expect(err).toMatch(/Stopping after the step in hand/u)
    expect(err).toMatch(/stopped/iu)
    expect(out).not.toContain('Accepted:')
    expect(await held(join(folder, 'own.thrum'))).toMatchObject({ counts: 0, accepted: 0, digest: before.digest })
  })

  it('by nobody: a reader who reads one line and goes away stops nothing, and the exit code stands', async () => {
    const folder = testFolder()
    thrum({ folder }, 'new', 'own')
    writeFileSync(join(folder, 'large.csv'), largeSheet(2000))
    const { child, ended } = thrumBegun({ folder }, 'import', 'large.csv', '--accept')
    child.stdout?.once('data', () => child.stdout?.destroy())
    expect((await ended).code).toBe(0)
    expect(await held(join(folder, 'own.thrum'))).toMatchObject({ counts: 2000, accepted: 1, unfinished: 0 })
  })

  it('between two batches: nothing counts; brought again, all of it does', async () => {
    const folder = testFolder()
    process.env.THRUM_HOME = join(folder, 'home')
    process.env.THRUM_BY = 'walker'
    const [path, sheet] = [join(folder, 'own.thrum'), join(folder, 'large.csv')]
    await tell(['new', path])
    writeFileSync(sheet, largeSheet(66_000))
    const before = await held(path)
    const signal = { aborted: false }
    let batches = 0
    const work = {
      signal,
      breathe: () => Promise.resolve(),
      onProgress: ({ total }: { readonly total?: number }) => {
        // Rows are told while they are read, then again while batches are written: of those the second stops it.
        if (total !== 66_000) batches += 1
        if (batches === 2) signal.aborted = true
      },
    }
    const stopped = await tell(['import', sheet, '--in', path, '--accept'], { work })
    expect(stopped.code).toBe(2)
    expect(stopped.notes).toMatch(/^Stopped while bringing large\.csv\. Nothing of it counts\./u)
    expect(await held(path)).toEqual({ counts: 0, accepted: 0, unfinished: 1, digest: before.digest })
    expect((await tell(['check', path])).out).toMatch(/begun and never accepted/u)

    const again = await tell(['import', sheet, '--in', path, '--accept'])
    expect(again.code).toBe(0)
    expect(await held(path)).toMatchObject({ counts: 66_000, accepted: 1, unfinished: 0 })
  })
})
