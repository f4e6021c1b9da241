import { contrastLimits, ratioOfContrast } from '@thrum/stats'
import { describe, expect, it } from 'vitest'
import { answeredPair, ask, inflationBy } from '../asked.ts'
import { expectNear } from '../near.ts'
import { type CountRow, projectOfCounts } from '../project-of-counts.ts'

// Oracle: R 4.2.2 lm and t.test; the data and the lines of R stand in the handbook, 2.8 and 2.9a. Six printed decimals.

const cherry = [
  { strip: 'no', number: 62, minutes: 200, stage: 64.2 },
  { strip: 'no', number: 88, minutes: 200, stage: 65.0 },
  { strip: 'yes', number: 171, minutes: 200, stage: 64.8 },
  { strip: 'yes', number: 140, minutes: 180, stage: 65.6 },
]
const sunflower = [
  { strip: 'no', number: 35, minutes: 160, stage: 65.1 },
  { strip: 'no', number: 51, minutes: 200, stage: 64.6 },
  { strip: 'yes', number: 90, minutes: 200, stage: 65.5 },
  { strip: 'yes', number: 122, minutes: 200, stage: 65.9 },
]

/** Every field's counts in two watches of half its minutes, so that fields are summed and not taken from one row. */
function stripFields(withStage: boolean): readonly CountRow[] {
  return [
    ...cherry.map((own) => ({ ...own, crop: 'cherry' })),
    ...sunflower.map((own) => ({ ...own, crop: 'sunflower' })),
  ].flatMap(({ number, minutes, stage, crop, strip }, k) =>
    [Math.floor(number / 2), Math.ceil(number / 2)].map((part) => ({
      field: `field ${k + 1}`,
      crop,
      strip,
      minutes: minutes / 2,
      ...(withStage ? { stage } : {}),
      tallies: { bee: part },
    })),
  )
}

describe('contrast between fields', () => {
  const seen = ask(projectOfCounts({ counts: stripFields(false) }), { between: 'strip' })
  const pair = answeredPair(seen)

  it('oracle: two blocks of crops, methods 2.8 check 1', () => {
    expect(seen.design.structure).toBe('between-fields')
    expect(seen.design.blocks).toEqual(['cherry', 'sunflower'])
    const z = [-1.163151, -0.815315, -0.153734, -0.247749, -1.505641, -1.356736, -0.792968, -0.490206]
    pair.units.z.forEach((value, k) => {
      expectNear(value, z[k] as number)
    })
    expectNear(pair.contrast.estimate, 0.789046)
    expectNear(pair.contrast.se, 0.110378)
    expectNear(pair.residualSd, 0.156098)
    expectNear(pair.contrast.t, 7.148566)
    expectNear(pair.contrast.p, 0.000832)
    expect(pair.contrast.df).toBe(5)
    expect(pair.columns).toBe(3)
    const at95 = ratioOfContrast(pair.contrast, 0.95)
    const at90 = ratioOfContrast(pair.contrast, 0.9)
    expectNear(at95.ratio, 2.201296)
    expectNear(at95.lower, 1.657499)
    expectNear(at95.upper, 2.923503)
    expectNear(at90.lower, 1.762316)
    expectNear(at90.upper, 2.749623)
  })

  it('identity: with nothing to adjust for, adjusted and unadjusted are the same contrast', () => {
    expect(pair.adjusted).toEqual([])
    expect(pair.notAdjusted).toEqual([])
    expect(pair.contrast).toEqual(pair.unadjusted)
  })

  it('oracle: bloom stage enters the headline, methods 2.8 check 2', () => {
    const staged = ask(projectOfCounts({ counts: stripFields(true) }), { between: 'strip' })
    const found = answeredPair(staged)
    expectNear(inflationBy(staged, 'stage') ?? Number.NaN, 2.199715)
    expect(found.adjusted).toEqual(['stage'])
    expectNear(found.contrast.estimate, 0.685628)
    expectNear(found.contrast.se, 0.169108)
    expect(found.contrast.df).toBe(4)
    const { ratio, lower, upper } = ratioOfContrast(found.contrast)
    expectNear(ratio, 1.985019)
    expectNear(lower, 1.24124)
    expectNear(upper, 3.174488)
    expectNear(found.unadjusted.estimate, 0.789046)
  })

  it('identity: levels asked the other way round mirror the contrast', () => {
    const mirrored = answeredPair(
      ask(projectOfCounts({ counts: stripFields(false) }), { between: 'strip', levels: ['yes', 'no'] }),
    )
    expectNear(mirrored.contrast.estimate, -pair.contrast.estimate, 1e-12)
    expectNear(mirrored.contrast.se, pair.contrast.se, 1e-12)
  })

  it('crops asked about are no blocks', () => {
    const { design } = ask(projectOfCounts({ counts: stripFields(false) }), { between: 'crop' })
    expect(design.blocks).toEqual([''])
  })

  it('oracle: three levels share one residual variance', () => {
    // R: z<-log((c(20,24,30, 31,40,44, 80,75,99)+.5)/100); g<-factor(rep(1:3,each=3)); summary(lm(z~g))
    const numbers = [20, 24, 30, 31, 40, 44, 80, 75, 99]
    const counts = numbers.map((number, k) => ({
      field: `field ${k}`,
      mowing: ['a late', 'b early', 'c never'][Math.floor(k / 3)],
      minutes: 100,
      tallies: { bee: number },
    }))
    const three = ask(projectOfCounts({ counts }), { between: 'mowing' })
    const second = answeredPair(three, 1)
    const third = answeredPair(three, 2)
    expectNear(second.fieldT.estimate, 0.4366513406)
    expectNear(third.fieldT.estimate, 1.2252409325)
    expectNear(second.fieldT.se, 0.1432701059)
    expectNear(third.fieldT.se, 0.1432701059)
    expect([second.fieldT.df, third.fieldT.df]).toEqual([6, 6])
  })
})

describe('contrast within fields', () => {
  const first = [52, 38, 61, 44, 30]
  const second = [40, 31, 49, 42, 16]
  const minutes = [
    [100, 100, 100, 90, 100],
    [100, 100, 90, 100, 100],
  ]
  const counts = first.flatMap((number, k) => [
    { field: `field ${k}`, position: 'a', minutes: minutes[0]?.[k], tallies: { bee: number } },
    { field: `field ${k}`, position: 'b', minutes: minutes[1]?.[k], tallies: { bee: second[k] as number } },
  ])
  // A field that holds one level only is left out and named.
  const lone = { field: 'lone field', position: 'a', minutes: 100, tallies: { bee: 500 } }

  it('oracle: pairs, methods 2.8 check 3', () => {
    const seen = ask(projectOfCounts({ counts: [...counts, lone] }), { between: 'position' })
    const { contrast } = answeredPair(seen)
    const { ratio, lower, upper } = ratioOfContrast(contrast)
    expect(seen.design.structure).toBe('within-fields')
    expectNear(ratio, 0.765275)
    expectNear(lower, 0.595788)
    expectNear(upper, 0.982977)
    expectNear(contrast.t, -2.966855)
    expectNear(contrast.p, 0.041273)
    expect(contrast.df).toBe(4)
    expect(seen.design.leftOut).toEqual([{ because: 'field-lacks-a-level', rows: [10], fields: ['lone field'] }])
  })

  it('blocks do not enter: crops differ between fields, and the differences are within', () => {
    const cropped = counts.map((row, k) => ({ ...row, crop: k < 4 ? 'cherry' : 'sunflower' }))
    expect(answeredPair(ask(projectOfCounts({ counts: cropped }), { between: 'position' })).contrast.df).toBe(4)
  })
})

describe('before and after', () => {
  // The made-up set of methods 2.5: three watches of 10, 15 and 10 minutes in each period of six fields.
  const totals: { readonly [field: string]: readonly [readonly number[], readonly number[]] } = {
    'A control': [
      [5, 9, 10],
      [9, 22, 14],
    ],
    'B control': [
      [8, 4, 7],
      [5, 15, 5],
    ],
    'C control': [
      [11, 12, 8],
      [3, 22, 12],
    ],
    'D hives': [
      [4, 12, 7],
      [12, 20, 28],
    ],
    'E hives': [
      [8, 29, 8],
      [17, 52, 22],
    ],
    'F hives': [
      [3, 12, 14],
      [3, 22, 36],
    ],
  }
  const dates = ['2031-05-02', '2031-05-12']
  const counts = Object.entries(totals).flatMap(([field, periods]) =>
    periods.flatMap((numbers, period) =>
      numbers.map((number, k) => ({
        field,
        side: field.slice(2),
        date: dates[period] as string,
        minutes: k === 1 ? 15 : 10,
        tallies: { bee: number },
      })),
    ),
  )
  const snapshot = projectOfCounts({ counts })

  it('oracle: with controls, the contrast is that of the changes, methods 2.8 check 4', () => {
    const seen = ask(snapshot, { between: 'side', since: '2031-05-10' })
    const { contrast } = answeredPair(seen)
    const { ratio, lower, upper } = ratioOfContrast(contrast)
    expect(seen.design.structure).toBe('before-after-control')
    expectNear(ratio, 1.55129)
    expectNear(lower, 1.006779)
    expectNear(upper, 2.390296)
    expectNear(contrast.t, 2.819833)
    expectNear(contrast.p, 0.047836)
    expect(contrast.df).toBe(4)
  })

  it('identity: without controls, the changes themselves are held against 0', () => {
    const seen = ask(snapshot, { since: '2031-05-10' })
    const { contrast } = answeredPair(seen)
    const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)
    const d = Object.values(totals).map(([before, after]) => Math.log((sum(after) + 0.5) / (sum(before) + 0.5)))
    expect(seen.design.structure).toBe('before-after')
    expect(contrast.df).toBe(5)
    expectNear(contrast.estimate, sum(d) / 6, 1e-12)
  })
})

describe('relative counts, methods 2.9a', () => {
  const a = [40, 25, 31, 66, 90, 58]
  const b = [22, 30, 18, 15, 27, 20]
  const counts = a.map((number, k) => ({
    field: `field ${k}`,
    strip: k < 3 ? 'no' : 'yes',
    minutes: 60,
    tallies: { bee: number, fly: b[k] as number },
  }))

  it('oracle: three fields against three', () => {
    const seen = ask(projectOfCounts({ counts }), { between: 'strip', against: 'fly' })
    const { contrast } = answeredPair(seen)
    expectNear(contrast.estimate, 0.918391)
    expectNear(contrast.se, 0.274261)
    expectNear(contrast.t, 3.348601)
    expectNear(contrast.p, 0.028606)
    expect(contrast.df).toBe(4)
    const { lower, upper } = contrastLimits(contrast)
    expectNear(Math.exp(contrast.estimate), 2.505256)
    expectNear(Math.exp(lower), 1.169902)
    expectNear(Math.exp(upper), 5.364813)
  })

  it('only watches in which both kinds were looked for count', () => {
    const extra = { field: 'field 0', strip: 'no', minutes: 60, tallies: { bee: 400, fly: null } }
    const seen = ask(projectOfCounts({ counts: [...counts, extra] }), { between: 'strip', against: 'fly' })
    expectNear(answeredPair(seen).contrast.estimate, 0.918391)
  })

  it('identity: kind and other kind exchanged turn the contrast round', () => {
    const snapshot = projectOfCounts({ counts })
    const turned = answeredPair(ask(snapshot, { between: 'strip', kind: 'fly', against: 'bee' }))
    expectNear(turned.contrast.estimate, -0.918391)
  })
})
