import { describe, expect, it } from 'vitest'
import { windowMark } from '../../src/index.ts'
import { type CountRow, projectOfCounts } from '../project-of-counts.ts'

const fair = { field: 'a', date: '2031-06-21', start: '13:00', minutes: 10, temperature: 20, wind: 2, rain: 'none', cloud: 2 }

function mark(change: Partial<CountRow>, kind: Parameters<typeof windowMark>[2] = 'honey-bee', placed = false) {
  const fields = placed ? [{ field: 'a', latitude: 50, longitude: 15 }] : []
  return windowMark(projectOfCounts({ counts: [{ ...fair, ...change }], fields }), 0, kind)
}

describe('could these insects fly (methods 1.3)', () => {
  it.each([
    [{}, 'in'],
    [{ temperature: 14, cloud: 2 }, 'in'],
    [{ temperature: 14, cloud: 6 }, 'marginal'],
    [{ temperature: 12.9 }, 'out'],
    [{ temperature: 35.1 }, 'marginal'],
    [{ wind: 5 }, 'marginal'],
    [{ wind: 6 }, 'out'],
    [{ rain: 'drizzle' }, 'marginal'],
    [{ rain: 'Rain' }, 'out'],
    [{ rain: 'no' }, 'in'],
    [{ temperature: 16, cloud: 7 }, 'marginal'],
    [{ temperature: undefined, wind: undefined, rain: undefined, cloud: undefined }, 'unknown'],
  ] as const)('%j: %s', (change, expected) => {
    expect(mark(change)).toBe(expected)
  })

  it('bumble bees fly when it is cooler', () => {
    expect(mark({ temperature: 12 }, 'bumble-bee')).toBe('marginal')
    expect(mark({ temperature: 10.9 }, 'bumble-bee')).toBe('out')
    expect(mark({ temperature: 12 }, 'hover-fly')).toBe('out')
  })

  it('by the sun where place and offset are known: 13:00 of summer time at 15 degrees east is noon', () => {
    expect(mark({ start: '17:55', offset: 120 }, 'honey-bee', true)).toBe('marginal')
    expect(mark({ start: '19:00', offset: 120 }, 'honey-bee', true)).toBe('out')
    expect(mark({ start: '10:30', offset: 120 }, 'honey-bee', true)).toBe('marginal')
  })

  it('a clock that may be off the sun leaves nothing out within two hours', () => {
    expect(mark({ start: '18:30' })).toBe('marginal')
    expect(mark({ start: '19:25' })).toBe('marginal')
    expect(mark({ start: '20:00' })).toBe('out')
    // The weather still can.
    expect(mark({ start: '18:30', rain: 'rain' })).toBe('out')
  })

  it('hours are those of the crop', () => {
    const at = { start: '7:00', offset: 0 }
    const counts = [{ ...fair, ...at, crop: 'squash' }]
    const snapshot = projectOfCounts({ counts, fields: [{ field: 'a', latitude: 50, longitude: 0 }] })
    expect(windowMark(snapshot, 0, 'solitary-bee')).toBe('in')
    expect(mark({ ...at, offset: 60 }, 'solitary-bee', true)).toBe('out')
  })
})
