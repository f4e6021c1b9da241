import { describe, expect, it } from 'vitest'
import { type Asked, ask } from '../asked.ts'
import { type CountRow, type Project, projectOfCounts } from '../project-of-counts.ts'
import { changed, dayOf, soundProject } from '../sound-project.ts'

const designOf = (project: Project, asked: Asked) => ask(projectOfCounts(project), asked).design
const row = (field: string, level: string | undefined, more: Partial<CountRow> = {}): CountRow => ({
  field,
  ...(level === undefined ? {} : { strip: level }),
  minutes: 10,
  tallies: { bee: 4 },
  ...more,
})

describe('structure', () => {
  it('each field at one level: between fields', () => {
    const design = designOf(soundProject(), { between: 'strip' })
    expect(design.structure).toBe('between-fields')
    expect(design.fields.map(({ level }) => level)).toEqual([0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1])
  })

  it('fields at several levels: within fields', () => {
    const design = designOf(soundProject(), { between: 'daypart' })
    expect(design.structure).toBe('within-fields')
    expect(design.fields.every(({ level }) => level === -1)).toBe(true)
  })

  it('a day that divides: before and after; with a factor beside it, with controls', () => {
    const since = dayOf(5)
    expect(designOf(soundProject(), { since })).toMatchObject({ structure: 'before-after', levels: ['before', 'after'] })
    const controlled = designOf(soundProject(), { since, between: 'strip' })
    expect(controlled).toMatchObject({ structure: 'before-after-control', levels: ['no', 'yes'] })
    expect([...new Set(controlled.periodOf)]).toEqual([0, 1])
  })

  it('the day itself is after', () => {
    const design = designOf(soundProject(), { since: dayOf(3) })
    expect([...design.periodOf.slice(0, 4)]).toEqual([0, 1, 1, 1])
  })

  it('most fields decide; the others are left out and named', () => {
    const one = [row('a', 'no'), row('b', 'no'), row('c', 'yes'), row('d', 'yes'), row('e', 'no'), row('e', 'yes')]
    const between = designOf({ counts: one }, { between: 'strip' })
    expect(between.structure).toBe('between-fields')
    expect(between.leftOut).toEqual([{ because: 'field-holds-both-levels', rows: [4, 5], fields: ['e'] }])
    const both = [row('a', 'no'), row('a', 'yes'), row('b', 'no'), row('b', 'yes'), row('c', 'yes')]
    const within = designOf({ counts: both }, { between: 'strip' })
    expect(within.structure).toBe('within-fields')
    expect(within.leftOut).toEqual([{ because: 'field-lacks-a-level', rows: [4], fields: ['c'] }])
  })

  it('a treatment that begins in all fields on one day is before and after, by whatever name', () => {
    const started = (date: (k: number, visit: number) => string) =>
      ['a', 'b', 'c', 'd', 'e', 'f'].flatMap((field, k) =>
        [0, 1, 2, 3].map((visit) => row(field, visit < 2 ? 'no' : 'yes', { date: date(k, visit) })),
      )
    const seen = ask(projectOfCounts({ counts: started((_, visit) => dayOf(3 * visit)) }), { between: 'strip' })
    expect(seen.design).toMatchObject({ structure: 'before-after', levels: ['no', 'yes'] })
    expect(seen.findings.filter(({ severity }) => severity === 'block').map(({ code }) => code)).toContain('no-control')
    // Asked the other way round it is the same comparison; side by side in time it is none.
    const reversed = designOf({ counts: started((_, visit) => dayOf(3 * visit)) }, { between: 'strip', levels: ['yes', 'no'] })
    expect(reversed.structure).toBe('before-after')
    expect(designOf({ counts: started((_, visit) => dayOf(visit % 2)) }, { between: 'strip' }).structure).toBe('within-fields')
  })

  it('with controls a field has the level it has afterwards', () => {
    const counts = ['a', 'b'].flatMap((field) => [
      row(field, field === 'a' ? 'no' : undefined, { date: dayOf(0) }),
      row(field, 'yes', { date: dayOf(9) }),
    ])
    const design = designOf({ counts }, { between: 'strip', since: dayOf(5) })
    expect(design.fields.map(({ level }) => level)).toEqual([1, 1])
  })
})

describe('what cannot enter is named with its reason', () => {
  it('each once', () => {
    const counts: readonly CountRow[] = [
      row('a', 'no'),
      { strip: 'no', minutes: 10 },
      row('a', undefined),
      row('a', 'half'),
      row('a', 'no', { minutes: undefined }),
      row('a', 'no', { rain: 'rain' }),
      row('b', 'yes'),
    ]
    const design = designOf({ counts }, { between: 'strip', levels: ['no', 'yes'] })
    expect(design.leftOut.map(({ because, rows }) => [because, ...rows])).toEqual([
      ['no-field', 1],
      ['no-level', 2],
      ['level-not-asked', 3],
      ['no-effort', 4],
      ['outside-window', 5],
    ])
    expect([...design.rows]).toEqual([0, 6])
  })

  it('a count without a date cannot be before or after', () => {
    const counts = [row('a', 'no', { date: dayOf(0) }), row('a', 'no', { date: dayOf(9) }), row('a', 'no')]
    expect(designOf({ counts }, { since: dayOf(5) }).leftOut).toEqual([{ because: 'no-date', rows: [2], fields: ['a'] }])
  })
})

describe('levels', () => {
  it('stand in their own order, or as asked with the reference first', () => {
    expect(designOf(soundProject(), { between: 'strip' }).levels).toEqual(['no', 'yes'])
    expect(designOf(soundProject(), { between: 'strip', levels: ['yes', 'no'] }).levels).toEqual(['yes', 'no'])
  })

  it('that nobody recorded are refused, naming those there are', () => {
    expect(() => designOf(soundProject(), { between: 'strip', levels: ['no', 'maybe'] })).toThrow(
      /survey\/factor\/no-such-level.*maybe.*no, yes/u,
    )
    expect(() => designOf(soundProject(), {})).toThrow('survey/contrast/nothing-asked')
  })
})

describe('blocks', () => {
  const twoCrops = changed(soundProject(), ({ field }) => ({ crop: Number(field?.slice(6)) % 2 === 0 ? 'cherry' : 'plum' }))
  it('are crops where the selection holds several, unless crop is asked', () => {
    expect(designOf(twoCrops, { between: 'strip' }).blocks).toEqual(['cherry', 'plum'])
    expect(designOf(twoCrops, { between: 'strip', where: ['crop=plum'] }).blocks).toEqual(['plum'])
    expect(designOf(twoCrops, { between: 'crop' }).blocks).toHaveLength(1)
  })

  it('are those a plan declares, within crops', () => {
    const planned = {
      ...changed(twoCrops, ({ field }) => ({ slope: Number(field?.slice(6)) % 4 < 2 ? 'north' : 'south' })),
      plan: { block: 'slope' },
    }
    expect(designOf(planned, { between: 'strip' }).blocks).toEqual([
      'cherry, north',
      'cherry, south',
      'plum, north',
      'plum, south',
    ])
  })

  it('a factor that is asked about is no block of its own, whatever the plan says', () => {
    const design = designOf({ ...soundProject(), plan: { block: 'strip' } }, { between: 'strip' })
    expect(design.blocks).toHaveLength(1)
  })
})
