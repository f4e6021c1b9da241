import { readTypedCell } from '@thrum/exchange'
import { dayNumber } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'

const typed = (column: string, written: string, table: 'count' | 'tally' = 'count') =>
  readTypedCell(table, column, !['field', 'observer', 'unit', 'note'].includes(column), written)

function refused(read: () => unknown): string {
  try {
    read()
  } catch (cause) {
    if (cause instanceof ThrumError) return cause.code
    throw cause
  }
  return 'taken'
}

describe('a value typed for one cell', () => {
  it.each([
    ['number', '12', { to: 12, mark: null }],
    ['number', 'ca. 12', { to: 12, mark: 'approximate' }],
    ['number', '>50', { to: 51, mark: 'atLeast' }],
    ['number', 'missing', { to: null, mark: 'lost' }],
    ['number', 'not-looked-for', { to: null, mark: 'notLookedFor' }],
    ['number', 'none', { to: 0, mark: null }],
  ] as const)('of a tally: %s %s', (column, written, expected) => {
    expect(typed(column, written, 'tally')).toEqual(expected)
  })

  it.each([
    ['minutes', '12.5', 12.5],
    ['minutes', '10 min', 10],
    ['date', '2031-05-04', dayNumber('2031-05-04')],
    ['start', '09:30', 570],
    ['temperature', '-3,5', -3.5],
    ['stage', '65', 65],
    ['field', '  Weir  North ', 'Weir North'],
    ['note', 'two  blanks', 'two  blanks'],
    ['observer', 'missing', null],
  ] as const)('of a count: %s %s', (column, written, to) => {
    expect(typed(column, written).to).toBe(to)
  })

  it.each([
    ['number', '3-4', 'exchange/typed/refused'],
    ['number', '-', 'exchange/typed/refused'],
    ['number', '4.5', 'exchange/typed/refused'],
    ['number', '-1', 'exchange/typed/refused'],
    ['number', '', 'exchange/typed/refused'],
  ] as const)('of a tally, nothing is left open: %s %s', (column, written, code) => {
    expect(refused(() => typed(column, written, 'tally'))).toBe(code)
  })

  it.each([
    ['minutes', '0', 'exchange/typed/not-positive'],
    ['minutes', '1441', 'exchange/typed/out-of-range'],
    ['stage', '100', 'exchange/typed/out-of-range'],
    ['wind', '13', 'exchange/typed/out-of-range'],
    ['date', '04/05', 'exchange/typed/refused'],
    ['date', '4/5/2031', 'exchange/typed/refused'],
    ['date', '2031-02-30', 'exchange/typed/refused'],
    ['start', '25:00', 'exchange/typed/refused'],
    ['temperature', '64 °F', 'exchange/typed/refused'],
    ['unit', 'bees', 'exchange/typed/not-one-of'],
  ] as const)('of a count: %s %s', (column, written, code) => {
    expect(refused(() => typed(column, written))).toBe(code)
  })
})
