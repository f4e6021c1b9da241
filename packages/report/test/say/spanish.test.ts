import type { Answer, Snapshot } from '@thrum/model'
import { createRng } from '@thrum/model/ground'
import { isDesignSound, type Work, whatDiffers, whoVisits } from '@thrum/questions'
import { describe, expect, it } from 'vitest'
import { englishOnly } from '../../../model/test/translated.ts'
import { type StripAsked, stripProject } from '../../../questions/test/projects.ts'
import { dayOf } from '../../../survey/test/sound-project.ts'
import { createSpeaker, drawAnswer, printAnswer, spanish, withTexts } from '../../src/index.ts'

const say = createSpeaker(spanish, 'es')

const work = (): Work => ({
  rng: createRng('test'),
  version: '1.2.3',
  signal: { aborted: false },
  breathe: () => Promise.resolve(),
})

// Levels and names are those of the data, so they are told as they are.
const kinds: StripAsked['kinds'] = { abeja: { ratio: 3, mean: 8 }, mosca: { ratio: 1 }, abejorro: { ratio: 1.2, scatter: 0.6 } }
const made = stripProject({
  kinds,
  assigned: 'chosen',
  change: ({ field, observer }) => ({
    field: field?.replace('field', 'campo'),
    observer: String(observer).replace('observer', 'persona'),
  }),
})
const dealt = stripProject({ kinds, assigned: 'at random' })
const few = stripProject({ kinds, arm: 2 })
const strips = { between: 'strip', levels: ['no', 'yes'], worth: 2 } as const

const differs = (snapshot: Snapshot, asked: Parameters<typeof whatDiffers.run>[1]): Promise<Answer> =>
  whatDiffers.run(snapshot, asked, work())

const answers: readonly (readonly [string, () => Promise<Answer>])[] = [
  ['what-differs: associated', () => differs(made, { ...strips, kinds: ['abeja'] })],
  ['what-differs: caused', () => differs(dealt, { ...strips, kinds: ['abeja'] })],
  ['what-differs: alike', () => differs(made, { ...strips, kinds: ['mosca'] })],
  ['what-differs: not settled', () => differs(made, { ...strips, worth: 1.05, kinds: ['abejorro'] })],
  ['what-differs: several kinds', () => differs(made, { ...strips, kinds: ['abeja', 'mosca', 'abejorro'] })],
  ['what-differs: relative', () => differs(made, { ...strips, kinds: ['abeja'], against: 'mosca' })],
  ['what-differs: before and after', () => differs(made, { since: dayOf(5), worth: 2, kinds: ['abeja'] })],
  ['what-differs: with controls', () => differs(made, { ...strips, since: dayOf(5), kinds: ['abeja'] })],
  ['what-differs: too few fields', () => differs(few, { ...strips, kinds: ['abeja', 'mosca'] })],
  ['what-differs: all kinds', () => differs(made, strips)],
  ['what-differs: kinds', () => differs(made, { between: 'kind', levels: ['abeja', 'mosca'], worth: 2 })],
  ['who-visits', () => whoVisits.run(made, {}, work())],
  ['who-visits: by level', () => whoVisits.run(made, { by: 'strip' }, work())],
  ['who-visits: two fields', () => whoVisits.run(few, { field: ['field 0', 'field 1'] }, work())],
  ['is-design-sound', () => isDesignSound.run(made, { between: 'strip' }, work())],
  ['is-design-sound: blocked', () => isDesignSound.run(few, { since: dayOf(5) }, work())],
]

/** Every text an answer says. */
function texts(value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(texts)
  if (typeof value !== 'object' || value === null) return []
  const own = 'text' in value && 'values' in value && typeof value.text === 'string' ? [value.text] : []
  return [...own, ...Object.entries(value).flatMap(([name, inner]) => (name === 'values' ? [] : texts(inner)))]
}

/** Names that the data brought, or that are typed. */
const named = /\b(?:field|observer) \d+|\bdocs\/limits\.md|\bwhat-differs\b|--[a-z]+/gu

describe('an answer in Spanish', () => {
  it.each(answers)('%s: all of it can be said, with decimal commas', async (_, asked) => {
    const answer = await asked()
    const told = texts(withTexts(answer, say))
    expect(told.length).toBeGreaterThan(8)
    for (const text of told) {
      expect(text).not.toMatch(/undefined|NaN|[{}]/u)
      expect(text.replace(named, '')).not.toMatch(englishOnly)
      // A point stands before three digits only, as the mark of thousands.
      expect(text).not.toMatch(/\d\.\d(?!\d\d(?!\d))/u)
      expect(text).not.toMatch(/\d ?%(?<!\u00a0%)/u)
    }
    expect(printAnswer(answer, say)).toContain('\nLo que se puede decir\n')
    expect(drawAnswer(answer, { say, theme: 'light', width: 640 }).svg).toContain('lang="es"')
  })

  it('numbers have a decimal comma', async () => {
    const answer = await differs(made, { ...strips, kinds: ['abeja'] })
    expect(say(answer.headline)).toMatch(
      /^abeja: yes se asoció con \d,\d\d veces el número de visitantes por minuto de no \(intervalo del 95\u00a0%: \d,\d\d a \d,\d\d; 12 campos\); vale la pena actuar\.$/u,
    )
  })

  it('all kinds together have their name in the language, in sentences and in drawings', async () => {
    const answer = await differs(made, strips)
    expect(say(answer.headline)).toMatch(/^todos los tipos: /u)
    const { svg } = drawAnswer(answer, { say, theme: 'light', width: 640 })
    expect(svg).toContain('todos los tipos')
    expect(`${svg}${printAnswer(answer, say)}`).not.toContain('all kinds')
    // In a project all of whose numbers have a decimal comma, none of a drawing has a point between digits.
    expect(
      [...svg.matchAll(/<text[^>]*>([^<]*)/gu)]
        .map((own) => own[1]?.replace('Thrum 1.2.3', ''))
        .filter((text) => /\d\.\d/u.test(text ?? '')),
    ).toEqual([])
  })

  it('what holds for these conditions alone is said so', async () => {
    expect(say((await differs(dealt, { ...strips, kinds: ['abeja'] })).headline)).toContain('yes causó, en estas condiciones, ')
  })

  it('lists are joined as in Spanish', async () => {
    const answer = await whoVisits.run(made, {}, work())
    expect(answer.claims.canSay.map(say).join('\n')).toMatch(/\S, \S.* y \S/u)
    expect(answer.claims.canSay.map(say).join('\n')).not.toContain(' and ')
  })
})
