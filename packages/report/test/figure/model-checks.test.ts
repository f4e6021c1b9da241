import { suspectFigure, suspectSaying } from '@thrum/questions'
import { describe, expect, it } from 'vitest'
import { suspects } from '../../../questions/test/count-model-checks/suspects.ts'
import { drawFigure } from '../../src/figure/draw-figure.ts'
import { createSpeaker, english, spanish } from '../../src/index.ts'
import { outside, overlaps, textsOf } from './drawing.ts'
import { widths } from './samples.ts'

const speakers = { en: createSpeaker(english), es: createSpeaker(spanish, 'es') }

describe('figures of suspects of a fitted model', () => {
  it.each(suspects)('%s: sentence first, no text on another, nothing beyond the page', (_, suspect) => {
    for (const say of Object.values(speakers))
      for (const width of widths) {
        const { svg, height, alt, table } = drawFigure(suspectFigure(suspect), { say, theme: 'light', width })
        expect(overlaps(svg), `overlaps at ${width}`).toEqual([])
        expect(outside(svg, width, height), `outside at ${width}`).toEqual([])
        expect(svg).not.toMatch(/NaN|Infinity|undefined|questions\/model-checks/)
        expect(alt.startsWith(say(suspectSaying(suspect)).slice(0, 40))).toBe(true)
        expect(table.rows.length).toBeGreaterThan(0)
      }
  })

  it('a covariate: what was counted, and under it the model alone', () => {
    const [, suspect] = suspects.find(([name]) => name === 'covariate, above') ?? []
    if (suspect === undefined) throw new Error('no suspect')
    const lines = textsOf(drawFigure(suspectFigure(suspect), { say: speakers.en, theme: 'light', width: 900 }).svg).map(
      ({ text }) => text,
    )
    expect(lines).toContain('temperature 14.0')
    expect(lines).toContain('by the model alone')
    expect(lines).toContain('2.16')
    expect(lines).toContain('0.500 to 1.60')
  })
})
