import { describe, expect, it } from 'vitest'
import { isPlainPath } from '../../src/door/plain-path.ts'
import { isToken, makeToken } from '../../src/door/token.ts'
import { tableName } from '../../src/tables/table-shelf.ts'
import { createKeptAnswers } from '../../src/work/kept-answers.ts'
import { nameOfTitle } from '../../src/work/project-files.ts'
import { shortened, shortText } from '../../src/work/tables/short-text.ts'
import { createTurns } from '../../src/work/turns.ts'

describe('a path', () => {
  it.each(['/', '/index.html', '/assets/a..b-1.js', '/api/tables/x/offer?name=..%2f', '/%C3%A9'])('is plain: %s', (path) => {
    expect(isPlainPath(path)).toBe(true)
  })
  it.each([
    '',
    'x',
    '*',
    'http://evil.example/',
    '/..',
    '/a/../b',
    '/a//b',
    '/%2E',
    '/%2F',
    '/%5C',
    '/%00',
    '/a\\b',
    '/\u0000',
    '/%',
  ])('is not plain: %j', (path) => {
    expect(isPlainPath(path)).toBe(false)
  })
})

describe('a key', () => {
  it('is 32 bytes of chance, and is itself alone', () => {
    const token = makeToken()
    expect(Buffer.from(token, 'base64url').length).toBe(32)
    expect(makeToken()).not.toBe(token)
    expect(isToken(token, token)).toBe(true)
    for (const other of [undefined, null, '', token.slice(1), [token], 1]) expect(isToken(token, other)).toBe(false)
  })
})

describe('names', () => {
  it.each([
    ['My Vale', 'my-vale'],
    ['../../etc/passwd', 'etc-passwd'],
    ['Öland: strips & hives 2031', 'öland-strips-hives-2031'],
    ['CON', 'project-con'],
    ['…', 'project'],
    ['<img onerror=x>', 'img-onerror-x'],
    ['a'.repeat(200), 'a'.repeat(60)],
  ])('of a file are made of a title: %s', (title, name) => {
    expect(nameOfTitle(title)).toBe(name)
  })

  it('of a table are names, and no paths', () => {
    expect(tableName('counts 2031.csv')).toBe('counts 2031.csv')
    expect(tableName('<img src=x onerror=alert(1)>.csv')).toBe('<img src=x onerror=alert(1)>.csv')
    expect(tableName('a\u202evsc.exe')).toBe('avsc.exe')
    for (const name of ['', '.', '..', '../a.csv', 'a/b.csv', 'C:\\a.csv', 'a\u0000.csv', '\u200b'])
      expect(() => tableName(name), name).toThrow(/server\/table\/name/u)
  })
})

describe('texts that are shown', () => {
  it('are no longer than is shown, and cut between characters', () => {
    expect(shortText('a'.repeat(200))).toBe('a'.repeat(200))
    expect([...shortText('🐝'.repeat(300))].every((sign) => sign === '🐝' || sign === '…')).toBe(true)
    const long = 'x'.repeat(1_000_000)
    const { values } = shortened({ id: 'a', values: { long, inner: { id: 'b', values: { long } }, number: 3, list: [] } })
    expect(JSON.stringify(values).length).toBeLessThan(600)
    expect(values.number).toBe(3)
  })
})

describe('kept answers', () => {
  const kept = (text: string) => ({ answer: {} as never, text })
  it('those not asked for the longest go first', () => {
    const answers = createKeptAnswers()
    for (let k = 0; k < 200; k++) answers.keep(`${k}`, kept('a'))
    expect(answers.find('0')).toBeDefined()
    answers.keep('new', kept('a'))
    expect(answers.find('1')).toBeUndefined()
    expect(answers.find('0')).toBeDefined()
  })
  it('hold so many letters together', () => {
    const answers = createKeptAnswers()
    const large = 'x'.repeat(30 * 1024 * 1024)
    for (const key of ['a', 'b', 'c']) answers.keep(key, kept(large))
    expect(['a', 'b', 'c'].map((key) => answers.find(key) !== undefined)).toEqual([false, true, true])
  })
})

describe('turns', () => {
  it('many use it together; whoever changes it is alone', async () => {
    const turns = createTurns()
    const told: string[] = []
    const gate = Promise.withResolvers<void>()
    const uses = ['a', 'b'].map((name) =>
      turns.together(async () => {
        told.push(`${name} in`)
        await gate.promise
        told.push(`${name} out`)
      }),
    )
    const changes = ['x', 'y'].map((name) => turns.alone(async () => void told.push(name)))
    const late = turns.together(async () => void told.push('late'))
    gate.resolve()
    await Promise.all([...uses, ...changes, late])
    expect(told.slice(0, 4)).toEqual(['a in', 'b in', 'a out', 'b out'])
    expect(told.indexOf('x')).toBeGreaterThan(3)
    expect(told.toSorted()).toEqual(['a in', 'a out', 'b in', 'b out', 'late', 'x', 'y'].toSorted())
  })
  it('a change that fails lets the next in', async () => {
    const turns = createTurns()
    await expect(turns.alone(() => Promise.reject(new Error('no')))).rejects.toThrow('no')
    expect(await turns.together(async () => 1)).toBe(1)
    expect(await turns.alone(async () => 2)).toBe(2)
  })
})
