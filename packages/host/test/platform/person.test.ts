import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { localAuthor, systemClock } from '../../src/index.ts'
import { testFolder } from '../folder.ts'

describe('who writes here', () => {
  it('is the person who is named, on a device whose name tells nobody whose it is', () => {
    const folder = testFolder()
    const { by, device } = localAuthor()
    expect(by).toBe('walker')
    expect(device).toMatch(/^[0-9a-f]{12}$/u)
    expect(readFileSync(join(folder, 'home', 'device'), 'utf8')).toBe(`${device}\n`)
    expect(localAuthor().device).toBe(device)
  })

  it('without a name it is the account; a device file that was spoilt is left alone', () => {
    const folder = testFolder()
    localAuthor()
    writeFileSync(join(folder, 'home', 'device'), 'spoilt')
    process.env.THRUM_BY = ''
    const { by, device } = localAuthor()
    expect(by).not.toBe('')
    expect(device).toMatch(/^[0-9a-f]{12}$/u)
    expect(readFileSync(join(folder, 'home', 'device'), 'utf8')).toBe('spoilt')
  })

  it('a home that cannot be made still gives a name, for this run', () => {
    const folder = testFolder()
    writeFileSync(join(folder, 'in-the-way'), '')
    chmodSync(join(folder, 'in-the-way'), 0o444)
    process.env.THRUM_HOME = join(folder, 'in-the-way', 'home')
    expect(localAuthor().device).toMatch(/^[0-9a-f]{12}$/u)
    expect(existsSync(join(folder, 'in-the-way', 'home'))).toBe(false)
  })

  it('moments of this machine are moments of facts', () => {
    testFolder()
    const { clock } = localAuthor()
    const [first, second] = [clock.next(), clock.next()]
    expect(first < second).toBe(true)
    expect(Math.abs(Date.parse(first.split('/')[0] ?? '') - systemClock.now())).toBeLessThan(60_000)
    expect(systemClock.zone()).toMatch(/\S/u)
    expect(systemClock.monotonic()).toBeLessThanOrEqual(systemClock.monotonic())
  })
})
