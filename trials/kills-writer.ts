// Writes to a project as fast as it can until it is killed: node trials/kills-writer.ts <project> <seed>
// One line before each step (`begin`) and one when it was acknowledged (`done`, `kept`, `brought`). Days pass quickly here:
// the project is backed up every few steps.
import { writeSync } from 'node:fs'
import { openProject } from '@thrum/host'
import { createRng } from '@thrum/model/ground'
import { attachmentOf, factOf, roundAuthor } from './kills-facts.ts'
import { bringTable, tableOf } from './kills-imports.ts'
import type { WriterLine } from './kills-protocol.ts'

const [path = '', seed = ''] = process.argv.slice(2)
const rng = createRng(`${seed}/writer`)
const author = roundAuthor(seed)
/** Steps of a day, and the length of one [ms]. */
const stepsOfDay = 6
const day = 86_400_000
let step = 0
const start = Date.UTC(2031, 0, 1, 12) + rng.below(3000) * day
const clock = { now: () => start + Math.floor(step / stepsOfDay) * day, monotonic: () => step, zone: () => 'UTC' }
// Straight to the pipe: what was acknowledged must be told before the next step begins.
const tell = (line: WriterLine): void => void writeSync(1, `${JSON.stringify(line)}\n`)

const project = await openProject(path, 'write', { author, clock })
tell({ kind: 'ready' })
for (; ; step++) {
  const draw = rng.uniform()
  if (draw < 0.03) {
    const { hash } = await project.log.putAttachment('image/jpeg', [attachmentOf(`${seed}/${step}`)])
    tell({ kind: 'kept', hash })
  } else if (draw < 0.1) {
    const table = tableOf(`${seed}/${step}.csv`.replaceAll('/', '-'))
    await bringTable(project, table)
    tell({ kind: 'brought', file: table.file })
  } else {
    const count = draw < 0.7 ? 1 : 2 + rng.below(200)
    const ids = Array.from({ length: count }, (_, k) => `${seed}/${step}/${k}`)
    tell({ kind: 'begin', ids })
    await project.log.append(ids.map((id) => factOf(id, author)))
    tell({ kind: 'done', ids })
  }
}
