import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { kindSet, type ModelInput, type ModelVariant, modelContrast, modelVariants, talliesOf } from '@thrum/survey'
import { describe, expect, it } from 'vitest'
import { type Asked, answeredPair, ask } from '../asked.ts'
import { type CountRow, type Project, projectOfCounts } from '../project-of-counts.ts'
import { changed, dayOf, soundProject } from '../sound-project.ts'

// Oracle: R 4.2.2, glmmTMB 1.1.5; test/reference/visit-models holds the data, the script and the values.

const folder = join(import.meta.dirname, '../reference/visit-models')
const table = (name: string): readonly { readonly [column: string]: string }[] => {
  const [head = '', ...lines] = readFileSync(join(folder, name), 'utf8').trim().split('\n')
  const names = head.split(',')
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, k) => [names[k] ?? '', cell])))
}

function inputOf(project: Project, asked: Asked): ModelInput {
  const snapshot = projectOfCounts(project)
  const seen = ask(snapshot, asked)
  const of = (kind: string): Float64Array => talliesOf(snapshot, kindSet(snapshot, kind))
  return {
    snapshot,
    design: seen.design,
    pair: answeredPair(seen),
    tallies: of('bee'),
    against: asked.against === undefined ? null : of(asked.against),
  }
}

/** The contrast, where it was fitted. */
function fitted(input: ModelInput, variant: ModelVariant) {
  const model = modelContrast(input, variant)
  if (model.kind !== 'fitted') throw new Error(`not fitted: ${model.because}`)
  return model
}

const watches: readonly CountRow[] = table('watches.csv').map((own) => ({
  field: `field ${own.field}`,
  crop: own.crop,
  strip: own.strip,
  date: dayOf(3 * Number(own.visit)),
  plot: own.plot,
  minutes: Number(own.minutes),
  flowers: Number(own.flowers),
  unit: 'individuals',
  zeros: 'typed',
  tallies: { bee: Number(own.count), fly: Number(own.other) },
}))
const values = new Map(table('values.csv').map((own) => [own.name, own]))

describe('a pair by a model of visit totals', () => {
  it.each([
    ['plain', 'plain', {}],
    ['minutes', 'minutes', {}],
    ['flowers', 'flowers', {}],
    ['shares', 'plain', { against: 'fly' }],
  ] as const)('oracle: %s', (name, variant, asked) => {
    const { contrast, problem } = fitted(inputOf({ counts: watches }, { between: 'strip', ...asked }), variant)
    expect(problem.counts).toHaveLength(48)
    expect(problem.groupings.map(({ name: own, levels }) => [own, levels])).toEqual([['field', 12]])
    expect(problem.columns.at(-1)?.name).toBe('level')
    expect(Math.abs(contrast.estimate - Number(values.get(name)?.estimate))).toBeLessThan(1e-4)
    expect(Math.abs(contrast.se - Number(values.get(name)?.se))).toBeLessThan(1e-3)
  })

  it('identity: the t has the degrees of freedom of the field-level t, not those of visits', () => {
    const input = inputOf({ counts: watches }, { between: 'strip' })
    const { contrast } = fitted(input, 'plain')
    expect(contrast.df).toBe(input.pair.contrast.df)
    expect(contrast.df).toBe(9)
    expect(contrast.t).toBe(contrast.estimate / contrast.se)
  })

  it('flowers stay in proportion where the interval of their slope holds 1, else they are a covariate', () => {
    const seen = fitted(inputOf({ counts: watches }, { between: 'strip' }), 'flowers')
    expect(seen.flowers).toBe('covariate')
    expect(seen.problem.columns.map(({ name }) => name)).toContain('ln flowers')
    // Nearly as many everywhere: nothing is known of the slope, and proportion is not excluded.
    const even = watches.map((own, k) => ({ ...own, flowers: 200 + (k % 3) }))
    const other = fitted(inputOf({ counts: even }, { between: 'strip' }), 'flowers')
    expect(other.flowers).toBe('offset')
    expect(other.problem.columns.map(({ name }) => name)).not.toContain('ln flowers')
  })

  it('oracle: before and after with controls, methods 2.5: without a scatter of fields it is the NB2 of its table', () => {
    const counted = {
      A: [5, 9, 10, 9, 22, 14],
      B: [8, 4, 7, 5, 15, 5],
      C: [11, 12, 8, 3, 22, 12],
      D: [4, 12, 7, 12, 20, 28],
      E: [8, 29, 8, 17, 52, 22],
      F: [3, 12, 14, 3, 22, 36],
    }
    const counts = Object.entries(counted).flatMap(([field, bees]) =>
      bees.map(
        (bee, k): CountRow => ({
          field,
          hived: 'DEF'.includes(field) ? 'yes' : 'no',
          date: dayOf(2 * k),
          minutes: [10, 15, 10][k % 3],
          unit: 'individuals',
          zeros: 'typed',
          tallies: { bee },
        }),
      ),
    )
    const { contrast, problem, without } = fitted(inputOf({ counts }, { between: 'hived', since: dayOf(5) }), 'plain')
    expect(problem.groupings.map(({ name, levels }) => [name, levels])).toEqual([
      ['field', 6],
      ['side', 12],
    ])
    expect(without.groupings).toEqual(['field', 'side'])
    expect(contrast.estimate).toBeCloseTo(0.492403, 4)
    expect(contrast.se).toBeCloseTo(0.333301, 3)
    expect(contrast.df).toBe(4)
  })

  it('of pairs in three fields, fields are columns: three say too little of a variance', () => {
    const pairs = watches
      .filter(({ field }) => ['field 1', 'field 2', 'field 3'].includes(field ?? ''))
      .map((own) => ({ ...own, side: own.plot === '1' ? 'edge' : 'centre' }))
    const { problem } = fitted(inputOf({ counts: pairs }, { between: 'side' }), 'plain')
    expect(problem.columns.map(({ name }) => name)).toEqual(['intercept', 'field.2', 'field.3', 'level'])
    expect(problem.groupings.map(({ name }) => name)).toEqual(['side'])
  })

  it('a nuisance of the headline enters on the visits, told from its mean', () => {
    const sound = soundProject({ arm: 6, visits: 4 })
    const apart = changed(sound, ({ stage, strip }, k) => ({ stage: Number(stage) + (strip === 'yes' ? 1 : 0) + (k % 3) }))
    const input = inputOf(apart, { between: 'strip' })
    expect(input.pair.adjusted).toEqual(['stage'])
    const stage = fitted(input, 'plain').problem.columns.find(({ name }) => name === 'stage.1')?.values ?? new Float64Array()
    expect(stage.reduce((sum, value) => sum + value, 0)).toBeCloseTo(0, 9)
  })
})

describe('which models apply', () => {
  const variants = (project: Project, asked: Asked): readonly ModelVariant[] => modelVariants(inputOf(project, asked))
  const sound = soundProject()

  it('minutes where watches differ more than 1.5-fold in length, flowers where all were counted', () => {
    expect(variants({ counts: watches }, { between: 'strip' })).toEqual(['plain', 'minutes', 'flowers'])
    expect(variants(sound, { between: 'strip' })).toEqual(['plain', 'flowers'])
    expect(
      variants(
        changed(sound, (_, k) => (k === 5 ? { flowers: null } : {})),
        { between: 'strip' },
      ),
    ).toEqual(['plain'])
  })

  it('no flowers beside a rate per time where the levels themselves differ in them', () => {
    const more = changed(sound, ({ strip }, k) => ({ flowers: (strip === 'yes' ? 400 : 200) + (k % 5) }))
    expect(variants(more, { between: 'strip' })).toEqual(['plain'])
  })

  it('per flower the rule of flowers stands in place of the plain model; per area it does not apply', () => {
    expect(variants(sound, { between: 'strip', measure: 'flower' })).toEqual(['flowers'])
    expect(variants(sound, { between: 'strip', measure: 'area' })).toEqual(['plain'])
  })

  it('of a relative count shares alone', () => {
    expect(variants(sound, { between: 'strip', against: 'fly' })).toEqual(['plain'])
  })
})

describe('a model that cannot be had has a name', () => {
  it('too many visits to be fitted while a person waits', () => {
    const many = Array.from(
      { length: 6 * 900 },
      (_, k): CountRow => ({
        field: `field ${k % 6}`,
        strip: k % 2 === 0 ? 'no' : 'yes',
        date: dayOf(Math.floor(k / 6)),
        minutes: 10,
        unit: 'individuals',
        zeros: 'typed',
        tallies: { bee: 3 + (k % 7) },
      }),
    )
    const model = modelContrast(inputOf({ counts: many }, { between: 'strip' }), 'plain')
    expect(model).toEqual({ kind: 'not-fitted', because: 'too-many-visits' })
  })
})
