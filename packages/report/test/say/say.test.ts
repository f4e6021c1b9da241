import { execFileSync } from 'node:child_process'
import { saying } from '@thrum/model/ground'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createSpeaker, plainText } from '../../src/index.ts'

const say = createSpeaker({
  text: '{text}',
  bee: 'honey bee',
  'of-field': '{kind} of {field}',
  each: 'We saw {each}.',
  counts: '{n, plural, =0 {no count} one {one count} other {# counts}}',
  percent: '{share, number, ::scale/100 .}\u00a0%',
  braces: "a '{'literal'}' brace and {kind}",
  tag: 'less than <b>{n}</b>',
})

describe('createSpeaker', () => {
  it('fills blanks; a sentence inside a sentence is said first', () => {
    expect(say(saying('of-field', { kind: saying('bee'), field: 'Weir' }))).toBe('honey bee of Weir')
    const deep = saying('of-field', { kind: saying('of-field', { kind: saying('bee'), field: 'Ings' }), field: 'Weir' })
    expect(say(deep)).toBe('honey bee of Ings of Weir')
  })

  it('a list is joined as the language joins one', () => {
    const kinds = (...names: readonly string[]) => saying('each', { each: names.map((text) => saying('text', { text })) })
    expect(say(kinds())).toBe('We saw .')
    expect(say(kinds('a'))).toBe('We saw a.')
    expect(say(kinds('a', 'b'))).toBe('We saw a and b.')
    expect(say(kinds('a', 'b', 'c'))).toBe('We saw a, b, and c.')
  })

  it('numbers and plurals', () => {
    expect([0, 1, 1234].map((n) => say(saying('counts', { n })))).toEqual(['no count', 'one count', '1,234 counts'])
    expect(say(saying('percent', { share: 0.126 }))).toBe('13\u00a0%')
  })

  it('a missing text is an error that names it, so that no sentence goes unsaid', () => {
    expect(() => say(saying('never/written'))).toThrow('no text for "never/written" in en')
    expect(() => say(saying('each', { each: [saying('nor/this')] }))).toThrow('nor/this')
  })

  it('a blank that is not filled is an error', () => {
    expect(() => say(saying('of-field', { kind: 'bee' }))).toThrow(/field/u)
  })

  it('braces, tags and quotes of a name are text, and never a blank, a tag or the end of one', () => {
    for (const name of ['{field}', '{', '}', '{n, plural,', '<b>bold</b>', "it's", '#', "'{'", '$&', '__proto__'])
      expect(say(saying('of-field', { kind: name, field: 'Weir' }))).toBe(`${name} of Weir`)
    expect(say(saying('braces', { kind: '{x}' }))).toBe('a {literal} brace and {x}')
    expect(say(saying('tag', { n: 3 }))).toBe('less than <b>3</b>')
  })

  it('a name of a million characters is said', () => {
    const name = 'bee '.repeat(250_000)
    expect(say(saying('of-field', { kind: name, field: 'Weir' }))).toBe(`${name} of Weir`)
  })
})

describe('commands to be copied', () => {
  const told = createSpeaker({
    how: 'Settle it:\n    thrum settle {row} "{column}" NUMBER\n"{column}" of {row} waits.',
    more: '    thrum import {file}{more}',
    options: '{text}',
  })
  const command = (column: string): string =>
    told(saying('how', { row: 'counts.csv:3', column }))
      .split('\n')[1]
      ?.slice('    thrum settle counts.csv:3 '.length, -' NUMBER'.length) ?? ''

  it('a name stands as one word, quoted where it must be, and only there', () => {
    expect(command('temperature')).toBe('temperature')
    expect(command('Übersicht/α')).toBe('Übersicht/α')
    expect(command('honey bee')).toBe('"honey bee"')
    expect(command('it’s; fine')).toBe('"it’s; fine"')
    expect(command('')).toBe('""')
    expect(told(saying('how', { row: 'my counts.csv:3', column: 'wild bee' }))).toBe(
      'Settle it:\n    thrum settle "my counts.csv:3" "wild bee" NUMBER\n"wild bee" of my counts.csv:3 waits.',
    )
  })

  it('a path stands whole, where a sentence says its beginning', () => {
    const brief = createSpeaker({ made: 'Made {file}:\n    thrum check {file}' }, 'en', { longest: 100, longestWord: 10 })
    expect(brief(saying('made', { file: '/fields/of/the/vale.thrum' }))).toBe(
      'Made /fields/o…:\n    thrum check /fields/of/the/vale.thrum',
    )
  })

  it('in a shell of Windows a path is bare, and a sign that acts between quotes cuts the name', () => {
    const there = createSpeaker({ check: '    thrum check {file}' }, 'en', { shell: 'windows' })
    const word = (file: string): string => there(saying('check', { file })).slice('    thrum check '.length)
    expect(word(String.raw`C:\counts\my.csv`)).toBe(String.raw`C:\counts\my.csv`)
    expect(word('my counts.csv')).toBe('"my counts.csv"')
    expect(word('a & calc')).toBe('"a & calc"')
    expect(word('bee %PATH%')).toBe('"bee …"')
    expect(word('a" & calc')).toBe('"a…"')
  })

  it('a sentence in a command stands as it is', () => {
    const more = saying('options', { text: ' --mends "a b.csv"' })
    expect(told(saying('more', { file: 'c.csv', more }))).toBe('    thrum import c.csv --mends "a b.csv"')
  })

  it.skipIf(process.platform === 'win32')('a shell reads it back as the name, whatever stands in it, and acts on nothing', () => {
    const names = [
      '$(touch x)',
      '`touch x`',
      'a"b',
      "a'b",
      '$HOME',
      'a\\',
      '!!',
      "'; touch x; '",
      'a & b',
      '~',
      '~root',
      '*',
      '#x',
      '-',
      '"',
    ]
    const read = (column: string): string =>
      execFileSync('/bin/sh', ['-c', `printf %s ${command(column)}`], { encoding: 'utf8', cwd: '/' })
    for (const name of names) expect(read(name)).toBe(name)
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(...'ab $`"\'\\!*?~;&|<>(){}[]#%é蜂'), minLength: 1, maxLength: 12 }),
        (name) => {
          expect(read(name)).toBe(name)
        },
      ),
      { numRuns: 400 },
    )
  })
})

describe('a speaker that says no more than so much of a value', () => {
  const brief = createSpeaker({ 'of-field': '{kind} of {field}' }, 'en', { longest: 10 })
  const of = (kind: string): string => brief(saying('of-field', { kind, field: 'Weir' }))

  it('says the beginning, and that it is one', () => {
    expect(of('bumble bee')).toBe('bumble bee of Weir')
    expect(of('bumble bees')).toBe('bumble be… of Weir')
    expect(of('x'.repeat(1_000_000))).toBe(`${'x'.repeat(9)}… of Weir`)
  })

  it('what was made visible counts as it is said', () => {
    expect(of('\u001b'.repeat(4))).toBe('\\u001b\\u0… of Weir')
  })

  it('no half of a character is left', () => {
    expect(of(`12345678${'\u{1f41d}'.repeat(3)}`)).toBe('12345678\ufffd… of Weir')
  })
})

describe('names from files', () => {
  it.each([
    ['a colour', '\u001b[31mred', '\\u001b[31mred'],
    ['a cursor sent home', '\u001b[2J\u001b[H', '\\u001b[2J\\u001b[H'],
    ['the one-byte form of the same', '\u009b31m', '\\u009b31m'],
    ['a bell and a backspace', 'a\u0007\u0008b', 'a\\u0007\\u0008b'],
    ['writing turned round', 'bee\u202egnp', 'bee\\u202egnp'],
    ['isolates and marks of direction', '\u2066a\u2069\u200e\u200f\u061c', '\\u2066a\\u2069\\u200e\\u200f\\u061c'],
    ['a byte order mark', '\ufeffbee', '\\ufeffbee'],
    ['lines', 'a\nb\tc\rd\u2028e\u2029f\u0085', 'a b c\\u000dd\\u2028e\\u2029f\\u0085'],
    ['halves of characters', 'a\ud83db\udc1d', 'a\ufffdb\ufffd'],
    ['letters of any writing', 'Žežula 蜂 नमस्ते مرحبا', 'Žežula 蜂 नमस्ते مرحبا'],
  ])('%s: made visible', (_, name, told) => {
    expect(plainText(name)).toBe(told)
    expect(say(saying('of-field', { kind: name, field: 'Weir' }))).toBe(`${told} of Weir`)
  })

  it('identity: whatever a file holds, what is said has no control code and no turn of direction', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (name) => {
        expect(say(saying('text', { text: name }))).not.toMatch(/[\p{Cc}\u202a-\u202e\u2066-\u2069\u2028\u2029]/u)
      }),
      { seed: 25, numRuns: 500 },
    )
  })
})
