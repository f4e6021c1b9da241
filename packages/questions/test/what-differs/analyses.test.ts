import type { Analysis, Answer, ComparedAnalyses } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { dayOf } from '../../../survey/test/sound-project.ts'
import { contrastCase } from '../../src/contrast/contrast-case.ts'
import { comparedBy } from '../../src/what-differs/analyses-told.ts'
import { analyseOtherwise, judgeContrast } from '../../src/what-differs/judged.ts'
import { checkAnswer } from '../answer-shape.ts'
import { said, sentences, whatDiffersIn } from '../ask.ts'
import { stripProject } from '../projects.ts'

const strips = { between: 'strip', levels: ['no', 'yes'], kinds: ['bee'], worth: 2 } as const

function only(answer: Answer): ComparedAnalyses {
  checkAnswer(answer)
  const [compared, ...more] = answer.analyses ?? []
  if (compared === undefined || more.length > 0) throw new Error(`${more.length} comparisons by other analyses`)
  return compared
}

const ids = ({ analyses }: ComparedAnalyses): readonly string[] => analyses.map(({ id }) => id)

function of({ analyses }: ComparedAnalyses, id: string): Analysis {
  const found = analyses.find((own) => own.id === id)
  if (found === undefined) throw new Error(`no analysis ${id}`)
  return found
}

describe('the headline by other analyses', () => {
  it('the headline first, then what applies; where all agree the verdict does not hang on the choice', async () => {
    const answer = await whatDiffersIn(stripProject({ kinds: { bee: { ratio: 3, mean: 8 } } }), strips)
    const compared = only(answer)
    // Made counts that scatter less than a Poisson count, and three times as many: thinning decides, and the t stands beside it.
    expect(ids(compared)).toEqual(['as-asked', 'field-t', 'without-visit', 'model', 'model-per-flower', 'permutation'])
    expect(compared.analyses.map(({ verdict }) => verdict)).toEqual(['shown', 'shown', 'shown', 'shown', 'shown', null])
    expect(compared.hangs).toBe(false)
    expect(said(compared.told)).toMatch(
      /^bee: yes \/ no: the verdict does not hang on the choice of analysis: all 5 analyses give shown\. Permutation of fields: p = 0\.0022 /u,
    )
  })

  it('identity: as asked it holds the numbers of the headline', async () => {
    const answer = await whatDiffersIn(stripProject({ kinds: { bee: { ratio: 1.5, scatter: 0.4 } } }), strips)
    const { value, interval, verdict } = of(only(answer), 'as-asked')
    const headline = answer.estimates.find(({ role }) => role === 'headline')
    expect({ value, interval, verdict }).toEqual({
      value: headline?.value,
      interval: headline?.interval,
      verdict: headline?.verdict,
    })
  })

  it('identity: not adjusted, and with the counts outside the window, they are the ratios that stand beside the headline', async () => {
    const snapshot = stripProject({
      kinds: { bee: { ratio: 3, mean: 8 } },
      change: ({ strip, stage }, k) => ({
        stage: Number(stage) + (strip === 'yes' ? 1 : 0) + (Math.floor(k / 4) % 3),
        ...(k % 4 === 3 ? { rain: 'rain', temperature: 8 } : {}),
      }),
    })
    const answer = await whatDiffersIn(snapshot, strips)
    const compared = only(answer)
    for (const id of ['unadjusted', 'window-all']) {
      const beside = answer.estimates.find((own) => own.id === `ratio/bee/yes/${id}`)
      const { value, interval } = of(compared, id)
      expect({ value, interval }).toEqual({ value: beside?.value, interval: beside?.interval })
    }
    // Put the other way round, the other choice is to leave them out.
    const all = only(await whatDiffersIn(snapshot, { ...strips, window: 'all' }))
    expect(of(all, 'window-in').value).toBeCloseTo(of(compared, 'as-asked').value ?? 0, 12)
    expect(ids(all)).not.toContain('window-all')
  })

  it('a headline that nothing had to be adjusted for stands beside one that is adjusted for what varies most', async () => {
    const snapshot = stripProject({
      kinds: { bee: { ratio: 3, mean: 8 } },
      change: (_, k) => ({ temperature: 16 + 2 * (Math.floor(k / 4) % 3) }),
    })
    const compared = only(await whatDiffersIn(snapshot, strips))
    expect(said(of(compared, 'adjusted-temperature').label)).toBe('adjusted for air temperature')
    expect(ids(compared)).not.toContain('unadjusted')
  })

  it('one visit on which the verdict hangs is the one left out, and the sentence says who gives what', async () => {
    const snapshot = stripProject({
      kinds: { bee: { ratio: 1.9, scatter: 0.3, mean: 8 } },
      change: (row, k) => (k === 47 ? { tallies: { bee: 400 } } : { tallies: row.tallies }),
    })
    const answer = await whatDiffersIn(snapshot, strips)
    const compared = only(answer)
    expect(answer.cautions.map(({ code }) => code)).toContain('influential-visit')
    const without = of(compared, 'without-visit')
    expect(without.verdict).not.toBe(answer.verdict)
    expect(compared.hangs).toBe(true)
    const told = said(compared.told)
    expect(told).toContain('bee: yes / no: the verdict hangs on the choice of analysis: as asked (field-level t on log rates)')
    expect(told).toMatch(/; without the visit to field \d+ on 2031-\d\d-\d\d/u)
    // The verdict itself stays that of the headline.
    expect(of(compared, 'as-asked').verdict).toBe(answer.verdict)
  })

  it('durations that differ bring minutes as a covariate', async () => {
    const snapshot = stripProject({
      kinds: { bee: { ratio: 3, mean: 8 } },
      change: (_, k) => ({ minutes: k % 2 === 0 ? 10 : 20 }),
    })
    expect(ids(only(await whatDiffersIn(snapshot, strips)))).toContain('model-minutes')
  })

  it('three fields against three: the permutation could not have shown anything, and that is not held against the verdict', async () => {
    const snapshot = stripProject({ arm: 3, kinds: { bee: { ratio: 4, mean: 8 } } })
    const answer = await whatDiffersIn(snapshot, strips)
    const compared = only(answer)
    expect(answer.verdict).toBe('shown')
    expect(said(compared.told)).toContain(
      'Permutation of fields: p = 0.10; the smallest p that 6 fields could give is 0.10, so this test could not have shown anything.',
    )
    expect(compared.hangs).toBe(false)
  })

  it('a relative count has a model of shares', async () => {
    const snapshot = stripProject({ kinds: { bee: { ratio: 3, mean: 8 }, fly: { ratio: 1, mean: 9 } } })
    const compared = only(await whatDiffersIn(snapshot, { ...strips, against: 'fly' }))
    expect(ids(compared)).toEqual(['as-asked', 'without-visit', 'model-shares', 'permutation'])
  })

  it('a slope between fields has its model, and neither visits nor permutation', async () => {
    const snapshot = stripProject({
      kinds: { bee: { ratio: 1.4, scatter: 0.3 } },
      change: (_, k) => ({ 'edge distance m': 10 + 10 * Math.floor(k / 4) }),
    })
    const answer = await whatDiffersIn(snapshot, { between: 'edge distance m', step: 2, kinds: ['bee'], worth: 2 })
    if (answer.verdict === 'design-blocks') throw new Error('blocked')
    expect(ids(only(answer))).toEqual(['as-asked', 'model'])
  })

  it('several comparisons: each has its own, at the levels for all together', async () => {
    const snapshot = stripProject({ kinds: { bee: { ratio: 3, mean: 8 }, fly: { ratio: 1 } } })
    const answer = await whatDiffersIn(snapshot, { ...strips, kinds: ['bee', 'fly'] })
    checkAnswer(answer)
    expect(answer.analyses?.map(({ comparison }) => said(comparison))).toEqual(['bee: yes / no', 'fly: yes / no'])
    expect(answer.analyses?.map((own) => of(own, 'as-asked').verdict)).toEqual(['shown', 'alike'])
  })
})

describe('a permutation that contradicts the interval', () => {
  const told = (ratio: number, scatter: number, p: number): ComparedAnalyses => {
    const snapshot = stripProject({ kinds: { bee: { ratio, scatter } } })
    const asked = contrastCase(snapshot, strips, strips.worth)
    const judged = judgeContrast(snapshot, asked, strips)
    const [found] = judged.found
    const [made] = analyseOtherwise(snapshot, asked, strips, judged)
    if (found === undefined || made == null) throw new Error('not compared')
    const test = { kind: 'tested', p, smallestP: 0.0022, method: 'exact', arrangements: 924, looked: 924 } as const
    return comparedBy(asked, found, made, test)
  }

  it('finds less than a verdict that is shown, or more than one that is not: the verdict hangs on the choice', () => {
    const less = told(3, 0.1, 0.2)
    expect([less.hangs, said(less.told)]).toEqual([
      true,
      expect.stringContaining('analyses with an interval give shown, and the permutation of fields does not bear it out.'),
    ])
    const more = told(1, 0.1, 0.01)
    expect([more.hangs, said(more.told)]).toEqual([
      true,
      expect.stringContaining('analyses with an interval give alike, and the permutation of fields finds a difference.'),
    ])
  })

  it('bears out both otherwise', () => {
    expect([told(3, 0.1, 0.01).hangs, told(1, 0.1, 0.2).hangs]).toEqual([false, false])
  })
})

describe('the figure of the analyses', () => {
  const figureOf = (answer: Answer) =>
    answer.figures.find((own) => own.kind === 'intervals' && said(own.title) === 'The same comparison by other analyses')

  it('one row an analysis, the headline on top, its band, and the sentence', async () => {
    const answer = await whatDiffersIn(stripProject({ kinds: { bee: { ratio: 3, mean: 8 } } }), strips)
    const figure = figureOf(answer)
    if (figure?.kind !== 'intervals') throw new Error('no figure')
    expect(figure.rows.map(({ label, role }) => `${role}: ${said(label)}`)).toEqual([
      'headline: bee: yes / no',
      'beside: bee: yes / no, field-level t on log rates: shown',
      expect.stringMatching(/^beside: bee: yes \/ no, without the visit to field \d+ on \S+: shown$/u),
      'beside: bee: yes / no, count model (negative binomial): shown',
      'beside: bee: yes / no, count model per flower: shown',
      'beside: bee: yes / no, permutation of fields: p = 0.0022, the least possible 0.0022',
    ])
    expect(figure.band).toEqual({ low: 0.5, high: 2 })
    expect(figure.told).toEqual(answer.analyses?.map(({ told }) => told))
    expect(figure.rows.at(-1)).toMatchObject({ value: null, low: null, high: null })
  })

  it('what stands in it is not drawn twice', async () => {
    const snapshot = stripProject({
      kinds: { bee: { ratio: 3, mean: 8 } },
      change: (_, k) => (k % 4 === 3 ? { rain: 'rain', temperature: 8 } : {}),
    })
    const [ratios] = (await whatDiffersIn(snapshot, strips)).figures
    if (ratios?.kind !== 'intervals') throw new Error('no figure')
    expect(ratios.rows.map(({ label }) => said(label))).toEqual(['bee: yes / no', 'bee: yes / no, 90\u00a0%'])
  })

  it('more than two comparisons are told together under it', async () => {
    const kinds = { bee: { ratio: 3, mean: 8 }, fly: { ratio: 1 }, moth: { ratio: 1 } }
    const figure = figureOf(await whatDiffersIn(stripProject({ kinds }), { ...strips, kinds: ['bee', 'fly', 'moth'] }))
    if (figure?.kind !== 'intervals') throw new Error('no figure')
    expect(figure.told?.map(said)).toEqual([
      expect.stringMatching(/^Of (none|one|\d) of 3 comparisons .* on the choice of analysis\.$/u),
    ])
  })
})

describe('what the design blocks is compared in no other way', () => {
  const kinds = { bee: { ratio: 3, mean: 8 }, fly: { ratio: 1 } }
  const blocked = {
    'too few fields': [stripProject({ arm: 2, kinds }), strips],
    'no control': [stripProject({ kinds }), { kinds: ['bee'], since: dayOf(5), worth: 2 }],
    'tangled with the stage': [
      stripProject({ kinds, change: ({ strip }, k) => ({ stage: strip === 'yes' ? 66 + (k % 2) : 62 + (k % 2) }) }),
      strips,
    ],
    'no insect at one level': [stripProject({ kinds: { bee: { ratio: 0, mean: 8 }, fly: { ratio: 1 } } }), strips],
    'a level wholly outside the window': [
      stripProject({ kinds, change: ({ strip }) => (strip === 'yes' ? { rain: 'rain', temperature: 8 } : {}) }),
      strips,
    ],
  } as const

  it.each(Object.entries(blocked))('%s', async (_, [snapshot, options]) => {
    const answer = await whatDiffersIn(snapshot, options)
    expect(answer.verdict).toBe('design-blocks')
    expect(answer.analyses).toBeUndefined()
    expect(answer.figures.flatMap((own) => (own.kind === 'intervals' ? (own.told ?? []) : []))).toEqual([])
    expect(sentences(answer).filter((own) => /count model|permutation|choice of analysis/iu.test(own))).toEqual([])
  })

  it('of several, those that are not blocked', async () => {
    const snapshot = stripProject({ kinds: { bee: { ratio: 3, mean: 8 }, fly: { ratio: 0, mean: 8 } } })
    const answer = await whatDiffersIn(snapshot, { ...strips, kinds: ['bee', 'fly'] })
    expect(answer.analyses?.map(({ comparison }) => said(comparison))).toEqual(['bee: yes / no'])
  })

  it('the other choice about the window, blocked by its own audit, gives no number', async () => {
    const snapshot = stripProject({
      kinds,
      change: ({ strip }) => (strip === 'yes' ? { rain: 'rain' } : {}),
    })
    const answer = await whatDiffersIn(snapshot, { ...strips, window: 'all' })
    const inside = of(only(answer), 'window-in')
    expect({ value: inside.value, interval: inside.interval, verdict: inside.verdict }).toEqual({
      value: null,
      interval: null,
      verdict: 'design-blocks',
    })
  })
})
