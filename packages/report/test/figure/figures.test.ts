import type { Figure, IntervalsFigure } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { drawFigure } from '../../src/figure/draw-figure.ts'
import { outline, outside, overlaps, piecesOf, textsOf } from './drawing.ts'
import { pairedRates, plain, point, rates, ratios, row, say, strips, told, widths } from './samples.ts'

const draw = (figure: Figure, width = 720): ReturnType<typeof drawFigure> => drawFigure(figure, { say, theme: 'light', width })
const linesOf = (figure: Figure, width = 720): readonly string[] => textsOf(draw(figure, width).svg).map(({ text }) => text)

const many = Array.from({ length: 60 }, (_, k) => k)
const longName = 'the orchard behind the old mill, as far as the second gate and a little beyond it'
const cases: readonly (readonly [string, Figure])[] = [
  ['no rows', ratios([])],
  ['no points', rates([])],
  ['no strips', strips([])],
  ['strips without a value', strips([{ level: 'before', values: [] }])],
  ['one row', plain([row('honey bee', 97.4, 77.8, 122)])],
  ['one row of nothing', plain([row('honey bee', 0, 0, 0)])],
  ['one share of everything', plain([row('honey bee', 1, 0.9, 1)], 'share')],
  ['one point of nothing', rates([point('Averlusk Orchard', '', 0)])],
  ['one value', strips([{ level: 'before', values: [65] }], 'stage')],
  ['sixty rows', ratios(many.map((k) => row(`kind ${k}: strip / no strip`, 0.2 * (k + 1), 0.1 * (k + 1), 0.4 * (k + 1))))],
  ['sixty fields', rates(many.flatMap((k) => [point(`f ${k}`, 'a', k * k), point(`f ${k}`, 'b', 2 * k * k)]))],
  ['sixty equal rates', rates(many.map((k) => point(`f ${k}`, k % 2 === 0 ? 'a' : 'b', 7)))],
  ['sixty levels', rates(many.map((k) => point(`f ${k}`, `level ${k}`, k + 1)))],
  ['sixty strips', strips(many.map((k) => ({ level: `level ${k}`, values: [22_838 + k, 22_850 + k] })))],
  ['no limits', ratios([row('a', 3, 1.2, null), row('b', 0.2, null, 0.9), row('c', null, 2, null), row('d', null, null, null)])],
  ['identical values', ratios([row('a', 1, 1, 1), row('b', 1, 1, 1)])],
  [
    'infinite values',
    ratios([row('a', Number.POSITIVE_INFINITY, 0, Number.POSITIVE_INFINITY), row('b', Number.NaN, 1e-300, 1e300)]),
  ],
  ['infinite rates', rates([point('a', '', Number.POSITIVE_INFINITY), point('b', '', Number.NaN), point('c', '', 5)])],
  ['infinite stages', strips([{ level: 'a', values: [Number.NaN, Number.NEGATIVE_INFINITY, 65, 1e300] }])],
  ['negative values', plain([row('a', -3, -5, -1), row('b', 2, 1, 4)])],
  ['zeros among wide rates', rates(many.map((k) => point(`f ${k}`, '', k < 20 ? 0 : k ** 3)))],
  ['long names', ratios([row(longName, 2, 1, 4), row(`${longName}, 90 %`, 2, 1, 4, { role: 'beside', level: 0.9 })])],
  [
    'long fields and levels',
    rates(
      ['a', 'b', 'c'].flatMap((f) => [point(`${f} ${longName}`, longName, 4), point(`${f} ${longName}`, `not ${longName}`, 9)]),
    ),
  ],
  [
    'long strips',
    strips([
      { level: longName, values: [22_838, 22_845] },
      { level: `not ${longName}`, values: [22_849] },
    ]),
  ],
  [
    'four levels',
    rates(
      many
        .slice(0, 6)
        .flatMap((k) =>
          ['before', 'after'].map((when) => point(`f ${k} ${longName}`, `${k % 2 === 0 ? 'strip' : 'no strip'}, ${when}`, 5 + k)),
        ),
    ),
  ],
]

describe('every figure, at every width', () => {
  it.each(cases)('%s: no text on another, nothing beyond the page', (_, figure) => {
    for (const width of widths) {
      const { svg, height } = draw(figure, width)
      expect(overlaps(svg), `overlaps at ${width}`).toEqual([])
      expect(outside(svg, width, height), `outside at ${width}`).toEqual([])
      expect(svg).not.toMatch(/NaN|Infinity|undefined/)
    }
  })

  it.each(cases)('%s: the same bytes twice, in both themes another', (_, figure) => {
    expect(draw(figure).svg).toBe(draw(figure).svg)
    expect(drawFigure(figure, { say, theme: 'dark', width: 720 }).svg).not.toBe(draw(figure).svg)
  })

  it.each([Number.NaN, -5, 0, Number.POSITIVE_INFINITY])('a width of %d is taken as the narrowest', (width) => {
    expect(draw(pairedRates, width).width).toBe(280)
  })
})

describe('intervals', () => {
  const figure = ratios([
    row('bumble bee: strip / no strip', 3.026, 2.42, 3.784),
    row('bumble bee: strip / no strip, 90 %', 3.026, 2.54, 3.606, { role: 'beside', level: 0.9 }),
  ])

  // Golden: places of the columns, of the band and its words, of ticks and of the two rows.
  it('golden: two rows over a band', () => {
    expect(outline(draw(figure).svg)).toMatchInlineSnapshot(`
      "rect 0 0
      text 28 41 Ratios
      text 692 67 times (95 % interval unless said)
      rect 226 97
      path 226 159
      text 336 90 too small to act on
      path 336 97
      text 328 192 ← fewer
      text 344 192 more →
      text 28 120 bumble bee: strip / no strip
      path 475 115
      path 475 111
      path 545 111
      circle 510 115
      text 610 120 3.03
      text 692 120 2.42 to 3.78
      text 40 147 90 %
      path 483 142
      path 483 139
      path 538 139
      circle 510 142
      text 610 147 3.03
      text 692 147 2.54 to 3.61
      path 218 159
      path 227 159
      text 226 175 0.5
      path 336 159
      text 336 175 1
      path 445 159
      text 445 175 2
      path 554 159
      text 554 175 4
      text 28 217 Mark: estimate; line: its interval. Full marks: what was asked; open marks: beside it, for comparison. Shaded:
      text 28 232 ratios from 0.5 to 2, too small to act on. On the axis twice as many and half as many lie equally far from 1."
    `)
  })

  // Golden: what a figure comes to stands first under it; a row without an estimate keeps its place and says so.
  it('golden: analyses, one of them without an interval', () => {
    const analyses: IntervalsFigure = {
      ...ratios([
        row('bee: strip / no strip', 3.026, 2.42, 3.784),
        row('bee: strip / no strip, count model: shown', 2.9, 2.3, 3.6, { role: 'beside' }),
        row('bee: strip / no strip, permutation of fields: p = 0.10', null, null, null, { role: 'beside' }),
      ]),
      told: [told('All analyses give shown.')],
    }
    expect(outline(draw(analyses).svg)).toMatchInlineSnapshot(`
      "rect 0 0
      text 28 41 Ratios
      text 692 67 times (95 % interval)
      rect 245 97
      path 245 184
      text 348 90 too small to act on
      path 348 97
      text 340 217 ← fewer
      text 356 217 more →
      text 28 120 bee: strip / no strip
      path 479 115
      path 479 111
      path 546 111
      circle 513 115
      text 610 120 3.03
      text 692 120 2.42 to 3.78
      text 40 147 count model: shown
      path 472 142
      path 472 139
      path 539 139
      circle 506 142
      text 610 147 2.90
      text 692 147 2.30 to 3.60
      text 40 172 permutation of fields: p = 0.10
      text 610 172 –
      path 237 184
      path 245 184
      text 245 200 0.5
      path 348 184
      text 348 200 1
      path 451 184
      text 451 200 2
      path 554 184
      text 554 200 4
      text 28 242 All analyses give shown. Mark: estimate; line: its interval. Full marks: what was asked; open marks: beside it, for comparison.
      text 28 257 Shaded: ratios from 0.5 to 2, too small to act on. On the axis twice as many and half as many lie equally far from 1."
    `)
    const { table, alt } = draw(analyses)
    expect(table.rows[2]).toEqual(['bee: strip / no strip, permutation of fields: p = 0.10', '–', '–', '–', '–', '8', 'beside'])
    expect(alt).toContain('permutation of fields: p = 0.10. All analyses give shown.')
    expect(alt).not.toContain('no limit')
  })

  it('ends in an arrow where a limit is missing or beyond the axis, and says so', () => {
    const open = ratios([row('a', 3, 1.2, null), row('b', 4, 0.001, 5)])
    expect(linesOf(open).join(' ')).toContain('Arrow: the line goes on.')
    expect(linesOf(open)).toContain('1.20 or more')
    expect(linesOf(figure).join(' ')).not.toContain('Arrow')
  })

  it('speaks of intervals only where one is drawn', () => {
    const bare = linesOf(ratios([row('a', 3, null, null), row('b', 4, null, null)]))
    expect(bare).toContain('times')
    expect(bare.join(' ')).toContain('Mark: estimate.')
    expect(bare.join(' ')).not.toContain('interval')
  })

  it('draws no mark where the estimate lies beyond the axis', () => {
    const circles = (own: Figure): number => piecesOf(draw(own).svg).filter(({ name }) => name === 'circle').length
    expect(circles(ratios([row('a', 0, 0, 1.4), row('b', 1.2, 1, 1.4)]))).toBe(1)
  })

  it('tells a row beside by what it adds, and keeps its whole name in the table', () => {
    expect(linesOf(figure)).toContain('90 %')
    expect(draw(figure).table.rows[1]?.[0]).toBe('bumble bee: strip / no strip, 90 %')
  })

  it('puts neighbours with one ending under a heading', () => {
    const grouped = plain([
      row('honey bee, Mill, north', 4, 3, 5),
      row('hover fly, Mill, north', 1, 0, 2),
      row('honey bee, Weir', 4, 3, 5),
      row('hover fly, Weir', 1, 0, 2),
    ])
    expect(linesOf(grouped)).toEqual(expect.arrayContaining(['Mill, north', 'Weir', 'honey bee', 'hover fly']))
  })

  it('has a logarithmic axis on which reciprocals lie equally far from 1', () => {
    const places = new Map(textsOf(draw(figure).svg).map(({ text, x }) => [text, x]))
    const [half = 0, one = 0, two = 0] = ['0.5', '1', '2'].map((label) => places.get(label) ?? 0)
    // Places are written with two decimals.
    expect(Math.abs(two - one - (one - half))).toBeLessThan(0.03)
  })
})

describe('rates by level', () => {
  // Golden: one panel, the columns of two levels, names beside the last marks, lines between pairs.
  it('golden: four fields at two levels', () => {
    expect(outline(draw(pairedRates).svg)).toMatchInlineSnapshot(`
      "rect 0 0
      text 28 41 Field by field
      text 28 68 bumble bee
      text 28 85 per hour
      path 70 303
      path 66 303
      text 62 307 0
      path 70 274
      path 66 274
      text 62 278 5
      path 70 246
      path 66 246
      text 62 250 10
      path 70 217
      path 66 217
      text 62 221 15
      path 70 189
      path 66 189
      text 62 193 20
      path 70 160
      path 66 160
      text 62 164 25
      path 70 132
      path 66 132
      text 62 136 30
      path 70 103
      path 66 103
      text 62 107 35
      path 70 103
      path 192 269
      path 192 257
      path 192 246
      path 192 234
      path 468 200
      text 487 204 Averlusk Orchard
      path 468 172
      text 487 176 Brunnoxel Orchard
      path 468 143
      text 487 147 Cadrimoth Orchard
      path 468 114
      text 487 118 Dorvenna Orchard
      circle 192 269
      circle 192 257
      circle 192 246
      circle 192 234
      path 468 195
      path 468 167
      path 468 138
      path 468 110
      circle 167 323
      text 192 327 centre
      path 447 318
      text 468 327 edge
      text 28 352 One mark for each field at each level; a line joins the marks of one field."
    `)
  })

  it('names up to eight fields, and no more', () => {
    const fields = (count: number): Figure =>
      rates(many.slice(0, count).flatMap((k) => [point(`field ${k}`, 'a', k + 3), point(`field ${k}`, 'b', k + 9)]))
    expect(linesOf(fields(8)).filter((line) => line.startsWith('field '))).toHaveLength(8)
    expect(linesOf(fields(9)).filter((line) => line.startsWith('field '))).toHaveLength(0)
  })

  it('says which scale it has: linear up to 30-fold, beyond by root where zeros are, else by logarithm', () => {
    const lanes = (...values: readonly number[]): string =>
      linesOf(rates([...values, ...Array(9).fill(values[0])].map((rate, k) => point(`f ${k}`, '', rate)))).join(' ')
    expect(lanes(1, 30)).not.toContain('scale')
    expect(lanes(0, 1, 30)).not.toContain('scale')
    expect(lanes(1, 31)).toContain('log scale')
    expect(lanes(0, 1, 31)).toContain('square-root scale')
  })

  it('draws every count, zeros too: no mark covers another', () => {
    const zeros = rates(many.slice(0, 15).map((k) => point(`f ${k}`, '', k < 12 ? 0 : 5 + k)))
    const marks = piecesOf(draw(zeros).svg).filter(({ name }) => name === 'circle')
    expect(marks).toHaveLength(15)
    const nearest = marks.flatMap((a, k) => marks.slice(k + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)))
    // Marks of radius 3.4 that just touch; places are written with two decimals.
    expect(Math.min(...nearest)).toBeGreaterThan(6.7)
  })
})

describe('strips', () => {
  const figure = strips([
    { level: 'before', values: [22_838, 22_841, 22_845] },
    { level: 'after', values: [22_849, 22_852] },
  ])

  // Golden: a strip for each level on one axis of dates, marks at values, words that say they lie apart.
  it('golden: before and after', () => {
    expect(outline(draw(figure).svg)).toMatchInlineSnapshot(`
      "rect 0 0
      text 28 41 Where the levels lie
      text 48 81 before
      circle 35 77
      rect 130 67
      path 137 67
      path 248 67
      path 395 67
      circle 137 77
      circle 248 77
      circle 395 77
      text 48 113 after
      path 35 104
      rect 535 99
      path 542 99
      path 652 99
      path 542 104
      path 652 104
      path 110 131
      path 137 131
      text 137 147 12 Jul
      path 211 131
      text 211 147 14 Jul
      path 285 131
      text 284 147 16 Jul
      path 358 131
      text 358 147 18 Jul
      path 432 131
      text 432 147 20 Jul
      path 505 131
      text 505 147 22 Jul
      path 579 131
      text 579 147 24 Jul
      path 652 131
      text 652 147 26 Jul
      text 680 165 date (2032)
      text 28 189 Each stroke: a value at which something was counted. Nowhere do two levels lie over the same stretch."
    `)
  })

  it('says that levels lie apart only where they do', () => {
    const touching = strips([
      { level: 'before', values: [1000, 1004] },
      { level: 'after', values: [1004, 1008] },
    ])
    expect(linesOf(figure).join(' ')).toContain('Nowhere do two levels lie over the same stretch.')
    expect(linesOf(touching).join(' ')).not.toContain('Nowhere')
    expect(draw(figure).alt).toContain('before: 3 values, 12 Jul 2032 to 19 Jul 2032')
  })

  it('reads dates, hours of the clock, days of pooled seasons, stages', () => {
    expect(linesOf(strips([{ level: 'a', values: [8.5, 12] }], 'hour'))).toContain('9:00')
    expect(linesOf(strips([{ level: 'a', values: [3, 12] }], 'season-day'))).toContain('days since the first count of the season')
    expect(linesOf(strips([{ level: 'a', values: [61, 67] }], 'stage'))).toContain('bloom stage (BBCH code)')
  })

  it('tells the year once where all dates are of one, else with each', () => {
    expect(linesOf(figure)).toEqual(expect.arrayContaining(['12 Jul', 'date (2032)']))
    const two = linesOf(strips([{ level: 'a', values: [22_400, 22_770] }]))
    expect(two.join(' ')).toMatch(/1 \w+ 2031/)
    expect(two).toContain('date')
    expect(linesOf(strips([{ level: 'a', values: [3, 12] }]))).toContain('date (1970)')
  })
})

describe('the table', () => {
  it('holds every number of the figure', () => {
    const kept = draw(ratios([row('a', 3.0260164590097562, 2.4197309816797823, null, { n: 8, level: 0.983 })])).table
    expect(kept.rows).toEqual([['a', '3.02602', '2.41973', 'no limit', '98.3\u00a0%', '8', 'asked']])
    expect(kept.head).toHaveLength(7)
    expect(draw(pairedRates).table.rows).toHaveLength(8)
    expect(draw(pairedRates).table.rows[1]).toEqual(['Averlusk Orchard', 'bumble bee', 'edge', '36', '120', '18'])
    expect(
      draw(
        strips([
          { level: 'a', values: [22_838, 22_841] },
          { level: 'b', values: [] },
        ]),
      ).table.rows,
    ).toEqual([
      ['a', '12 Jul 2032'],
      ['a', '15 Jul 2032'],
      ['b', 'no value known'],
    ])
  })

  it('holds rows that are not drawn, and the figure says how many', () => {
    const long = ratios(Array.from({ length: 500 }, (_, k) => row(`row ${k}`, 1 + k / 500, 1, 2)))
    expect(draw(long).table.rows).toHaveLength(500)
    expect(linesOf(long)).toContain('300 more stand in the table.')
  })
})
