import { isoDate } from '@thrum/model'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readClockTime, readOffset } from '../../src/cell/clock-time.ts'
import { readCount } from '../../src/cell/count.ts'
import { type DateOrder, readDate } from '../../src/cell/date.ts'
import { dateEvidence, dateHabit } from '../../src/cell/date-order.ts'
import { noHabit, readMeasure } from '../../src/cell/decimal.ts'
import { readMinutes } from '../../src/cell/minutes.ts'

const date = (written: string, others: readonly string[] = [], year: number | null = null, asked: DateOrder | null = null) => {
  const reading = readDate(written, dateHabit(dateEvidence([written, ...others], year), asked, year))
  return 'value' in reading
    ? isoDate(reading.value)
    : reading.kind === 'waiting'
      ? `${reading.because} ${reading.proposed ?? ''}`.trim()
      : reading.kind
}

describe('readDate', () => {
  it.each([
    ['2024-06-03', '2024-06-03'],
    ['2024/6/3', '2024-06-03'],
    ['2013,06,02', '2013-06-02'],
    ['20130602', '2013-06-02'],
    ['03.06.2024', '2024-06-03'],
    ['3.6.24', '2024-06-03'],
    ['4/6-24', '2024-06-04'],
    ['13/06/2025', '2025-06-13'],
    ['06/14/2024', '2024-06-14'],
    ['6 juni 2024', '2024-06-06'],
    ['6. Juni 2024', '2024-06-06'],
    ['6 de junio de 2024', '2024-06-06'],
    ['1er juillet 2024', '2024-07-01'],
    ['12 juin 2024', '2024-06-12'],
    ['June 6, 2024', '2024-06-06'],
    ['Mo 03.06.2024', '2024-06-03'],
    ['5-Mai-99', '1999-05-05'],
    ['2024-06-03T10:15:00Z', '2024-06-03'],
    ['06/06/2024', '2024-06-06'],
  ])('"%s" is %s', (written, iso) => {
    expect(date(written)).toBe(iso)
  })

  it.each([
    ['27-May', null, 'exchange/cell/no-year'],
    ['27-May', 2013, '2013-05-27'],
    ['02-Jun', 2013, '2013-06-02'],
    ['29 Feb', 2023, 'exchange/cell/no-such-date'],
    ['4 June', 2025, '2025-06-04'],
  ])('"%s" with the year %s is %s', (written, year, is) => {
    expect(date(written, [], year)).toBe(is)
  })

  it.each([
    ['31/02/2024', 'exchange/cell/no-such-date'],
    ['2024-13-01', 'exchange/cell/no-such-date'],
    ['soon', 'exchange/cell/not-a-date'],
    ['45811', 'exchange/cell/serial-date 2025-06-03'],
    ['', 'not-looked-for'],
  ])('"%s" is %s', (written, is) => {
    expect(date(written)).toBe(is)
  })

  it('an open date follows what other rows prove', () => {
    expect(date('05/06/2024', ['13/06/2024'])).toBe('2024-06-05')
    expect(date('05/06/2024', ['06/13/2024'])).toBe('2024-05-06')
  })

  it('where rows prove both orders, or none, it waits with the nearer day proposed', () => {
    expect(date('05/06/24', ['13.06.2024', '06/14/2024'])).toBe('exchange/cell/date-order 2024-06-05')
    expect(date('05/06/24', ['2024-05-08'])).toBe('exchange/cell/date-order 2024-05-06')
    expect(date('05/06/24', ['13.06.2024', '06/14/2024'], null, 'day first')).toBe('2024-06-05')
  })

  it('identity: every day is read back from three ways of writing it', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 40_000 }), (day) => {
        const iso = isoDate(day)
        const [y, m, d] = iso.split('-')
        expect(date(iso)).toBe(iso)
        expect(date(`${d}.${m}.${y}`)).toBe(iso)
        expect(date(`${d}/${m}/${y}`, [], null, 'day first')).toBe(iso)
        expect(date(`${m}/${d}/${y}`, [], null, 'month first')).toBe(iso)
      }),
    )
  })
})

describe('readClockTime', () => {
  it.each([
    ['10:15', 615],
    ['10.15', 615],
    ['9h30', 570],
    ['9.50', 590],
    ['14:05:00', 845],
    ['2:15 pm', 855],
    ['12 am', 0],
    ['12:10 p.m.', 730],
    ['0930', 570],
    ['10:15 Uhr', 615],
    ['kl. 10.15', 615],
    ['2024-06-03T10:15:00', 615],
    ['2:15:30 pm', 855.5],
    ['00:00', 0],
  ])('"%s" is minute %i', (written, minute) => {
    expect(readClockTime(written)).toMatchObject({ kind: 'number', value: minute })
  })

  it.each([
    ['24:30', 'no-such-time'],
    ['10:75', 'no-such-time'],
    ['13 pm', 'no-such-time'],
    ['10.5', 'hour-with-tenths'],
    ['noon', 'not-a-time'],
    ['2561', 'no-such-time'],
  ])('"%s" waits: %s', (written, because) => {
    expect(readClockTime(written)).toMatchObject({ kind: 'waiting', because: `exchange/cell/${because}` })
  })
})

describe('what is left out of a cell', () => {
  it.each([
    ['10:15Z', 'zone-left-out'],
    ['10:15+02:00', 'zone-left-out'],
    ['2031-05-04 10:15', 'date-left-out'],
    ['10:15:30.5', 'read-as'],
  ])('of the time "%s" is shown', (written, because) => {
    expect(readClockTime(written)).toMatchObject({ kind: 'number', because: `exchange/cell/${because}` })
  })

  it.each([
    ['2031-05-04T23:30-08:00', 'exchange/cell/time-left-out'],
    ['4.5.2031 10:15', 'exchange/cell/time-left-out'],
    ['2031-05-04T00:00:00', undefined],
    ['2031-05-04', undefined],
  ])('of the date "%s" is shown, midnight apart', (written, because) => {
    const reading = readDate(written, dateHabit(dateEvidence([written], null), 'day first', null))
    expect(reading).toMatchObject({ kind: 'number' })
    expect('because' in reading ? reading.because : undefined).toBe(because)
  })
})

describe('readOffset', () => {
  it.each([
    ['+02:00', 120],
    ['UTC+1', 60],
    ['-3', -180],
    ['Z', 0],
    ['+0530', 330],
  ])('"%s" is %i minutes', (written, minutes) => {
    expect(readOffset(written)).toMatchObject({ kind: 'number', value: minutes })
  })
  it('no clock is 20 hours ahead', () => {
    expect(readOffset('+20').kind).toBe('waiting')
  })
})

describe('readMinutes', () => {
  it.each([
    ['10', 10],
    ['40.9833333333333', 40.9833333333333],
    ['5+5', 10],
    ['2,5 + 7,5', 10],
    ['10 min', 10],
    ["15'", 15],
    ['00:10', 10],
    ['07:32:00', 452],
    ['1 h 30', 90],
    ['1,5 h', 90],
    ['1h30min', 90],
  ])('"%s" is %d minutes', (written, minutes) => {
    expect(readMinutes(written, noHabit)).toMatchObject({ kind: 'number', value: minutes })
  })

  it.each([
    ['ten', 'number-word', '10'],
    ['zehn', 'number-word', '10'],
    ['10:00', 'hours-or-minutes', '10'],
    ['constructor', 'not-a-number', undefined],
    ['-5', 'below-zero', undefined],
  ])('"%s" waits: %s', (written, because, proposed) => {
    expect(readMinutes(written, noHabit)).toEqual({
      kind: 'waiting',
      written,
      because: `exchange/cell/${because}`,
      ...(proposed && { proposed }),
    })
  })

  it('a unit of the mapping settles hours and minutes', () => {
    expect(readMinutes('10:00', noHabit, 'min:s')).toMatchObject({ value: 10 })
    expect(readMinutes('10:00', noHabit, 'h:min')).toMatchObject({ value: 600 })
    expect(readMinutes('2', noHabit, 'h')).toMatchObject({ value: 120 })
    expect(readMinutes('90', noHabit, 's')).toMatchObject({ value: 1.5 })
    expect(readMinutes('ca 1', noHabit, 'h')).toMatchObject({ kind: 'approximate', value: 60 })
    expect(readMinutes('~ 600', noHabit, 's')).toMatchObject({ kind: 'approximate', value: 10 })
    expect(readMinutes('ca 10 min', noHabit, 'h')).toMatchObject({ kind: 'approximate', value: 10 })
  })
})

describe('a text too long for any value', () => {
  const habit = dateHabit(dateEvidence([], null), null, null)
  const readers = {
    count: (text: string) => readCount(text, noHabit),
    date: (text: string) => readDate(text, habit),
    time: readClockTime,
    offset: readOffset,
    minutes: (text: string) => readMinutes(text, noHabit),
    measure: (text: string) => readMeasure(text, noHabit),
  }
  it.each(Object.entries(readers))('waits as a %s, before anybody loses patience', (_, read) => {
    for (const part of [' ', '9', '9 ', '9.', '9:', '+9', 'ca ', '-'])
      expect(read(`1${part.repeat(1_000_000)}x`)).toMatchObject({ kind: 'waiting', because: 'exchange/cell/too-long' })
  })
})
