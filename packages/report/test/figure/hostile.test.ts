import type { Figure } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { drawFigure } from '../../src/figure/draw-figure.ts'
import { outside, overlaps } from './drawing.ts'
import { plain, point, rates, ratios, row, say, strips } from './samples.ts'

const draw = (figure: Figure, width = 390): ReturnType<typeof drawFigure> => drawFigure(figure, { say, theme: 'light', width })

const hostile = [
  '<script>alert(1)</script>',
  '"/><image href="https://example.org/x.png"/>',
  "' onload='alert(1)",
  '</text></svg><svg onload=alert(1)>',
  '&lt;b&gt; &amp; &#x3c;',
  ']]><!-- --><?xml x?>',
  'url(#a) style=fill:red; @import "x"',
  '\u0000\u0007\u001b[31mred\u202eback\u2066\u200f',
  '\ud800 half \udfff \ufffe \uffff',
  'line\nfeed\r\n\ttab\u2028\u2029',
  '{count, plural, other {#}}',
  'عنوان الحقل 東京の畑 поле 😀👩‍🌾 e\u0301\u0301\u0301\u0301',
  '',
  ' ',
  '__proto__',
  'constructor',
]

/** Every figure with a name in every place that a name can have. */
const figuresWith = (name: string): readonly Figure[] => [
  ratios([row(name, 2, 1, 4), row(`${name}, 90 %`, 2, 1, 4, { role: 'beside' })]),
  plain([row(`a, ${name}`, 2, 1, 4), row(`b, ${name}`, 2, 1, 4), row('a, x', 1, 1, 2), row('b, x', 1, 1, 2)]),
  rates([point(name, `${name} a`, 4, name), point(name, 'b', 9, name)]),
  rates(Array.from({ length: 9 }, (_, k) => point(`${name} ${k}`, `${name} ${k}`, k, name))),
  strips(
    [
      { level: name, values: [65, 66] },
      { level: `${name} b`, values: [67] },
    ],
    'stage',
  ),
]

/** Elements and attributes that a figure may have. */
const allowed =
  /^<\/?(svg|title|desc|rect|g|path|circle|text)(\s+(xmlns|width|height|viewBox|role|aria-labelledby|lang|id|font-family|font-size|font-weight|text-anchor|transform|fill|fill-opacity|stroke|stroke-width|stroke-linejoin|paint-order|d|x|y|cx|cy|r|rx)="[^"<]*")*\s*\/?>$/

describe('names from files', () => {
  it.each(hostile)('%j stays text', (name) => {
    for (const figure of figuresWith(name)) {
      const { svg, height } = draw(figure)
      for (const [tag] of svg.matchAll(/<[^>]*>/g)) expect(tag).toMatch(allowed)
      expect(svg.replace('http://www.w3.org/2000/svg', '')).not.toMatch(/="[^"]*(https?:|url\(|javascript:|data:)/)
      // Neither control codes nor marks of direction, nor what XML forbids.
      expect(svg.slice(0, -1)).not.toMatch(/[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\u2028\u2029\ufffe\uffff]/u)
      expect(svg.isWellFormed()).toBe(true)
      expect(outside(svg, 390, height)).toEqual([])
      expect(overlaps(svg)).toEqual([])
    }
  })

  it('a name of a million letters neither runs off nor swells the drawing', () => {
    for (const name of ['x'.repeat(1_000_000), 'word '.repeat(200_000), '😀'.repeat(250_000)]) {
      for (const figure of figuresWith(name)) {
        const { svg, height, table } = draw(figure)
        expect(svg.length).toBeLessThan(60_000)
        expect(height).toBeLessThan(2000)
        expect(outside(svg, 390, height)).toEqual([])
        expect(table.rows.flat().some((cell) => cell.length > 400_000)).toBe(true)
      }
    }
  })

  it('what is cut is told whole beside the pointer', () => {
    const name = 'the orchard behind the old mill, as far as the second gate and a little beyond it; '.repeat(3).trim()
    expect(draw(ratios([row(name, 2, 1, 4)])).svg).toContain(`<title>${name}</title>`)
  })

  it('gives ids from the content, to which its label points', () => {
    const [one, other] = [draw(ratios([row('a', 2, 1, 4)])).svg, draw(ratios([row('b', 2, 1, 4)])).svg]
    const label = /aria-labelledby="(\S+) (\S+)"/.exec(one)
    expect(one).toContain(`<title id="${label?.[1]}">`)
    expect(one).toContain(`<desc id="${label?.[2]}">`)
    expect(other).not.toContain(`${label?.[1]}`)
  })
})
