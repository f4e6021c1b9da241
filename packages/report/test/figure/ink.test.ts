import { describe, expect, it } from 'vitest'
import { guiseOf, guises, type Ink, inks } from '../../src/figure/ink.ts'

const channels = (colour: string): readonly number[] => [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)

/** Relative luminance. @source WCAG 2.2, definition of relative luminance. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = channels(colour).map((value) =>
    value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4,
  )
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/** @source WCAG 2.2, definition of contrast ratio. */
function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b)
  return (light + 0.05) / (dark + 0.05)
}

const themes = Object.entries(inks) as readonly (readonly [string, Ink])[]

describe('inks', () => {
  it('published: black on white has 21 : 1', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10)
  })

  it.each(themes)('%s: text has 4.5 : 1 on paper and band', (_, ink) => {
    for (const colour of ['text', 'quiet', 'verdigris'] as const)
      for (const ground of ['paper', 'band'] as const) expect(contrast(ink[colour], ink[ground])).toBeGreaterThanOrEqual(4.5)
  })

  it.each(themes)('%s: marks have 3 : 1 on paper and band', (_, ink) => {
    for (const colour of ['slate', 'madder', 'verdigris', 'plum', 'quiet'] as const)
      for (const ground of ['paper', 'band'] as const) expect(contrast(ink[colour], ink[ground])).toBeGreaterThanOrEqual(3)
  })
})

describe('guises', () => {
  it('no two levels share a shape, so that grey print tells them apart', () => {
    expect(new Set(guises.map(({ shape }) => shape)).size).toBe(guises.length)
    expect(new Set(guises.map(({ colour }) => colour)).size).toBe(guises.length)
    for (const [k, guise] of guises.entries()) expect(guise.isFilled).toBe(k % 2 === 1)
  })

  it('one level, or more than there are guises, has the one plain mark', () => {
    expect(guiseOf(0, 1)).toEqual(guiseOf(3, 5))
  })
})
