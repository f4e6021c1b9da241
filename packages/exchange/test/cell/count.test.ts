import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readCount } from '../../src/cell/count.ts'
import { decimalHabit, noHabit } from '../../src/cell/decimal.ts'

describe('readCount', () => {
  it.each([
    ['0', 'number', 0],
    ['12', 'number', 12],
    [' 7 ', 'number', 7],
    ['007', 'number', 7],
    ['12.0', 'number', 12],
    ['nil', 'number', 0],
    ['keine', 'number', 0],
    ['1e3', 'number', 1000],
    ['1 234', 'number', 1234],
    ['ca. 12', 'approximate', 12],
    ['~350', 'approximate', 350],
    ['etwa 5', 'approximate', 5],
    ['5*', 'approximate', 5],
    ['7 (2 workers 5 drones)', 'approximate', 7],
    ['>50', 'at-least', 51],
    ['>=50', 'at-least', 50],
    ['50+', 'at-least', 50],
    ['over 20', 'at-least', 21],
    ['<3', 'at-most', 2],
    ['≤ 3', 'at-most', 3],
    ['max 4', 'at-most', 4],
  ])('"%s" is %s %i', (written, kind, value) => {
    expect(readCount(written, noHabit)).toMatchObject({ kind, value, written })
  })

  it.each(['', '  ', 'NA', 'n/a', '#N/A', 'nan', 'k.A.'])('"%s" is not looked for', (written) => {
    expect(readCount(written, noHabit).kind).toBe('not-looked-for')
  })

  it.each(['?', '??', 'lost', 'unleserlich?'])('"%s" is never a number', (written) => {
    expect(['lost', 'waiting']).toContain(readCount(written, noHabit).kind)
  })

  it.each([
    ['-', 'dash'],
    ['–', 'dash'],
    ['3-4', 'range'],
    ['3 or 4', 'range'],
    ['tick', 'presence-only'],
    ['x', 'presence-only'],
    ['lots', 'many-word'],
    ['viele', 'many-word'],
    ['-1', 'below-zero'],
    ['1.5', 'not-whole'],
    ['<0', 'below-zero'],
    ['1000001', 'too-many'],
    ['=A1+A2', 'formula'],
    ['#REF!', 'spreadsheet-error'],
    ['bee', 'not-a-number'],
    ['١٢', 'not-a-number'],
    ['1e999', 'not-a-number'],
  ])('"%s" waits: %s', (written, because) => {
    expect(readCount(written, noHabit)).toEqual(expect.objectContaining({ kind: 'waiting', because: `exchange/cell/${because}` }))
  })

  it('1.150 follows the habit of its column, and waits without one', () => {
    expect(readCount('1.150', decimalHabit(['12,5']))).toMatchObject({ kind: 'number', value: 1150 })
    expect(readCount('1.150', decimalHabit(['12.5']))).toMatchObject({ kind: 'waiting', because: 'exchange/cell/not-whole' })
    expect(readCount('1.150', noHabit)).toMatchObject({ kind: 'waiting', proposed: '1150' })
  })

  it('identity: a whole number printed is read back as itself', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (value) => {
        expect(readCount(String(value), noHabit)).toEqual({ kind: 'number', written: String(value), value })
      }),
    )
  })

  it('identity: whatever is written, a number is whole, not negative, and says why where it is not its own digits', () => {
    const sign = fc.constantFrom(...'0123456789.,-+<>~*()?/ eE\u00a0nixa'.split(''))
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 8 }), (signs) => {
        const written = signs.join('')
        const reading = readCount(written, noHabit)
        expect(reading.written).toBe(written)
        if (!('value' in reading)) return
        expect(Number.isInteger(reading.value) && reading.value >= 0).toBe(true)
        if (String(reading.value) !== written.trim()) expect(reading.because).toBeDefined()
      }),
      { numRuns: 2000, seed: 5 },
    )
  })
})
