// Writes facts one by one as soon as a line arrives: node writer.ts <project> <device> <facts>
import { once } from 'node:events'
import { openProjectFile } from '../../src/sqlite/index.ts'
import { author, field } from '../facts.ts'

const [path = '', device = '', count = '0'] = process.argv.slice(2)
const log = await openProjectFile(path, { mode: 'write' })
const by = author(device)
process.stdout.write('ready\n')
await once(process.stdin, 'data')
for (let k = 0; k < Number(count); k++) await log.append([field(`${device} ${k}`, by)])
await log.close()
process.stdin.destroy()
