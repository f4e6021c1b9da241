import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { tell, testFolder } from '../in-process.ts'
import { trackedFiles } from '../repository.ts'

let folder = ''
beforeEach(() => {
  folder = testFolder()
  process.env.THRUM_HOME = join(folder, 'home')
})

/** What Windows cannot hold in a file name: characters, ends, and names of devices, with any ending. */
function isUnfit(name: string): boolean {
  return /[<>:"\\|?*\p{Cc}]|[. ]$/u.test(name) || /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\.|$)/iu.test(name)
}

describe('new', () => {
  it('makes a project that can be checked and asked, and says what comes next', async () => {
    const { code, out } = await tell(['new', join(folder, 'my-vale')])
    expect(code).toBe(0)
    expect(out).toContain(`Next:\n    thrum import counts.csv --in ${join(folder, 'my-vale.thrum')}`)
    expect((await tell(['check', join(folder, 'my-vale.thrum')])).code).toBe(1)
  })

  it('leaves a file alone that is there already', async () => {
    const path = join(folder, 'there.thrum')
    writeFileSync(path, 'something else')
    expect((await tell(['new', path], { isJson: true })).json).toMatchObject({ error: { code: 'store/exists' } })
    expect(readFileSync(path, 'utf8')).toBe('something else')
  })

  it.each([
    'a<b',
    'a>b',
    'a:b',
    'a"b',
    'a\\b',
    'a|b',
    'a?b',
    'a*b',
    'a\u0007b',
    'con',
    'PRN',
    'aux',
    'nul',
    'com1',
    'LPT9',
    'con.vale',
  ])('refuses a name that not every computer can hold: %j', async (name) => {
    const { code, json } = await tell(['new', join(folder, name)], { isJson: true })
    expect([code, (json as { error: { code: string } }).error.code]).toEqual([2, 'cli/new/name'])
    expect(readdirSync(folder).filter((own) => own.endsWith('.thrum'))).toEqual([])
  })

  it.each(['contours', 'com', 'Ängsö', '蜂 2031', 'a.b'])('takes %s', async (name) => {
    expect((await tell(['new', join(folder, name)])).code).toBe(0)
    expect(existsSync(join(folder, `${name}.thrum`))).toBe(true)
  })

  it.each(['', 'x'.repeat(201)])('a title that cannot be one leaves no file behind', async (title) => {
    const { code, json } = await tell(['new', join(folder, 'own'), '--title', title], { isJson: true })
    expect([code, (json as { error: { code: string } }).error.code]).toEqual([2, 'model/fact/misshapen'])
    expect(existsSync(join(folder, 'own.thrum'))).toBe(false)
  })
})

describe('the files of the repository itself', () => {
  it('have names that every computer can hold', () => {
    expect(trackedFiles().filter((path) => path.split('/').some(isUnfit))).toEqual([])
    expect(['a?b', 'nul.ts', 'a.', 'a '].filter((name) => !isUnfit(name))).toEqual([])
  })

  it('no two differ in capitals alone', () => {
    const names = trackedFiles()
    const folders = names.flatMap((path) => path.split('/').map((_, k, parts) => parts.slice(0, k + 1).join('/')))
    const all = [...new Set(folders)]
    const twins = Map.groupBy(all, (path) => path.normalize('NFC').toLowerCase())
    expect([...twins.values()].filter((same) => same.length > 1)).toEqual([])
    expect(names.length).toBeGreaterThan(100)
  })
})
