import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createDemonstration } from '@thrum/host'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { tell } from '../in-process.ts'

let folder = ''
const at = (name: string): string => join(folder, name)
const hives = ['--kinds', 'honey bee', '--since', '2032-07-23', '--where', 'crop=sunflower,season=2032', '--worth', '2']
const draw = (file: string, ...more: readonly string[]) =>
  tell(['ask', 'what-differs', '--in', at('vale.thrum'), ...hives, '--figure', at(file), ...more])
/** An audit that finds nothing tangled with what is asked. */
const sound = ['ask', 'is-design-sound', '--between', 'strip', '--since', '2032-07-23']

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
    expect(svg).toContain('date (2032)')
    expect(svg).toContain('Verdict: the design blocks. n = 4 fields')
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

  it('draws dates of several seasons as days of the season, and a level alike in every figure', async () => {
    const crops = ['ask', 'what-differs', '--between', 'crop', '--kinds', 'bumble bee', '--worth', '2']
    await tell([...crops, '--in', at('vale.thrum'), '--figure', at('crops.svg')])
    const svg = readFileSync(at('crops.svg'), 'utf8')
    expect(svg).toContain('days since the first count of the season')
    const levels = [...svg.matchAll(/font-weight="600"[^>]*>(sunflower|sweet cherry)<\/text>/gu)].map(([, level]) => level)
    expect(levels).toEqual(['sunflower', 'sweet cherry', 'sunflower', 'sweet cherry', 'sunflower', 'sweet cherry'])
  })

  it('writes nothing where the answer has nothing to draw, says so and ends with 2; the answer is told', async () => {
    const told = await tell([...sound, '--in', at('vale.thrum'), '--figure', at('none.png')])
    expect(told.code).toBe(2)
    expect(told.notes).toContain('nothing to draw')
    expect(told.notes).toContain('without --figure')
    expect(told.out).not.toContain('Figure written')
    expect(told.out).toContain('What may be said')
    expect(existsSync(at('none.png'))).toBe(false)
  })

  it('and in the machine form tells that failure alone', async () => {
    const { code, json } = await tell([...sound, '--in', at('vale.thrum'), '--figure', at('none.svg')], { isJson: true })
    expect(code).toBe(2)
    expect(json).toMatchObject({ error: { code: 'cli/ask/no-figure' } })
  })
})

describe('ask --figure-look and --figure-width', () => {
  const page = (file: string): string => /<svg [^>]*>/u.exec(readFileSync(at(file), 'utf8'))?.[0] ?? ''

  it('draw it for a dark screen, and as wide as a phone; its words stay text', async () => {
    await draw('usual.svg')
    expect((await draw('phone.svg', '--figure-look', 'dark', '--figure-width', '390')).code).toBe(0)
    expect(page('usual.svg')).toContain('width="1280"')
    expect(page('phone.svg')).toContain('width="390"')
    const svg = readFileSync(at('phone.svg'), 'utf8')
    expect(svg).toMatch(/<text [^>]*>too small to act on<\/text>/u)
    expect(svg).toContain('fill="#15191d"')
    expect(readFileSync(at('usual.svg'), 'utf8')).toContain('fill="#ffffff"')
  })

  it('light and 1280 are what is drawn without them', async () => {
    await draw('plain.svg')
    await draw('said.svg', '--figure-look', 'light', '--figure-width', '1280')
    expect(readFileSync(at('said.svg'), 'utf8')).toBe(readFileSync(at('plain.svg'), 'utf8'))
  })

  it.each([
    [['--figure-look', 'blue'], 'light or dark'],
    [['--figure-width', '12'], 'from 280 to 4000'],
    [['--figure-width', 'wide'], 'from 280 to 4000'],
    [['--figure-width', '4001'], 'from 280 to 4000'],
  ])('%j is refused before anything is worked out', async (more, said) => {
    const told = await draw('refused.svg', ...more)
    expect(told).toMatchObject({ code: 2, out: '' })
    expect(told.notes).toContain(said)
    expect(existsSync(at('refused.svg'))).toBe(false)
  })

  it('say nothing without --figure, and help tells of both', async () => {
    const alone = await tell(['ask', 'who-visits', '--in', at('vale.thrum'), '--figure-look', 'dark'])
    expect(alone).toMatchObject({ code: 2, out: '' })
    const { out } = await tell(['help', 'who-visits'])
    expect(out).toContain('--figure-look light|dark')
    expect(out).toContain('--figure-width NUMBER')
  })
})
