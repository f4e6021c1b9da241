import { isoDate } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { ask, inflationBy, severityOf } from '../asked.ts'
import { expectNear } from '../near.ts'
import { type CountRow, projectOfCounts } from '../project-of-counts.ts'

// Oracle: R 4.2.2, v<-function(X)solve(crossprod(X))[2,2]; v(cbind(1,arm,B,date))/v(cbind(1,arm,B)); methods 2.11. Six decimals.

const firstOfMay2031 = 22_400 // 2031-05-01 is day 22,400 of the calendar
const day = (k: number): string => isoDate(firstOfMay2031 + k - 1)

/** One watch a field; `arm` is its level. */
function fieldsWith(arms: readonly (string | number)[], columns: (k: number) => Partial<CountRow>): readonly CountRow[] {
  return arms.map((arm, k) => ({
    field: `field ${k}`,
    arm: String(arm),
    minutes: 10,
    tallies: { bee: 5 },
    ...columns(k),
  }))
}

const fourFour = [0, 0, 0, 0, 1, 1, 1, 1]
const between = { between: 'arm' }
const seenOf = (counts: readonly CountRow[], asked: Parameters<typeof ask>[1] = between) =>
  ask(projectOfCounts({ counts }), asked)

it('2031-05-01 is where these dates begin', () => {
  expect(day(1)).toBe('2031-05-01')
})

describe('inflation between fields', () => {
  it('oracle: dates that lean to one level', () => {
    const dates = [2, 4, 5, 7, 6, 8, 9, 11]
    const seen = seenOf(fieldsWith(fourFour, (k) => ({ date: day(dates[k] as number) })))
    expectNear(inflationBy(seen, 'date') ?? 0, 2.230769)
    expect(severityOf(seen, 'tangled')).toBe('note')
  })

  it('oracle: dates that lie apart block', () => {
    const dates = [1, 2, 3, 4, 8, 9, 10, 11]
    const seen = seenOf(fieldsWith(fourFour, (k) => ({ date: day(dates[k] as number) })))
    expectNear(inflationBy(seen, 'date') ?? 0, 10.8)
    expect(severityOf(seen, 'tangled')).toBe('block')
  })

  it('oracle: blocks stand in both designs; forgotten, the tangle would hide (1.004)', () => {
    const dates = [10, 12, 13, 15, 60, 63, 64, 66]
    const arms = [0, 0, 1, 1, 0, 0, 1, 1]
    const blocked = fieldsWith(arms, (k) => ({ date: day(dates[k] as number), crop: k < 4 ? 'cherry' : 'sunflower' }))
    const plain = fieldsWith(arms, (k) => ({ date: day(dates[k] as number) }))
    expectNear(inflationBy(seenOf(blocked), 'date') ?? 0, 2.988235)
    expectNear(inflationBy(seenOf(plain), 'date') ?? 0, 1.004093)
  })

  it('oracle: shares of an observer, by minutes', () => {
    // Four quarters of an hour in each field; observer 2 in some of them, once in one long watch.
    const quarters = [2, 2, 1, 0, 4, 3, 2, 1]
    const counts = quarters.flatMap((ofTwo, k) => {
      const row = { field: `field ${k}`, arm: String(fourFour[k]), tallies: { bee: 5 } }
      const whole = [
        { ...row, observer: 'observer 1', minutes: 15 * (4 - ofTwo) },
        { ...row, observer: 'observer 2', minutes: 15 * ofTwo },
      ]
      return whole.filter(({ minutes }) => minutes > 0)
    })
    expectNear(inflationBy(seenOf(counts), 'observer') ?? 0, 1.403226)
  })

  it('means of a field weigh counts by their effort', () => {
    // Field means 62 + 0, 1, 2 | 1, 2, 3: as plain means of the two watches they would all be 63.
    const shift = [0, 1, 2, 1, 2, 3]
    const counts = shift.flatMap((late, k) => {
      const row = { field: `field ${k}`, arm: String(Math.floor(k / 3)), tallies: { bee: 5 } }
      return [
        { ...row, stage: 62, minutes: 10 * (4 - late) },
        { ...row, stage: 66, minutes: 10 * late },
      ].filter(({ minutes }) => minutes > 0)
    })
    // partial R2: between sum of squares 1.5 of 5.5.
    expectNear(inflationBy(seenOf(counts), 'stage') ?? 0, 1 / (1 - 1.5 / 5.5), 1e-9)
  })

  it('of more than two levels the worst pair stands, and is named', () => {
    const stages = [62, 63, 64, 62, 63, 64, 66, 67, 68]
    const counts = fieldsWith([0, 0, 0, 1, 1, 1, 2, 2, 2], (k) => ({ stage: stages[k] as number }))
    const tangle = seenOf(counts).tangles.found.find(({ nuisances }) => nuisances.join() === 'stage')
    expect(tangle?.level).toBe(2)
    // Level 2 against level 0 alone: partial R2 = 24 of 28; the third level's own scatter lends 2 more.
    expectNear(tangle?.inflation ?? 0, 1 + 24 / 6, 1e-9)
  })

  it('a level that is a block of its own is lost', () => {
    const counts = fieldsWith([0, 0, 0, 1, 1, 1], (k) => ({ crop: k < 3 ? 'cherry' : 'sunflower' }))
    const seen = seenOf(counts)
    expect(seen.tangles.lost).toBe(true)
    expect(seen.findings[0]?.text.id).toBe('survey/audit/tangled/blocks')
    expect(seen.contrast.pairs[0]).toMatchObject({ kind: 'refused', refusal: { because: 'lost' } })
  })
})

describe('inflation before and after', () => {
  const before = [62, 63, 61, 63, 62, 64]
  const after = [66, 67, 65, 69, 68, 69]
  const rows = (crop: (k: number) => string | null, stages: (k: number, period: number) => number): readonly CountRow[] =>
    before.flatMap((_, k) =>
      [0, 1].map((period) => ({
        field: `field ${k}`,
        side: k < 3 ? 'control' : 'treated',
        crop: crop(k),
        date: day(period === 0 ? 3 : 17),
        minutes: 10,
        stage: stages(k, period),
        tallies: { bee: 5 },
      })),
    )
  const asked = { between: 'side', since: day(10) }

  it('oracle: with controls, 7.25 from the cells', () => {
    const counts = rows(
      () => null,
      (k, period) => (period === 0 ? before : after)[k] as number,
    )
    const seen = seenOf(counts, asked)
    expectNear(inflationBy(seen, 'stage') ?? 0, 7.25)
    expect(severityOf(seen, 'tangled')).toBe('warn')
  })

  it('identity: the same from the differences alone (before at one stage everywhere)', () => {
    const change = [4, 4, 4, 6, 6, 5]
    const counts = rows(
      () => null,
      (k, period) => 62 + period * (change[k] as number),
    )
    expectNear(inflationBy(seenOf(counts, asked), 'stage') ?? 0, 7.25)
  })

  it('blocks of fields are blocks of their changes: forgotten, the tangle would hide', () => {
    // Cherry moves on by 1 and 2 codes, sunflower by 7 and 8, the treated always by one more than their controls.
    const twelve = [1, 1, 1, 2, 2, 2, 7, 7, 7, 8, 8, 8.5]
    const counts = twelve.flatMap((change, k) =>
      [0, 1].map((period) => ({
        field: `field ${k}`,
        side: k % 6 < 3 ? 'control' : 'treated',
        crop: k < 6 ? 'cherry' : 'sunflower',
        date: day(period === 0 ? 3 : 17),
        minutes: 10,
        stage: 60 + period * change,
        tallies: { bee: 5 },
      })),
    )
    // R: d<-c(1,1,1,2,2,2,7,7,7,8,8,8.5); arm<-rep(c(0,0,0,1,1,1),2); B<-rep(0:1,each=6)
    //    v(cbind(1,arm,B,d))/v(cbind(1,arm,B)): 19.777778; with B left out 1.031660.
    const seen = seenOf(counts, asked)
    expectNear(inflationBy(seen, 'stage') ?? 0, 19.777778)
    expect(severityOf(seen, 'tangled')).toBe('block')
  })

  it('what both arms share misleads nobody: bloom moves on alike, and a fifth of a code between arms is even', () => {
    const counts = rows(
      () => null,
      (k, period) => 62 + period * (k < 3 ? 4 : 4.2),
    )
    expect(inflationBy(seenOf(counts, asked), 'stage')).toBeUndefined()
  })

  it('without controls, a date is always the change asked about', () => {
    const counts = rows(
      () => null,
      (k, period) => (period === 0 ? before : after)[k] as number,
    )
    const seen = seenOf(counts, { since: day(10) })
    expect(inflationBy(seen, 'date')).toBe(Number.POSITIVE_INFINITY)
    expect(severityOf(seen, 'tangled')).toBe('block')
    expect(severityOf(seen, 'no-control')).toBe('block')
  })
})

describe('inflation within fields', () => {
  /** Five counts at the edge, three of them before noon, and five in the centre, two of them before noon, in every field. */
  const counts = [0, 1, 2].flatMap((k) =>
    ['edge', 'centre'].flatMap((position, side) =>
      [0, 1, 2, 3, 4].map((visit) => ({
        field: `field ${k}`,
        position,
        minutes: 10,
        start: visit < 3 - side ? '10:55' : '14:55',
        tallies: { bee: 5 },
      })),
    ),
  )

  it('oracle: 1.041667 from the counts; cells of field and level would say infinite', () => {
    const seen = seenOf(counts, { between: 'position' })
    expect(seen.design.structure).toBe('within-fields')
    expectNear(inflationBy(seen, 'hour') ?? 0, 1.041667)
    expect(severityOf(seen, 'tangled')).toBeUndefined()
  })

  it('always the edge first is lost', () => {
    const always = counts.map((row) => ({ ...row, start: row.position === 'edge' ? '10:55' : '14:55' }))
    const seen = seenOf(always, { between: 'position' })
    expect(inflationBy(seen, 'hour')).toBe(Number.POSITIVE_INFINITY)
    expect(severityOf(seen, 'tangled')).toBe('block')
  })
})

describe('what is too even to mislead', () => {
  const levels = [0, 0, 0, 1, 1, 1]
  /** A nuisance that is wholly tangled, of a size between levels. */
  const apart = (name: string, size: number): readonly CountRow[] => {
    const at = (level: number): Partial<CountRow> => {
      if (name === 'date') return { date: day(1 + level * size) }
      if (name === 'stage') return { stage: 62 + level * size }
      if (name === 'hour') return { start: 600 + level * size * 60 }
      if (name === 'temperature') return { temperature: 20 + level * size }
      return {}
    }
    return fieldsWith(levels, (k) => at(levels[k] as number))
  }

  it.each([
    ['date', 2, 1],
    ['stage', 1, 0.9],
    ['hour', 0.5, 0.45],
    ['temperature', 1.5, 1.4],
  ])('%s: %d between levels blocks, %d is left out', (name, from, below) => {
    expect(inflationBy(seenOf(apart(name, from)), name)).toBe(Number.POSITIVE_INFINITY)
    expect(severityOf(seenOf(apart(name, from)), 'tangled')).toBe('block')
    expect(inflationBy(seenOf(apart(name, below)), name)).toBeUndefined()
    expect(severityOf(seenOf(apart(name, below)), 'tangled')).toBeUndefined()
  })

  it.each(['observer', 'season', 'position'])('%s: a share of 0.1 between levels blocks, 0.05 is left out', (name) => {
    const shares = (share: number): readonly CountRow[] =>
      levels.flatMap((level, k) =>
        [0, 1].map((word) => ({
          field: `field ${k}`,
          arm: String(level),
          [name]: `${2031 + word}`,
          minutes: 100 * (word === 0 ? 0.5 + share * level : 0.5 - share * level),
          tallies: { bee: 5 },
        })),
      )
    expect(inflationBy(seenOf(shares(0.1)), name)).toBe(Number.POSITIVE_INFINITY)
    expect(inflationBy(seenOf(shares(0.05)), name)).toBeUndefined()
  })

  it('a threshold does not hang on rounding: two days apart are two days, in arms of any size', () => {
    for (const [few, many] of [
      [3, 4],
      [3, 7],
      [5, 6],
      [4, 9],
      [6, 11],
    ] as const) {
      const arms = [...Array<number>(few).fill(0), ...Array<number>(many).fill(1)]
      const counts = fieldsWith(arms, (k) => ({ date: day(1 + 2 * (arms[k] as number)) }))
      expect(inflationBy(seenOf(counts), 'date'), `${few} and ${many}`).toBe(Number.POSITIVE_INFINITY)
    }
  })

  it('residuals after blocks count, not the spread over the year', () => {
    const counts = fieldsWith([0, 0, 1, 1, 0, 0, 1, 1], (k) => ({
      date: day(k < 4 ? 2 : 70),
      crop: k < 4 ? 'cherry' : 'sunflower',
    }))
    expect(inflationBy(seenOf(counts), 'date')).toBeUndefined()
  })
})

describe('levels that do not overlap', () => {
  /** Two fields of each level in each of two crops: 4 + 4 - 2 - 1 leaves 5 degrees of freedom. */
  const twoBlocks = (hours: readonly number[]): readonly CountRow[] =>
    [0, 0, 1, 0, 1, 1].map((arm, k) => ({
      field: `field ${k}`,
      arm: String(arm),
      crop: k < 3 ? 'cherry' : 'sunflower',
      minutes: 10,
      start: hours[k] as number,
      tallies: { bee: 5 },
    }))

  it('with three blocks of two fields a stage further on blocks: one degree of freedom would be left', () => {
    const stages = [62, 63, 61, 64, 60, 61.5]
    const counts = [0, 1, 0, 1, 0, 1].map((arm, k) => ({
      field: `field ${k}`,
      arm: String(arm),
      crop: ['apple', 'cherry', 'plum'][k >> 1],
      minutes: 10,
      stage: stages[k] as number,
      tallies: { bee: 5 },
    }))
    const seen = seenOf(counts)
    const tangle = seen.tangles.found.find(({ nuisances }) => nuisances.join() === 'stage')
    expect(tangle?.apart).toBe(true)
    expect(tangle?.inflation).toBeLessThan(10)
    expect(severityOf(seen, 'tangled')).toBe('block')
  })

  it('the same with freedom left warns', () => {
    const counts = [0, 1].flatMap((copy) =>
      [0, 1, 0, 1, 0, 1].map((arm, k) => ({
        field: `field ${copy} ${k}`,
        arm: String(arm),
        crop: ['apple', 'cherry', 'plum'][k >> 1],
        minutes: 10,
        stage: ([62, 63, 61, 64, 60, 61.5][k] as number) + copy * 0.2,
        tallies: { bee: 5 },
      })),
    )
    expect(severityOf(seenOf(counts), 'tangled')).toBe('warn')
  })

  it('hours lie apart by the hour, though the curve has two columns', () => {
    // 6 fields, 2 crops, 2 columns: 6 - 2 - 1 - 2 leaves one degree of freedom.
    const seen = seenOf(twoBlocks([600, 690, 700, 610, 660, 780]))
    const tangle = seen.tangles.found.find(({ nuisances }) => nuisances.join() === 'hour')
    expect(tangle?.columns).toBe(2)
    expect(tangle?.apart).toBe(true)
    expect(severityOf(seen, 'tangled')).toBe('block')
  })

  it('apart the one way in one block and the other way in the next is not apart', () => {
    const seen = seenOf(twoBlocks([600, 690, 700, 780, 660, 610]))
    expect(seen.tangles.found.find(({ nuisances }) => nuisances.join() === 'hour')?.apart).toBe(false)
  })
})

describe('what a question asks about is no nuisance to itself', () => {
  const counts = Array.from({ length: 24 }, (_, k) => ({
    field: `field ${k % 6}`,
    date: day(1 + 3 * (k >> 1)),
    stage: 61 + (k >> 2),
    start: 600 + 60 * (k % 4),
    temperature: 16 + (k % 5),
    season: String(2031 + (k % 2)),
    observer: `observer ${1 + ((k >> 1) % 2)}`,
    position: (k >> 2) % 2 === 0 ? 'edge' : 'centre',
    minutes: 10,
    tallies: { bee: 5 },
  }))
  const names = (asked: string): readonly string[] =>
    [...new Set(seenOf(counts, { between: asked }).tangles.found.flatMap(({ nuisances }) => nuisances))].sort()

  it.each([
    ['stage', ['date', 'stage']],
    ['month', ['date', 'stage']],
    ['daypart', ['hour', 'temperature']],
    ['season', ['date', 'season', 'temperature']],
    ['observer', ['observer']],
    ['position', ['position']],
  ])('%s', (asked, own) => {
    for (const name of own) expect(names(asked)).not.toContain(name)
    expect(names(asked).length).toBeGreaterThan(0)
  })
})

describe('date with stage', () => {
  it('identity: the pair inflates at least as much as each alone', () => {
    const dates = [2, 5, 9, 4, 8, 13]
    const stages = [61, 63, 63, 63, 64, 66]
    const counts = fieldsWith([0, 0, 0, 1, 1, 1], (k) => ({ date: day(dates[k] as number), stage: stages[k] as number }))
    const seen = seenOf(counts)
    const pair = inflationBy(seen, 'date', 'stage') ?? 0
    expect(pair).toBeGreaterThanOrEqual(inflationBy(seen, 'date') ?? 99)
    expect(pair).toBeGreaterThanOrEqual(inflationBy(seen, 'stage') ?? 99)
  })

  it('together they block where neither does alone, and only then the pair is told', () => {
    const dates = [1, 7, 4, 10]
    const stages = [66, 62, 66, 62]
    // arm = (date + 1.5 stage) up to a constant: alone each explains a little.
    const counts = [0, 1, 2].flatMap((copy) =>
      [0, 0, 1, 1].map((arm, k) => ({
        field: `field ${copy} ${k}`,
        arm: String(arm),
        date: day((dates[k] as number) + 2 * copy),
        stage: (stages[k] as number) - (4 / 3) * copy,
        minutes: 10,
        tallies: { bee: 5 },
      })),
    )
    const seen = seenOf(counts)
    expect(inflationBy(seen, 'date')).toBeLessThan(2.5)
    expect(inflationBy(seen, 'stage')).toBeLessThan(2.5)
    expect(inflationBy(seen, 'date', 'stage')).toBe(Number.POSITIVE_INFINITY)
    expect(seen.findings.filter(({ code, severity }) => code === 'tangled' && severity === 'block')).toHaveLength(1)
  })
})

describe('dates over several seasons', () => {
  it('days are told within their season: a year apart is the season, not the date', () => {
    const counts = ['2031', '2032'].flatMap((season) =>
      fieldsWith([0, 0, 0, 1, 1, 1], (k) => ({ date: `${season}-05-0${1 + (k % 3) * 2}`, season })),
    )
    const seen = seenOf(counts)
    expectNear(inflationBy(seen, 'date') ?? 0, 1, 1e-9)
  })

  it('a season that runs over New Year is one run of days', () => {
    const dates = ['2031-12-29', '2031-12-31', '2032-01-02', '2031-12-30', '2032-01-01', '2032-01-03']
    const counts = fieldsWith([0, 0, 0, 1, 1, 1], (k) => ({ date: dates[k] as string, season: '2031' }))
    // Days 0, 2, 4 against 1, 3, 5: partial R2 1.5 of 17.5.
    expectNear(inflationBy(seenOf(counts), 'date') ?? 0, 1 / (1 - 1.5 / 17.5), 1e-9)
  })
})

describe('what could not be checked', () => {
  it('a field without the nuisance leaves it unchecked, and says so', () => {
    const counts = fieldsWith([0, 0, 0, 1, 1, 1], (k) => (k === 0 ? {} : { temperature: 18 + k, date: day(k) }))
    const seen = seenOf(counts)
    expect(seen.tangles.unchecked).toContain('temperature')
    expect(seen.tangles.unchecked).toContain('stage')
    expect(severityOf(seen, 'not-checked')).toBe('note')
  })
})
