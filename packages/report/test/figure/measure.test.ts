import { describe, expect, it } from 'vitest'
import { cutLine, textWidth, wrapEvenly, wrapText } from '../../src/figure/measure.ts'

describe('textWidth', () => {
  it('identity: a line is as wide as its characters together, and grows with its size', () => {
    expect(textWidth('strip', 13)).toBeCloseTo(
      [...'strip'].reduce((sum, letter) => sum + textWidth(letter, 13), 0),
      10,
    )
    expect(textWidth('strip', 26)).toBeCloseTo(2 * textWidth('strip', 13), 10)
  })

  it('figures are tabular, accents take no room, wide characters more', () => {
    expect(new Set([...'0123456789'].map((digit) => textWidth(digit, 13))).size).toBe(1)
    expect(textWidth('e\u0301', 13)).toBe(textWidth('e', 13))
    expect(textWidth('畑', 13)).toBeGreaterThan(13)
  })
})

describe('wrapText', () => {
  const text = 'honey bee: after / before, as counted in these fields, credited to nothing'

  it.each([40, 60, 90, 140, 400])('identity: no line is wider than %d px, and no word is lost', (room) => {
    const lines = wrapText(text, room, 99, 13)
    for (const line of lines) expect(textWidth(line, 13)).toBeLessThanOrEqual(room)
    expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''))
  })

  it('ends with an ellipsis where lines do not suffice, within the room', () => {
    const lines = wrapText(text, 140, 2, 13)
    expect(lines).toHaveLength(2)
    expect(lines[1]).toMatch(/…$/)
    expect(textWidth(lines[1] ?? '', 13)).toBeLessThanOrEqual(140)
  })

  it('breaks a word that is longer than a line', () => {
    expect(wrapText('x'.repeat(50), 100, 9, 13).length).toBeGreaterThan(1)
    expect(wrapText('', 100, 3, 13)).toEqual([''])
  })

  it('cuts nothing that fits', () => {
    expect(cutLine('edge', 400, 13)).toBe('edge')
    expect(cutLine('edge of the orchard', 60, 13)).toMatch(/^edge.*…$/)
  })

  it('evenly: as many lines as it takes, none wider than the room', () => {
    const even = wrapEvenly(text, 300, 9, 13)
    expect(even).toHaveLength(wrapText(text, 300, 9, 13).length)
    for (const line of even) expect(textWidth(line, 13)).toBeLessThanOrEqual(300)
  })
})
