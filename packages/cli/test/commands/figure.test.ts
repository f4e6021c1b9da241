import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createDemonstration } from '@thrum/host'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { tell } from '../in-process.ts'

let folder = ''
const at = (name: string): string => join(folder, name)
const hives = ['--kinds', 'honey bee', '--since', '2032-07-23', '--where', 'crop=sunflower,season=2032', '--worth', '2']
const draw = (file: string) => tell(['ask', 'what-differs', '--in', at('vale.thrum'), ...hives, '--figure', at(file)])

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'thrum-figure-'))
  process.env.THRUM_HOME = at('home')
  await createDemonstration(at('vale.thrum'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('ask --figure', () => {
  it('draws the answer as SVG: the same bytes twice, its dates as dates', async () => {
    expect((await draw('one.svg')).code).toBe(0)
    await draw('two.svg')
    const svg = readFileSync(at('one.svg'), 'utf8')
    expect(svg).toMatch(/^<svg /u)
    expect(svg).toContain('12 Jul')
    expect(readFileSync(at('two.svg'), 'utf8')).toBe(svg)
  })

  it('draws it as PNG by the ending of the name', async () => {
    const { out } = await draw('one.png')
    expect(out).toContain('one.png')
    expect([...readFileSync(at('one.png')).subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10])
  })

  it('refuses another ending before anything is worked out, and a folder that is not there', async () => {
    const refused = await draw('one.gif')
    expect(refused).toMatchObject({ code: 2, out: '' })
    expect(refused.notes).toContain('SVG or PNG')
    expect(await draw('nowhere/one.svg')).toMatchObject({ code: 2 })
    expect(existsSync(at('one.gif'))).toBe(false)
  })
})
