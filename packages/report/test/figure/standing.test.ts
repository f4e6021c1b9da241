import type { Answer, Estimate } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { standingOf } from '../../src/figure/standing.ts'
import { pairedRates, say, told } from './samples.ts'

const estimate = (n: number, counts: Estimate['counts'], own: Partial<Estimate> = {}): Estimate => ({
  id: `${counts}/${n}`,
  label: told('rate'),
  value: 1,
  interval: { low: null, high: null, level: 0.95 },
  unit: saying('questions/unit/ratio'),
  scale: 'ratio',
  n,
  counts,
  method: told('method'),
  role: 'headline',
  verdict: null,
  ...own,
})

const answer = (own: Pick<Answer, 'verdict' | 'estimates'> & Partial<Answer>): Answer => ({
  version: 1,
  question: 'what-differs',
  asked: told('?'),
  evidence: 'counted',
  headline: told('!'),
  claims: { canSay: [], cannotSay: [] },
  cautions: [],
  method: { name: told('method'), equation: '', choices: [], checks: [], references: [] },
  figures: [],
  next: [],
  receipt: { digest: '', options: {}, rows: { selected: 0, of: 0 }, seed: '', random: '', thrum: '' },
  ...own,
})

const line = (own: Parameters<typeof answer>[0]): string => standingOf(answer(own)).map(say).join(' ')

describe('standingOf', () => {
  it('tells the verdict and the independent units of what was asked, not of what stands beside it', () => {
    const estimates = [estimate(8, 'fields', { verdict: 'shown' }), estimate(80, 'watches', { role: 'beside' })]
    expect(line({ verdict: 'shown', estimates })).toBe('Verdict: shown. n = 8 fields, the independent units of each estimate.')
  })

  it('of several comparisons says that the verdict is of all together, and tells the fewest and the most', () => {
    const estimates = [estimate(4, 'pairs of fields', { verdict: 'shown' }), estimate(8, 'fields', { verdict: 'alike' })]
    expect(line({ verdict: 'shown', estimates })).toBe(
      'Verdict of the comparisons together: shown. n = 4 to 8 fields, the independent units of each estimate.',
    )
  })

  it('where the design blocks, takes what stands beside, else the fields that are drawn', () => {
    const watches = estimate(40, 'watches', { role: 'beside' })
    const beside = estimate(1, 'fields', { role: 'beside' })
    expect(line({ verdict: 'design-blocks', estimates: [watches, beside] })).toBe(
      'Verdict: the design blocks. n = 1 field, the independent unit of each estimate.',
    )
    expect(line({ verdict: 'design-blocks', estimates: [watches], figures: [pairedRates] })).toContain('n = 4 fields')
  })

  it('says of watches that they speak of themselves, and of nothing nothing', () => {
    expect(line({ verdict: null, estimates: [estimate(20, 'watches')] })).toBe(
      'n = 20 watches: what is told holds for these watches only.',
    )
    expect(line({ verdict: null, estimates: [] })).toBe('')
  })
})
