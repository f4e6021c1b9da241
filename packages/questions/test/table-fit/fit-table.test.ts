import { readFileSync } from 'node:fs'
import type { FitWords, TableFitted } from '@thrum/questions'
import { describe, expect, it } from 'vitest'
import { ask, extract, fitted, refused, tableOf, watches } from './tables.ts'

interface Fit {
  readonly logLik: number
  readonly coef: { readonly [name: string]: readonly [number, number] }
  readonly sd: { readonly [group: string]: number }
}
const expected = JSON.parse(
  readFileSync(new URL('../../../stats/test/reference/count-models/expected.json', import.meta.url), 'utf8'),
) as { readonly fits: { readonly [name: string]: Fit } }

const told = ({ coefficients }: TableFitted) => coefficients.flatMap((own) => (own.kind === 'told' ? [own] : []))
const bees: FitWords = { response: 'bees', family: 'nb2', unchecked: true }
const ids = (own: readonly { readonly id: string }[]): readonly string[] => own.map(({ id }) => id)

describe('fitTable', () => {
  const herds: FitWords = {
    response: 'incidence',
    family: 'binomial',
    trials: 'size',
    fixed: 'period',
    asLevels: 'period',
    random: 'herd',
  }

  it.each([
    ['cbpp: binomial', herds],
    ['cbpp: binomial by quadrature', { ...herds, nodes: '25' }],
  ] as const)('oracle: %s', async (name, words) => {
    const fit = await fitted(extract('count-models/cbpp'), words)
    const oracle = expected.fits[name]
    if (oracle === undefined) throw new Error(name)
    expect(fit.likelihood.logLikelihood).toBeCloseTo(oracle.logLik, 5)
    Object.values(oracle.coef).forEach(([estimate, se], k) => {
      expect(told(fit)[k]?.estimate).toBeCloseTo(estimate, 4)
      expect(Math.abs((told(fit)[k]?.se ?? 0) / se - 1)).toBeLessThan(1e-3)
    })
    expect(fit.scatter[0]?.value).toBeCloseTo(oracle.sd.herd ?? 0, 4)
    // Periods vary within herds: rows less herds less three periods. All at reference: herds less one.
    expect(told(fit).map(({ df, units }) => [df, units])).toEqual([[14, 'levels'], ...Array(3).fill([56 - 15 - 3, 'rows'])])
  })

  it('oracle: what is lost without mining and without sites (R 4.2.2, glmmTMB)', async () => {
    const words: FitWords = {
      response: 'count',
      family: 'nb2',
      fixed: 'mined,spp',
      random: 'site',
      without: 'mined,site',
      unchecked: true,
    }
    const { without } = await fitted(extract('count-models/salamanders'), words)
    const [mined, site] = without.flatMap((own) => (own.kind === 'compared' ? [own] : []))
    expect(mined?.statistic).toBeCloseTo(31.589591, 3)
    expect([mined?.df, mined?.note]).toEqual([1, null])
    expect(site?.statistic).toBeCloseTo(22.901564, 3)
    expect((site?.p ?? 0) / 8.53e-7).toBeCloseTo(1, 2)
    expect(site?.note?.id).toBe('questions/fit/without/boundary')
  })

  it('identity: without groupings measured numbers are fitted by least squares, whichever likelihood is told', async () => {
    const words: FitWords = { response: 'weight', family: 'gaussian', fixed: 'strip' }
    const [full, restricted] = [await fitted(watches, words), await fitted(watches, { ...words, reml: true })]
    expect(told(full).map(({ se }) => se)).toEqual(told(restricted).map(({ se }) => se))
    const numbers = (strip: string) =>
      [...(watches.columns.find(({ name }) => name === 'strip')?.texts ?? [])].flatMap((own, i) =>
        own === strip ? [Number(watches.columns.find(({ name }) => name === 'weight')?.texts[i])] : [],
      )
    const mean = (own: readonly number[]) => own.reduce((sum, value) => sum + value, 0) / own.length
    const [none, sown] = [numbers('none'), numbers('sown')]
    expect(told(full)[1]?.estimate).toBeCloseTo(mean(sown) - mean(none), 10)
    const squares = [none, sown].reduce((sum, own) => sum + own.reduce((part, value) => part + (value - mean(own)) ** 2, 0), 0)
    expect(told(full)[1]?.se).toBeCloseTo(Math.sqrt((squares / 38) * (1 / 20 + 1 / 20)), 10)
    expect(told(full).map(({ df }) => df)).toEqual([38, 38])
    expect(full.checks).toEqual([])
  })

  it('identity: means are told for so much effort; per 60 is 60 times per 1', async () => {
    const words: FitWords = { ...bees, fixed: 'strip', random: 'field', effort: 'minutes' }
    const [one, hour] = [await fitted(watches, words), await fitted(watches, { ...words, per: '60' })]
    const means = ({ comparisons }: TableFitted) =>
      comparisons[0]?.means.map((own) => (own.kind === 'mean' ? own.value : 0)) ?? []
    means(hour).forEach((value, k) => {
      expect(value / (means(one)[k] ?? 0)).toBeCloseTo(60, 8)
    })
    expect(hour.per?.values).toEqual({ per: 60, effort: 'minutes' })
    const [pair] = hour.comparisons[0]?.pairs ?? []
    const ratio = told(hour)[1]?.ratio
    expect(pair?.kind === 'pair' ? pair.value : 0).toBeCloseTo(ratio?.value ?? 0, 10)
    expect(pair?.kind === 'pair' ? pair.limits.low : 0).toBeCloseTo(ratio?.limits.low ?? 0, 10)
  })

  it('the first level named is what others are held against; others follow by name, numbers in them by size', async () => {
    const labels = async (words: FitWords) => (await fitted(watches, words)).coefficients.map(({ label }) => label.values.level)
    expect(await labels({ ...bees, fixed: 'field' })).toEqual([undefined, ...Array.from({ length: 9 }, (_, k) => `F${k + 2}`)])
    expect(await labels({ ...bees, fixed: 'strip', levels: ['strip=sown>none'] })).toEqual([undefined, 'none'])
    expect(await labels({ ...bees, fixed: 'observer', levels: ['observer=o2'] })).toEqual([undefined, 'o0', 'o1'])
    expect(await labels({ ...bees, fixed: 'year', asLevels: 'year' })).toEqual([undefined, '2032'])
  })

  it('a whole-field column is told by fields, and says so; others by rows', async () => {
    const fit = await fitted(watches, { ...bees, fixed: 'strip,stage', random: 'field,field and period', effort: 'minutes' })
    expect(told(fit).map(({ df, by }) => [df, by])).toEqual([
      [8, 'field'],
      [8, 'field'],
      [40 - 20 - 1, null],
    ])
    const caution = fit.cautions.find(({ id }) => id === 'whole-units')
    expect(caution?.text.values).toMatchObject({ of: 'field', units: 10, rows: 40 })
    expect(fit.comparisons.map(({ pairsDf }) => pairsDf)).toEqual([8])
  })

  it('a slope is told with its scatter and its own degrees of freedom', async () => {
    const words: FitWords = {
      response: 'weight',
      family: 'gaussian',
      fixed: 'stage',
      random: 'field',
      slope: 'stage by field',
      slopeApart: true,
    }
    const fit = await fitted(watches, { ...words, reml: true, without: 'stage by field' })
    expect(told(fit)[1]).toMatchObject({ df: 9, units: 'slopes', by: 'field' })
    expect(fit.scatter.map(({ label }) => label.id)).toContain('questions/fit/scatter/slope-of')
    expect(fit.without[0]).toMatchObject({ kind: 'compared', df: 1, note: { id: 'questions/fit/without/boundary' } })
    const alone = await fitted(watches, { ...words, fixed: 'strip' })
    expect(ids(alone.cautions)).toContain('slope-without-term')
  })

  it('limits by profile and by refits lie about those by t', async () => {
    const words: FitWords = { ...bees, family: 'poisson', fixed: 'strip', effort: 'minutes' }
    const wald = told(await fitted(watches, words))[1]?.limits
    for (const by of ['profile', 'bootstrap']) {
      const own = told(await fitted(watches, { ...words, by, ...(by === 'bootstrap' ? { refits: '400' } : {}) }))[1]?.limits
      expect(Math.abs((own?.low ?? 9) - (wald?.low ?? 0)), by).toBeLessThan(0.06)
      expect(Math.abs((own?.high ?? 9) - (wald?.high ?? 0)), by).toBeLessThan(0.06)
      expect(own).not.toEqual(wald)
    }
  })

  it('what was fitted is checked along its columns, unless that is not wished', async () => {
    const words: FitWords = { ...bees, family: 'poisson', fixed: 'strip,stage', effort: 'minutes' }
    expect(ids((await fitted(watches, { ...words, unchecked: false, random: 'field' })).checks)).toEqual([
      'uniformity',
      'dispersion',
      'zeros',
      'outliers',
      'covariate/strip',
      'covariate/stage',
      'laplace',
    ])
    const { checks, cautions } = await fitted(watches, words)
    expect([checks.length, ids(cautions).includes('unchecked')]).toEqual([0, true])
  })

  it('the same seed gives the same numbers, another seed other draws', async () => {
    const words: FitWords = { ...bees, fixed: 'strip', by: 'bootstrap', refits: '100' }
    expect(await ask(watches, words)).toEqual(await ask(watches, words))
  })

  it('rows that lack a cell are left out, and named; those of columns that are not used stay', async () => {
    const [head = '', ...lines] = 'bees,strip,other\n3,a,\n,b,1\n5,,2\n2,b,3\n6,a,4\n1,b,5\n,a,6\n'.split('\n')
    const table = tableOf([head, ...lines].join('\n'))
    const fit = await fitted(table, { ...bees, family: 'poisson', fixed: 'strip' })
    expect(fit.rows).toEqual({
      used: 4,
      of: 7,
      leftOut: [
        { column: 'bees', rows: 2, lines: [3, 8] },
        { column: 'strip', rows: 1, lines: [4] },
      ],
    })
  })

  it('what says the same as others is set aside and named; its means are not made up', async () => {
    const columns = watches.columns.flatMap((own) => (own.name === 'strip' ? [own, { ...own, name: 'mown' }] : [own]))
    const fit = await fitted({ ...watches, columns }, { ...bees, fixed: 'strip,mown' })
    const aside = fit.coefficients.find(({ kind }) => kind === 'set-aside')
    expect(aside?.label.values).toEqual({ column: 'mown', level: 'sown' })
    expect(aside?.kind === 'set-aside' ? aside.equals.map(({ values }) => values.column) : []).toEqual(['strip'])
    expect(fit.comparisons.every(({ pairs }) => pairs.every(({ kind }) => kind === 'not-told'))).toBe(true)
  })

  it('zeros of another origin come with their coefficients, and the question by what they come', async () => {
    const words: FitWords = {
      response: 'count',
      family: 'poisson',
      fixed: 'mined',
      random: 'site',
      zerosBy: 'mined',
      unchecked: true,
    }
    const fit = await fitted(extract('count-models/salamanders'), words)
    expect(fit.zeros?.map(({ kind }) => kind)).toEqual(['told', 'told'])
    expect(ids(fit.cautions)).toContain('zeros-mechanism')
  })
})

describe('no fit, by name', () => {
  const counts = (strip: string, field = 'f1') =>
    tableOf(`bees,strip,field\n${strip}\n`.replaceAll(';', '\n').replaceAll('F', field))

  it('nothing counted', async () => {
    expect((await refused(counts('0,a,F;0,b,F;0,b,F'), { ...bees, fixed: 'strip' })).reason).toBe('all-zero')
  })

  it('a level without an insect, which it names', async () => {
    const own = await refused(counts('0,a,F;0,a,F;0,a,F;3,b,F;4,b,F;6,b,F'), { ...bees, fixed: 'strip' })
    expect(own.reason).toBe('separated')
    expect(own.text.values.columns).toMatchObject([{ values: { column: 'strip', level: 'b' } }])
  })

  it('one level, one group, too few rows', async () => {
    expect((await refused(counts('1,a,F;0,a,F;3,a,F'), { ...bees, fixed: 'strip' })).reason).toBe('one-level')
    expect((await refused(counts('1,a,F;0,b,F;3,a,F;4,b,F'), { ...bees, fixed: 'strip', random: 'field' })).reason).toBe(
      'one-group',
    )
    expect((await refused(counts('1,a,F;3,b,F'), { ...bees, fixed: 'strip' })).reason).toBe('few-rows')
  })

  it('measured numbers without scatter, and a grouping that is each row', async () => {
    const exact = tableOf('weight,strip,row\n1,a,r1\n1,a,r2\n2,b,r3\n2,b,r4\n')
    const words: FitWords = { response: 'weight', family: 'gaussian', fixed: 'strip' }
    expect((await refused(exact, words)).reason).toBe('no-residual')
    const rows = {
      ...watches,
      columns: [
        ...watches.columns,
        { name: 'row', texts: Array.from({ length: 40 }, (_, i) => `r${i}`), numbers: new Float64Array(40) },
      ],
    }
    const own = await refused(rows, { ...words, random: 'row' })
    expect([own.reason, own.text.values.of]).toEqual(['grouping-blurred', 'row'])
  })
})

describe('the receipt', () => {
  it('holds the rows that were used, by the lines of the file, and text as text', async () => {
    const table = tableOf('bees,strip,year,other\n3,a,2031,x\n,b,2031,x\n5,=b,2032,x\n2,a,2032,x\n6,=b,2031,x\n')
    const { receipt } = await ask(table, { ...bees, family: 'poisson', fixed: 'strip,year', asLevels: 'year' })
    const [rows, script] = receipt?.files ?? []
    expect(rows?.text.split('\r\n').slice(0, 3)).toEqual([
      '"line of the file","bees","strip","year"',
      '2,3,"a","2031"',
      '4,5,"\'=b","2032"',
    ])
    expect(script?.text).toContain(`"strip" = c("'=b", "a")`)
    expect(script?.text).toContain('colClasses')
  })

  it('has R skip what it has nothing for', async () => {
    const { receipt } = await ask(watches, { ...bees, fixed: 'strip', random: 'field', nodes: '15' })
    expect(receipt?.files[1]?.text).toContain('R has nothing at hand')
  })
})
