import { mkdirSync, readdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { fileURLToPath } from 'node:url'
import { type Layouts, layouts } from '../packages/store/src/sqlite/layout.ts'
import { openWithLayouts } from '../packages/store/src/sqlite/open-project-file.ts'
import { checkOf, runAndKill } from './kills-round.ts'

const migrator = fileURLToPath(new URL('kills-migrator.ts', import.meta.url))

/** A layout beyond the newest, whose step touches every fact: long enough for a kill to meet it. */
export const trialLayouts: Layouts = {
  newest: layouts.newest + 1,
  steps: [
    ...layouts.steps,
    {
      from: layouts.newest,
      run: (db) => db.exec('alter table fact add column trial text; update fact set trial = hex(id) || body'),
    },
  ],
}

export interface MigrationRound {
  readonly after: number
  /** Copies that were begun; of these, lifted before the kill. */
  readonly copies: number
  readonly lifted: number
  /** Facts that a copy has not, after it was opened again. */
  readonly lost: number
  /** Copies and backups that are neither the old layout whole nor the new one whole. */
  readonly torn: number
}

interface Shape {
  readonly layout: number
  readonly hasColumn: boolean
  readonly facts: number
}

function shapeOf(path: string): Shape {
  const db = new DatabaseSync(path)
  try {
    const one = (sql: string): number => Number(Object.values(db.prepare(sql).get() ?? {})[0])
    return {
      layout: one('pragma user_version'),
      hasColumn: one(`select count(*) from pragma_table_info('fact') where name = 'trial'`) > 0,
      facts: one('select count(*) from fact'),
    }
  } finally {
    db.close()
  }
}

/** Kills a program that lifts copies of a project to a newer layout, and looks at every copy and every backup it left. */
export async function killMigration(path: string, folder: string, after: number): Promise<MigrationRound> {
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder)
  await runAndKill([migrator, path, folder], after)
  const facts = shapeOf(path).facts
  const files = readdirSync(folder)
  const copies = files.filter((file) => file.endsWith('.thrum'))
  const backups = files.filter((file) => file.endsWith('.backup'))
  const round = { after, copies: copies.length, lifted: 0, lost: 0, torn: 0 }
  for (const file of backups) {
    const backup = shapeOf(join(folder, file))
    if (backup.layout !== layouts.newest || backup.hasColumn || (await checkOf(join(folder, file))) !== 'sound') round.torn += 1
    if (backup.facts !== facts) round.lost += 1
  }
  for (const file of copies) {
    const own = join(folder, file)
    const before = shapeOf(own)
    const isLifted = before.layout === trialLayouts.newest
    if (isLifted) round.lifted += 1
    if (isLifted !== before.hasColumn) round.torn += 1
    // Whatever the kill left, opening it again finishes the lift.
    await (await openWithLayouts(own, { mode: 'write' }, trialLayouts)).close()
    const now = shapeOf(own)
    if (now.layout !== trialLayouts.newest || !now.hasColumn) round.torn += 1
    if (now.facts !== facts || before.facts !== facts) round.lost += 1
  }
  return round
}
