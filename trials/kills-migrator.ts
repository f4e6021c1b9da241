// Copies a project and lifts the copy to a layout that never was, again and again until it is killed:
// node trials/kills-migrator.ts <project> <folder>
import { writeSync } from 'node:fs'
import { join } from 'node:path'
import { backupProject } from '@thrum/store/sqlite'
import { openWithLayouts } from '../packages/store/src/sqlite/open-project-file.ts'
import { trialLayouts } from './kills-migration.ts'

const [path = '', folder = ''] = process.argv.slice(2)
writeSync(1, 'ready\n')
for (let copy = 0; ; copy++) {
  const own = join(folder, `copy-${copy}.thrum`)
  await backupProject(path, own)
  await (await openWithLayouts(own, { mode: 'write' }, trialLayouts)).close()
}
