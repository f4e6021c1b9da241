import { describe, expect, it } from 'vitest'
import { type CountModel, fitCountModel, influenceOf, matrixOfColumns, suspectsOf } from '../../src/index.ts'
import { fitted, watched } from './watched.ts'

const treated = { name: 'treated', weights: [0, 1] }
const names = (count: number, of: string): readonly string[] => Array.from({ length: count }, (_, i) => `${of} ${i}`)

describe('influenceOf', () => {
  it('recovery: the planted wild field comes first', async () => {
    const { model: plain, fields, visits } = watched({ seed: 'wild', fields: 10, fieldSd: 0.1, wild: 12 })
    const { model, fit } = fitted(plain, 'poisson')
    const influence = await influenceOf(
      model,
      fit,
      [treated],
      [
        { name: 'field', of: fields, levels: names(10, 'field') },
        { name: 'visit', of: visits, levels: names(80, 'visit') },
      ],
    )
    expect(influence).toMatchObject({ kind: 'finished', asked: 90, skipped: [] })
    expect(influence.leftOut.find(({ by }) => by === 'field')).toMatchObject({ level: 'field 1', rows: 8, kind: 'refitted' })
    const suspect = suspectsOf({ checks: [] }, influence).find((own) => own.kind === 'influence' && own.leftOut.by === 'field')
    expect(suspect).toMatchObject({ verdict: 'suspect', sum: { name: 'treated' }, leftOut: { level: 'field 1' } })
  })

  it('identity: what is told of a field is the fit without its rows', async () => {
    const { model: plain, fields } = watched({ seed: 'by hand', fields: 6, visits: 6 })
    const { model, fit } = fitted(plain, 'nb2')
    const { leftOut } = await influenceOf(model, fit, [treated], [{ name: 'field', of: fields, levels: names(6, 'field') }])
    const rest = [...fields.keys()].filter((i) => fields[i] !== 2)
    const byHand: CountModel = {
      family: 'nb2',
      counts: rest.map((i) => model.counts[i] ?? 0),
      design: matrixOfColumns(rest.length, [rest.map(() => 1), rest.map((i) => (fields[i] ?? 0) % 2)]),
      groupings: [
        { name: 'field', of: Int32Array.from(rest, (i) => (fields[i] ?? 0) - Number((fields[i] ?? 0) > 2)), levels: 5 },
      ],
    }
    const own = fitCountModel(byHand)
    const part = leftOut.find(({ level }) => level === 'field 2')
    if (own.kind !== 'fitted' || part?.kind !== 'refitted') throw new Error('no fit')
    const [sum] = part.sums
    if (sum?.kind !== 'estimated') throw new Error('no sum')
    const difference = (own.coefficients[1] ?? 0) - (fit.coefficients[1] ?? 0)
    expect(sum.estimate).toBeCloseTo(own.coefficients[1] ?? 0, 8)
    expect(sum.change).toBeCloseTo(difference / (fit.standardErrors[1] ?? 1), 8)
    expect(sum.ratio).toBeCloseTo(Math.exp(difference), 8)
  })

  it('says by name which columns are lost, or separated', async () => {
    const { model: plain } = watched({ seed: 'lost', fields: 6, visits: 6, fieldSd: 0 })
    const of = Int32Array.from({ length: 36 }, (_, i) => Math.floor(i / 6))
    const only = Array.from(of, (field) => Number(field === 3))
    const counts = Array.from(plain.counts, (count, i) => (of[i] === 4 || of[i] === 5 ? (of[i] === 4 ? count + 1 : 0) : count))
    const late = Array.from(of, (field) => Number(field >= 4))
    const design = matrixOfColumns(36, [only.map(() => 1), only, late])
    const { model, fit } = fitted({ counts, design }, 'poisson')
    const { leftOut } = await influenceOf(
      model,
      fit,
      [{ name: 'only', weights: [0, 1, 0] }],
      [{ name: 'field', of, levels: names(6, 'field') }],
    )
    const by = new Map(leftOut.map((part) => [part.level, part]))
    // Only field 3 holds the level.
    expect(by.get('field 3')).toMatchObject({ kind: 'refitted', sums: [{ kind: 'aliased', columns: [1] }] })
    // Without field 4 nothing was counted in late fields.
    expect(by.get('field 4')).toMatchObject({ kind: 'separated', columns: [2] })
    expect(['field 3', 'field 4']).toContain(leftOut[0]?.level)
    const [first] = suspectsOf({ checks: [] }, { kind: 'finished', rows: 36, sums: [], leftOut, asked: 6, skipped: [] })
    expect(first).toMatchObject({ kind: 'influence', verdict: 'suspect' })
  })

  it('a single row, a single level: nothing is left', async () => {
    const { model, fit } = fitted({ counts: [3], design: matrixOfColumns(1, [[1]]) }, 'poisson')
    const by = { name: 'field', of: [0], levels: ['only', 'never'] }
    const { leftOut, asked } = await influenceOf(model, fit, [{ name: 'mean', weights: [1] }], [by])
    expect(asked).toBe(1)
    expect(leftOut).toEqual([{ by: 'field', level: 'only', rows: 1, kind: 'not-fitted', because: 'no-rows' }])
  })

  it('beyond 2,000 rows looks at the first alone, stops between fits', async () => {
    const { model: plain, fields } = watched({ seed: 'many', fields: 6, visits: 334 })
    const { model, fit } = fitted(plain, 'poisson')
    const by = { name: 'field', of: fields, levels: names(6, 'field') }
    const signal = { aborted: false }
    const told = await influenceOf(model, fit, [treated], [by, { ...by, name: 'visit' }], {
      signal,
      onProgress: ({ done }) => {
        signal.aborted = done >= 2
      },
      breathe: () => Promise.resolve(),
    })
    expect(told).toMatchObject({ kind: 'stopped', asked: 6, skipped: ['visit'] })
    expect(told.leftOut.length).toBe(2)
  })

  it('refuses weights of another length and labels of another length', async () => {
    const { model, fit } = fitted(watched({ seed: 'refused' }).model, 'poisson')
    await expect(influenceOf(model, fit, [{ name: 'x', weights: [1] }], [])).rejects.toThrow(/1 weights/)
    await expect(influenceOf(model, fit, [treated], [{ name: 'field', of: [0], levels: ['a'] }])).rejects.toThrow(/field 1/)
  })
})
