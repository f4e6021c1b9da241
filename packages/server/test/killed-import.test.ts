import { type ChildProcess, spawn } from 'node:child_process'
import { join } from 'node:path'
import { setImmediate as pause } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { checkProjectFile, openProject } from '@thrum/host'
import { describe, expect, it, onTestFinished } from 'vitest'
import { offerShape } from '../src/api/index.ts'
import { thrum } from './cli.ts'
import { knock, testFolder } from './serving.ts'
import { largeSheet } from './sheets.ts'

const entry = fileURLToPath(new URL('../../cli/src/thrum.ts', import.meta.url))

interface Begun {
  readonly child: ChildProcess
  readonly port: number
  readonly own: { readonly [name: string]: string }
}

/** A server in a process of its own, which can be killed. */
async function serveApart(folder: string): Promise<Begun> {
  const child = spawn(process.execPath, [entry, 'serve', 'own.thrum', '--port', '0'], {
    cwd: folder,
    env: { ...process.env, THRUM_HOME: `${folder}/home`, THRUM_BY: 'walker' },
  })
  onTestFinished(() => void child.kill('SIGKILL'))
  const address = await new Promise<string>((resolve, reject) => {
    let out = ''
    child.stdout.on('data', (part) => {
      out += String(part)
      const found = /^(http:\S+)\n/mu.exec(out)
      if (found !== null) resolve(found[1] ?? '')
    })
    child.on('exit', () => reject(new Error(`it ended and said: ${out}`)))
  })
  const [base = '', key = ''] = address.split('/#key=')
  return { child, port: Number(new URL(base).port), own: { origin: base, 'x-thrum-token': key } }
}

describe('a server that is killed in the middle of an import', () => {
  it('leaves the project whole: nothing of the file counts, and brought again all of it does', async () => {
    const folder = testFolder()
    thrum(folder, 'new', 'own.thrum')
    const { child, port, own } = await serveApart(folder)
    const octets = { ...own, 'content-type': 'application/octet-stream' }
    const offered = await knock(port, 'POST', '/api/tables?name=large.csv', octets, largeSheet(150_000))
    const { table, mapping } = offerShape.parse(offered.json())
    const gone = new Promise((resolve) => child.on('exit', resolve))
    const accepting = knock(
      port,
      'POST',
      `/api/tables/${table}/accept`,
      { ...own, 'content-type': 'application/json' },
      JSON.stringify({ mapping }),
    ).then(
      () => 'answered',
      () => 'broken off',
    )
    // Killed once the first batch stands in the log, and the last does not: another program sees it as it comes.
    const log = await openProject(join(folder, 'own.thrum'), 'read')
    while ((await log.log.factCount()) < 2) await pause()
    child.kill('SIGKILL')
    await Promise.all([gone, accepting])
    await log.close()

    await checkProjectFile(join(folder, 'own.thrum'))
    const project = await openProject(join(folder, 'own.thrum'), 'read')
    const { tables, sheets, unfinishedSheets } = await project.snapshot()
    await project.close()
    expect(await accepting).toBe('broken off')
    expect([tables.count.rows, sheets.length, unfinishedSheets.length]).toEqual([0, 0, 1])

    const again = await serveApart(folder)
    const ownAgain = { ...again.own, 'content-type': 'application/octet-stream' }
    const offer = offerShape.parse(
      (await knock(again.port, 'POST', '/api/tables?name=large.csv', ownAgain, largeSheet(150_000))).json(),
    )
    const brought = await knock(
      again.port,
      'POST',
      `/api/tables/${offer.table}/accept`,
      { ...again.own, 'content-type': 'application/json' },
      JSON.stringify({ mapping: offer.mapping }),
    )
    expect(brought.json()).toMatchObject({ state: 'accepted', counts: 150_000 })
    const ended = new Promise((resolve) => again.child.on('exit', resolve))
    again.child.kill('SIGTERM')
    expect(await ended).toBe(0)
    await checkProjectFile(join(folder, 'own.thrum'))
  }, 180_000)
})
