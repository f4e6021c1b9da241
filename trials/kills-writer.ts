// Writes to a project as fast as it can until it is killed: node trials/kills-writer.ts <project> <seed>
// One line before each step (`begin`) and one when the store has acknowledged it (`done`).
import { writeSync } from 'node:fs'
import { createRng } from '@thrum/model/ground'
import { openProjectFile } from '@thrum/store/sqlite'
import { attachmentOf, factOf, roundAuthor } from './kills-facts.ts'
import type { WriterLine } from './kills-protocol.ts'

const [path = '', seed = ''] = process.argv.slice(2)
const rng = createRng(`${seed}/writer`)
const author = roundAuthor(seed)
// Straight to the pipe: what was acknowledged must be told before the next step begins.
const tell = (line: WriterLine): void => void writeSync(1, `${JSON.stringify(line)}\n`)

const log = await openProjectFile(path, { mode: 'write' })
tell({ kind: 'ready' })
for (let step = 0; ; step++) {
  const draw = rng.uniform()
  if (draw < 0.03) {
    const { hash } = await log.putAttachment('image/jpeg', [attachmentOf(`${seed}/${step}`)])
    tell({ kind: 'kept', hash })
  } else {
    const count = draw < 0.7 ? 1 : 2 + rng.below(200)
    const ids = Array.from({ length: count }, (_, k) => `${seed}/${step}/${k}`)
    tell({ kind: 'begin', ids })
    await log.append(ids.map((id) => factOf(id, author)))
    tell({ kind: 'done', ids })
  }
}
