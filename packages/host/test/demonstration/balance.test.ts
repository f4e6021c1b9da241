import { describe, expect, it } from 'vitest'
import { countRows, howMany, projectOf } from './made-project.ts'

// Identity: what the plan promises of its own balance, counted from the folded rows.
const rows = countRows(projectOf('balance'))
const fields = [...new Set(rows.map(({ field }) => field))]
const isMove = ({ crop, season, date }: (typeof rows)[number]): boolean =>
  crop === 'sunflower' && season === '2032' && date >= Date.parse('2032-07-23') / 86_400_000
const kept = rows.filter((row) => !isMove(row))

const halves: readonly ((row: (typeof rows)[number]) => boolean)[] = [
  ({ position }) => position === 'edge',
  ({ position }) => position === 'centre',
  ({ half }) => half === 'morning',
  ({ half }) => half === 'afternoon',
]

describe('the design of the valley', () => {
  it('watches every field on five days of two seasons, one plot before noon and one after', () => {
    for (const field of fields) {
      const own = rows.filter((row) => row.field === field)
      expect(own).toHaveLength(20)
      for (const visit of new Set(own.map((row) => row.visit))) {
        const both = own.filter((row) => row.visit === visit)
        expect(both.map(({ half }) => half).sort()).toEqual(['afternoon', 'morning'])
        expect(both.map(({ position }) => position).sort()).toEqual(['centre', 'edge'])
        expect(new Set(both.map(({ observer }) => observer)).size).toBe(1)
      }
    }
  })

  it('shares days and stages within a crop', () => {
    for (const crop of ['sweet cherry', 'sunflower']) {
      const days = fields
        .map((field) => rows.filter((row) => row.field === field && row.crop === crop))
        .filter((own) => own.length > 0)
        .map((own) => [...new Set(own.map(({ date, stage }) => `${date}/${stage}`))].sort().join(' '))
      expect(days).toHaveLength(4)
      expect(new Set(days).size).toBe(1)
    }
  })

  it('begins with the edge on days 1, 3 and 5 of season 1, and 2 and 4 of season 2', () => {
    for (const field of fields) {
      for (const [season, expected] of [
        ['2031', [1, 3, 5]],
        ['2032', [2, 4]],
      ] as const) {
        const own = rows.filter((row) => row.field === field && row.season === season)
        const dates = [...new Set(own.map(({ date }) => date))].sort((a, b) => a - b)
        const edgeFirst = own.filter(({ position, half }) => position === 'edge' && half === 'morning').map(({ date }) => date)
        expect(edgeFirst.map((date) => dates.indexOf(date) + 1).sort()).toEqual([...expected])
      }
    }
  })

  it('shows every field equally to each observer, with and without the days of the move', () => {
    for (const counted of [rows, kept]) {
      for (const field of fields) {
        const own = counted.filter((row) => row.field === field)
        for (const where of [() => true, ...halves]) {
          const part = own.filter(where)
          expect(howMany(part, ({ observer }) => observer === 'observer 1') * 2).toBe(part.length)
        }
      }
    }
  })

  it('gives each plot as many mornings as afternoons in each field', () => {
    for (const field of fields) {
      const own = rows.filter((row) => row.field === field)
      expect(howMany(own, ({ position, half }) => position === 'edge' && half === 'morning')).toBe(5)
      expect(howMany(own, ({ position, half }) => position === 'edge' && half === 'afternoon')).toBe(5)
    }
  })

  it('keeps hours and warmth of the fields of a crop together', () => {
    for (const counted of [rows, kept]) {
      for (const crop of ['sweet cherry', 'sunflower']) {
        const means = (value: (row: (typeof rows)[number]) => number) =>
          fields
            .map((field) => counted.filter((row) => row.field === field && row.crop === crop))
            .filter((own) => own.length > 0)
            .map((own) => own.reduce((sum, row) => sum + value(row), 0) / own.length)
        const range = (values: readonly number[]) => Math.max(...values) - Math.min(...values)
        // Below these a nuisance is too even to mislead (methods 2.11): 0.5 h, 1.5 degrees.
        expect(range(means(({ start }) => start / 60))).toBeLessThan(0.5)
        expect(range(means(({ temperature }) => temperature))).toBeLessThan(1.5)
      }
    }
  })

  it('has two fields with a strip in each crop, by lot', () => {
    const stripsOf = (seed: string) => countRows(projectOf(seed)).filter(({ strip }) => strip)
    for (const crop of ['sweet cherry', 'sunflower']) {
      const own = stripsOf('balance').filter((row) => row.crop === crop)
      expect(new Set(own.map(({ field }) => field)).size).toBe(2)
    }
    const drawn = ['a', 'b', 'c', 'd', 'e', 'f'].map((seed) => [...new Set(stripsOf(seed).map(({ field }) => field))].join())
    expect(new Set(drawn).size).toBeGreaterThan(1)
  })

  it('leaves full flowering only where the hives were moved', () => {
    expect(rows.filter(isMove).every(({ stage }) => stage === 67)).toBe(true)
    expect(kept.every(({ stage }) => stage <= 65)).toBe(true)
  })
})
