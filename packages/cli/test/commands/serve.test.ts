import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { checkProjectFile } from '@thrum/host'
import { describe, expect, it } from 'vitest'
import { tell, testFolder } from '../in-process.ts'
import { thrum, thrumBegun } from '../spawned.ts'

const addressLine = /^http:\/\/127\.0\.0\.1:\d+\/#key=[\w-]{43}$/mu

/** The address that a program prints while it goes on. */
async function printed(child: ReturnType<typeof thrumBegun>['child']): Promise<string> {
  let out = ''
  child.stdout?.on('data', (part) => {
    out += String(part)
  })
  for (;;) {
    const found = addressLine.exec(out)
    if (found !== null) return found[0]
    if (child.exitCode !== null) throw new Error(`it ended and said: ${out}`)
    await pause(20)
  }
}

async function pageAt(address: string): Promise<{ readonly status: number; readonly project: unknown }> {
  const [base = '', key = ''] = address.split('/#key=')
  const reply = await fetch(`${base}/api/project`, { headers: { 'x-thrum-token': key } })
  return { status: reply.status, project: await reply.json() }
}

describe('thrum serve', () => {
  it.each(['SIGINT', 'SIGTERM'] as const)('says its address, serves the project, and ends with 0 by %s', async (signal) => {
    const folder = testFolder()
    thrum({ folder }, 'new', 'own', '--title', 'My Vale')
    const { child, ended } = thrumBegun({ folder }, 'serve', '--port', '0')
    expect(await pageAt(await printed(child))).toMatchObject({ status: 200, project: { title: 'My Vale', file: 'own.thrum' } })
    child.kill(signal)
    const { code, err, out } = await ended
    expect([code, err]).toEqual([0, ''])
    expect(out).toContain('The project is closed.')
    await checkProjectFile(join(folder, 'own.thrum'))
  })

  it('a project that is served already is not served twice', async () => {
    const folder = testFolder()
    thrum({ folder }, 'new', 'own')
    const { child, ended } = thrumBegun({ folder }, 'serve', 'own.thrum', '--port', '0')
    const address = await printed(child)
    const second = thrum({ folder }, 'serve')
    expect([second.code, second.err]).toEqual([0, ''])
    expect(second.out.split('\n')).toContain(address)
    child.kill('SIGTERM')
    await ended
    expect((await tell(['serve', join(folder, 'own.thrum'), '--port', '0'])).out).not.toContain(address)
  })

  it('serves a folder without a project, and refuses a file that is none and a port that is none', async () => {
    const folder = testFolder()
    const { child, ended } = thrumBegun({ folder }, 'serve', '--port', '0')
    expect(await pageAt(await printed(child))).toMatchObject({ status: 409, project: { code: 'server/no-project' } })
    child.kill('SIGTERM')
    expect((await ended).code).toBe(0)
    writeFileSync(join(folder, 'no.thrum'), 'nothing')
    const refused = thrum({ folder }, 'serve', '--port', '0')
    expect([refused.code, refused.out]).toEqual([2, ''])
    expect(refused.err).toMatch(/not a Thrum project/u)
    expect((await tell(['serve', '--port', '65536'])).code).toBe(2)
  })
})

describe('the start', () => {
  it('serves the demonstration after its answers', async () => {
    const folder = testFolder()
    const { child, ended } = thrumBegun({ folder, name: 'start' })
    const { project } = await pageAt(await printed(child))
    expect(project).toMatchObject({ file: 'ostrel-vale.thrum', demonstration: true })
    child.kill('SIGINT')
    const { code, out } = await ended
    expect(code).toBe(0)
    expect(out.match(/^verdict: /gmu)?.length).toBeGreaterThan(3)
  })
})
