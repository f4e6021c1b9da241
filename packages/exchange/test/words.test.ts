import { readdirSync, readFileSync } from 'node:fs'
import { describeRead, proposeMapping, readCounts, readSheet, words } from '@thrum/exchange'
import type { Saying, SayingValue } from '@thrum/model/ground'
import { unwatched } from '@thrum/model/ground'
import { IntlMessageFormat } from 'intl-messageformat'
import { describe, expect, it } from 'vitest'
import { extractBytes, sheetBytes } from './files.ts'

const src = new URL('../src/', import.meta.url)
const sources = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(
  (name) => name.endsWith('.ts') && !name.startsWith('words'),
)
const text = sources.map((name) => readFileSync(new URL(name, src), 'utf8')).join('\n')

/** Ids that stand in the code, and those it puts together from a part. */
const written = [...text.matchAll(/'(exchange\/[a-z]+\/[a-z0-9-]+(?:\/retold)?)'/gu)].map((match) => match[1] as string)
const guessed = [
  ...text.matchAll(/guess\((?:'[a-zA-Z]+'|role), '([a-z-]+)', header(?:, (?:'([a-z-]+)'|[^']+'([a-z-]+)' : '([a-z-]+)'))?/gu),
].flatMap((match) => [
  `exchange/propose/${match[1]}`,
  ...[match[2], match[3], match[4]].filter((part) => part !== undefined).map((part) => `exchange/ask/${part}`),
])
const thrown = [...text.matchAll(/new ThrumError\(\s*'(exchange\/[a-z]+\/[a-z0-9-]+)'/gu)].map((match) => match[1] as string)

function say({ id, values }: Saying): string {
  const blank = (value: SayingValue): string | number => {
    if (typeof value === 'string' || typeof value === 'number') return value
    return 'id' in value ? say(value) : value.map(say).join(' ')
  }
  const message = words[id]
  if (message === undefined) throw new Error(`no words for ${id}`)
  const filled = Object.fromEntries(Object.entries(values).map(([name, value]) => [name, blank(value)]))
  return String(new IntlMessageFormat(message, 'en').format(filled))
}

describe('words', () => {
  it('there are words for every id, and an id for all words', () => {
    const used = new Set([...written, ...guessed, ...thrown.map((code) => `${code}/remedy`)])
    expect([...used].filter((id) => words[id] === undefined)).toEqual([])
    expect(Object.keys(words).filter((id) => !used.has(id))).toEqual([])
    expect(used.size).toBeGreaterThan(100)
  })

  it('every message is well formed', () => {
    for (const message of Object.values(words)) expect(() => new IntlMessageFormat(message, 'en')).not.toThrow()
  })

  it('the end of a vague sheet is told in plain words', async () => {
    const sheet = readSheet(sheetBytes('s3-approximate-and-censored-counts.csv'))
    const read = await readCounts(sheet, proposeMapping(sheet).mapping, unwatched)
    const told = describeRead(read).map(say)
    expect(told[0]).toBe('12 rows read: 4 accepted, 8 waiting for an answer, 0 set aside with the reason. Nothing was dropped.')
    expect(told[1]).toBe('12 watches, 110 minutes in all, 3 fields, on 3 days from 2025-05-02 to 2025-05-04.')
    expect(told[2]).toBe('honey bee: 39. 5 numbers are clean, 3 are usable with a mark, 4 need an answer from you.')
    expect(told).toContain(
      'Line 11, honeybee: "-1" waits: a number of this kind cannot be below zero; mend it or mark it as missing',
    )
    expect(told).toContain('honeybee: "ca. 12" is read as 12 (approximate, as written).')
    expect(told).toContain('Line 2: Merrowside, 2025-05-02, 10 min, honey bee 12, bumble bee 3, solitary bee 1, hover fly 0.')
  })

  it.each([
    's1-semicolon-decimal-comma-latin1.csv',
    's2-title-rows-two-line-header-totals.csv',
    's5-duplicate-ids-second-header.csv',
  ])('all of %s can be said', async (name) => {
    const sheet = readSheet(sheetBytes(name))
    const { mapping, reasons, questions } = proposeMapping(sheet)
    const read = await readCounts(sheet, mapping, unwatched)
    for (const saying of [
      ...describeRead(read),
      ...reasons.map(({ because }) => because),
      ...questions.map(({ asks }) => asks),
    ]) {
      expect(say(saying)).not.toMatch(/undefined|\{|exchange\//u)
    }
  })

  it('a refused sheet says what it looks like and what to bring', async () => {
    const sheet = readSheet(extractBytes('blueberry-na-2013-2015/blueberry.csv'))
    const error = await readCounts(sheet, proposeMapping(sheet).mapping, unwatched).catch((caught: unknown) => caught)
    expect(say((error as { saying: Saying }).saying)).toMatch(/means over several watches.*effort behind them are gone/u)
    expect(say((error as { remedy: Saying }).remedy)).toMatch(/counts and the minutes of each watch/u)
  })
})
