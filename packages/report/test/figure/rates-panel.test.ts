import { describe, expect, it } from 'vitest'
import { inks } from '../../src/figure/ink.ts'
import { columnsOf, hairStretches } from '../../src/figure/rates-columns.ts'
import { groupRates } from '../../src/figure/rates-data.ts'
import { placeMarks } from '../../src/figure/rates-marks.ts'
import { type LaidPanel, layPanel } from '../../src/figure/rates-panel.ts'
import { point, rates, say } from './samples.ts'

const fields = ['Averlusk', 'Brunnoxel', 'Cadrimoth', 'Dorvenna', 'Ellimoor', 'Fennorax'].map((name) => `${name} Orchard`)

/** A panel of one kind whose fields are named, at each level the same rates. */
function panelOf(levels: readonly string[], values: readonly number[], isPaired: boolean): LaidPanel {
  const points = fields.flatMap((field, k) =>
    (isPaired ? levels : [levels[k % levels.length] ?? '']).map((level) => point(field, level, values[k % values.length] ?? 0)),
  )
  const groups = groupRates(rates(points), { say, ink: inks.light, width: 600 })
  return layPanel({
    kind: 'bumble bee',
    points: groups.kinds[0]?.points ?? [],
    levels,
    unit: 'per hour',
    names: 132,
    plotHeight: 200,
    language: 'en',
  })
}

const panels: readonly (readonly [string, LaidPanel])[] = [
  ['fields at one of two levels', panelOf(['a', 'b'], [77, 77, 78, 79], false)],
  ['fields at both levels', panelOf(['before', 'after'], [77, 77, 77, 36], true)],
  ['fields at one of three levels', panelOf(['64', '65', '67'], [5], false)],
  ['one level', panelOf([''], [10, 10.1, 10.2], true)],
]

describe('marks of a panel', () => {
  it.each(panels)('%s: none hides another, and twice they stand alike', (_, { panel, marks }) => {
    for (const level of panel.levels.keys()) {
      const own = marks.marks.filter((mark) => mark.point.level === level)
      const nearest = own.flatMap((a, k) => own.slice(k + 1).map((b) => Math.hypot(a.aside - b.aside, a.y - b.y)))
      // A diamond of radius 4 is 9.6 wide.
      for (const distance of nearest) expect(distance).toBeGreaterThan(9.6)
    }
    expect(placeMarks(panel).marks).toEqual(marks.marks)
  })
})

describe('hair lines of a panel', () => {
  it.each(panels)('%s: none reaches a name', (_, { panel, marks, namings, least }) => {
    for (const width of [least, least + 300]) {
      const columns = columnsOf(panel, marks, namings, width)
      for (const [from, to] of hairStretches(marks, namings, columns, width)) {
        expect(from).toBeLessThanOrEqual(to)
        for (const { level, side, near, far } of namings) {
          const column = columns[level] ?? 0
          const [left, right] = side === 'left' ? [column - far, column - near] : [column + near, column + far]
          expect(to < left - 10 || from > right + 10, `${from} to ${to} over ${left} to ${right}`).toBe(true)
        }
      }
    }
  })

  it('run through where no field is named', () => {
    const { panel, marks } = panelOf(['a', 'b'], [4, 9], true)
    expect(hairStretches(marks, [], columnsOf(panel, marks, [], 500), 500)).toEqual([[42, 500]])
  })
})
