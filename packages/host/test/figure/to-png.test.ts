import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Resvg } from '@resvg/resvg-js'
import { describe, expect, it } from 'vitest'
import { letters } from '../../../report/src/figure/letters.ts'
import { textWidth } from '../../../report/src/figure/measure.ts'
import { element, markup } from '../../../report/src/figure/svg.ts'
import type { Face } from '../../../report/src/figure/widths.ts'
import { toPng } from '../../src/figure/to-png.ts'

const pageOf = (line: string, face: Face, size: number): string =>
  markup(
    element(
      'svg',
      { xmlns: 'http://www.w3.org/2000/svg', width: 2000, height: 60, 'font-family': "'Thrum Sans'" },
      letters(10, 40, line, { size, fill: '#000000', face }),
    ),
  )

const fonts = join(import.meta.dirname, '../../../report/fonts')
const font = {
  fontFiles: ['thrum-sans-regular.ttf', 'thrum-sans-semibold.ttf', 'thrum-serif-semibold.ttf'].map((name) => join(fonts, name)),
  loadSystemFonts: false,
  defaultFontFamily: 'Thrum Sans',
}

const square = '<svg xmlns="http://www.w3.org/2000/svg" width="20" height="10"><rect width="20" height="10" fill="#345"/></svg>'
const widthOf = (png: Uint8Array): number => new DataView(png.buffer, png.byteOffset).getUint32(16)

describe('toPng', () => {
  it('is a PNG of so many pixels for each pixel of the drawing', async () => {
    const png = await toPng(square, { scale: 2.5 })
    expect([...png.slice(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
    expect(widthOf(png)).toBe(50)
  })

  it('gives the same bytes twice, and keeps the picture to what a machine can hold', async () => {
    expect(await toPng(square, { scale: 3 })).toEqual(await toPng(square, { scale: 3 }))
    expect(widthOf(await toPng(square.replace('height="10"', 'height="1"'), { scale: 1e6 }))).toBe(16_000)
  })

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses a scale of %d, and says it', async (scale) => {
    await expect(toPng(square, { scale })).rejects.toThrow(`scale should be above 0, but is ${scale}`)
  })

  it('draws letters with the shipped faces, whatever the machine has', async () => {
    const [letter, blank] = [
      await toPng(pageOf('Ostrel Vale', 'title', 20), { scale: 1 }),
      await toPng(pageOf('', 'title', 20), { scale: 1 }),
    ]
    expect(letter.length).toBeGreaterThan(blank.length + 500)
  })
})

describe('textWidth', () => {
  // Oracle: the box of the letters as resvg 2.6.2 draws them with the shipped faces. The measure is to be an upper estimate.
  const lines = [
    'bumble bee: strip / no strip',
    '0.401 to 0.892',
    'Ostrel Vale, Ärger in Łódź, Žďár nad Sázavou, Þingeyri',
    'ΑΒΓΔΩ αβγδω Щастье в поле Ђурђевдан',
    'WWWWWWWW mmmmmmmm @@@ %%% — … ½ ← →',
    'level for all comparisons together (95\u00a0% interval)',
  ]
  it.each(lines)('oracle: "%s" is drawn no wider than it is measured', (line) => {
    for (const face of ['sans', 'strong', 'title'] as const) {
      const drawn = new Resvg(pageOf(line, face, 20), { font }).getBBox()?.width ?? 0
      expect(drawn).toBeGreaterThan(20)
      expect(textWidth(line, 20, face)).toBeGreaterThanOrEqual(drawn)
      // Letters that are not Latin are all taken as wide as the widest; twice as wide would waste the page.
      expect(textWidth(line, 20, face)).toBeLessThan(1.8 * drawn)
    }
  })
})

describe('the shipped faces', () => {
  it('have their licence beside them and no reserved name', () => {
    expect(readFileSync(join(fonts, 'OFL.txt'), 'utf8')).toContain('SIL OPEN FONT LICENSE Version 1.1')
    for (const file of font.fontFiles) {
      // Family names of a TrueType face are UTF-16, high byte first.
      const bytes = readFileSync(file).toString('latin1').replaceAll('\u0000', '')
      expect(bytes).toContain('Thrum S')
      expect(bytes).not.toMatch(/Source ?(Sans|Serif)/)
    }
  })
})
