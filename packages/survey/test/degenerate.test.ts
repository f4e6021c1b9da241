import { ThrumError } from '@thrum/model/ground'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { auditRates, factorNames, fieldRate, kindSet, rateData, surveyWords, talliesOf } from '../src/index.ts'
import { type Asked, ask } from './asked.ts'
import { type CountRow, type Project, projectOfCounts } from './project-of-counts.ts'
import { said } from './said.ts'

const asks: readonly Asked[] = [
  { between: 'strip' },
  { between: 'strip', measure: 'flower' },
  { between: 'strip', measure: 'area', window: 'all' },
  { between: 'strip', since: '2031-05-10' },
  { between: 'strip', against: 'fly' },
  { between: 'strip', levels: ['no', 'yes'] },
  { between: 'strip', levels: ['yes'] },
  { between: 'hives set' },
  { since: '2031-05-10' },
  { since: '2031-05-10', against: 'fly' },
  { between: 'daypart', kind: 'all kinds' },
  { between: 'field' },
  { between: 'position' },
  { between: 'season' },
  { between: 'observer' },
  { between: 'stage' },
  { between: 'crop', unit: 'individuals' },
]

/** NaN anywhere in an answer, by its path. Minutes of a scan are not known: they alone may be. */
function nanIn(value: unknown, path = ''): string | null {
  if (typeof value === 'number') return Number.isNaN(value) ? path : null
  if (value === null || typeof value !== 'object' || value instanceof Map) return null
  const entries = ArrayBuffer.isView(value) ? Array.from(value as Float64Array).entries() : Object.entries(value)
  for (const [key, inner] of entries) {
    if (key === 'minutes') continue
    const found = nanIn(inner, `${path}/${key}`)
    if (found !== null) return found
  }
  return null
}

/** Asks everything of a project: only refusals with words of their own may come back, and no number that is none. */
function askAll(project: Project): void {
  const snapshot = projectOfCounts(project)
  for (const asked of asks) {
    try {
      const seen = ask(snapshot, asked)
      expect(nanIn(seen), JSON.stringify(asked)).toBeNull()
    } catch (error) {
      if (!(error instanceof ThrumError)) throw error
      expect(Object.keys(surveyWords)).toContain(error.code)
      expect(said(error.saying)).not.toBe('')
      expect(said(error.remedy)).not.toBe('')
    }
  }
  const rows = Array.from({ length: snapshot.tables.count.rows }, (_, k) => k)
  for (const kind of snapshot.kinds) {
    const set = kindSet(snapshot, kind.name)
    for (const measure of ['time', 'flower', 'area'] as const) {
      for (const { text, cure } of auditRates({ snapshot, selected: rows, kinds: [set], measure, isSnapshot: false })) {
        said(text)
        if (cure !== null) said(cure)
      }
      const data = rateData(snapshot, rows, talliesOf(snapshot, set), measure, null)
      if (data.fields.length > 0) expect(nanIn(fieldRate(data))).toBeNull()
    }
  }
  expect(factorNames(snapshot)).toBeInstanceOf(Array)
}

const full: CountRow = {
  field: 'a',
  strip: 'no',
  date: '2031-05-02',
  start: '11:00',
  minutes: 10,
  flowers: 100,
  area: 2,
  stage: 64,
  temperature: 20,
  observer: 'observer 1',
  position: 'edge',
  crop: 'cherry',
  'hives set': 'no',
  tallies: { bee: 4, fly: 1 },
}

describe('projects with hardly anything in them', () => {
  it.each<readonly [string, readonly CountRow[]]>([
    ['no counts', []],
    ['one count', [full]],
    ['one count of nothing but its field', [{ field: 'a' }]],
    ['a count of no field', [{ minutes: 10, tallies: { bee: 1 } }]],
    [
      'all zero',
      Array.from({ length: 12 }, (_, k) => ({
        ...full,
        field: `f${k % 6}`,
        strip: k % 2 === 0 ? 'no' : 'yes',
        tallies: { bee: 0, fly: 0 },
      })),
    ],
    [
      'one field',
      Array.from({ length: 8 }, (_, k) => ({ ...full, strip: k % 2 === 0 ? 'no' : 'yes', date: `2031-05-${10 + k}` })),
    ],
    ['one level', Array.from({ length: 8 }, (_, k) => ({ ...full, field: `f${k}` }))],
    [
      'no dates',
      Array.from({ length: 8 }, (_, k) => ({ ...full, field: `f${k}`, date: undefined, strip: k < 4 ? 'no' : 'yes' })),
    ],
    [
      'nobody looked for anything',
      Array.from({ length: 8 }, (_, k) => ({
        ...full,
        field: `f${k}`,
        strip: k < 4 ? 'no' : 'yes',
        tallies: { bee: null, fly: null },
      })),
    ],
    [
      'no minutes',
      Array.from({ length: 8 }, (_, k) => ({ ...full, field: `f${k}`, strip: k < 4 ? 'no' : 'yes', minutes: undefined })),
    ],
    [
      'no minutes at all in 0 minutes',
      Array.from({ length: 8 }, (_, k) => ({ ...full, field: `f${k}`, strip: k < 4 ? 'no' : 'yes', minutes: 0 })),
    ],
  ])('%s', (_, counts) => {
    askAll({ counts })
    askAll({ counts: counts.map(({ tallies: _, ...row }) => row as CountRow), kinds: [{ kind: 'bee' }, { kind: 'fly' }] })
  })
})

describe('property: any project of a few ragged counts', () => {
  const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined, freq: 3 })
  const tally = fc.oneof(
    { weight: 6, arbitrary: fc.nat({ max: 50 }) },
    { weight: 1, arbitrary: fc.constant(null) },
    { weight: 1, arbitrary: fc.constant({ number: 3, mark: 'waiting' as const }) },
  )
  const count = fc.record({
    field: maybe(fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g')),
    strip: maybe(fc.constantFrom('no', 'yes', 'half')),
    'hives set': maybe(fc.constantFrom('no', 'yes')),
    date: maybe(fc.constantFrom('2031-05-02', '2031-05-09', '2031-05-12', '2031-12-31', '2032-01-02', '2032-05-20')),
    start: maybe(fc.integer({ min: 0, max: 1439 })),
    minutes: maybe(fc.constantFrom(0, 5, 10, 30)),
    flowers: maybe(fc.constantFrom(0, 100)),
    area: maybe(fc.constantFrom(0, 2)),
    stage: maybe(fc.constantFrom(55, 61, 64.5, 69)),
    temperature: maybe(fc.constantFrom(-3, 12, 16, 25, 38)),
    observer: maybe(fc.constantFrom('observer 1', 'observer 2', 'observer 3')),
    position: maybe(fc.constantFrom('edge', 'centre')),
    crop: maybe(fc.constantFrom('cherry', 'sunflower')),
    unit: maybe(fc.constant('individuals')),
    zeros: maybe(fc.constantFrom('typed', 'not-known')),
    rain: maybe(fc.constantFrom('none', 'rain', 'who knows')),
    hives: maybe(fc.constantFrom(0, 4)),
    hiveDistance: maybe(fc.constantFrom(0, 300, 5000)),
    tallies: fc.record({ bee: tally, fly: tally }, { requiredKeys: [] }),
  })
  const project = fc.record({
    counts: fc.array(count, { maxLength: 40 }),
    fields: fc.constantFrom(
      [],
      [{ field: 'a', latitude: 40, longitude: 5 }],
      [
        { field: 'a', latitude: -40, longitude: 5 },
        { field: 'b', latitude: -40, longitude: 5 },
      ],
    ),
    hives: fc.constantFrom(
      [],
      [{ hives: 3, latitude: 40, longitude: 5, from: '2031-05-01' }],
      [{ hives: 2.5, field: 'b', metres: 20 }],
    ),
    plan: fc.constantFrom(undefined, { block: 'position' }, { block: 'slope' }),
  })

  it('is answered or refused in words, and never with a number that is none', () => {
    fc.assert(
      fc.property(project, ({ plan, ...rest }) => {
        askAll((plan === undefined ? rest : { ...rest, plan }) as Project)
      }),
      { numRuns: 150, seed: 2911 },
    )
  })
})
