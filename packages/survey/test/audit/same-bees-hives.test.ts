import { describe, expect, it } from 'vitest'
import { type Asked, ask, severityOf } from '../asked.ts'
import { expectNear } from '../near.ts'
import { type CountRow, type Project, projectOfCounts } from '../project-of-counts.ts'
import { said } from '../said.ts'
import { northOf } from '../sound-project.ts'

// Oracle: R, E<-function(h,d,a)sum(h*exp(-d/a)); methods 6.2.

const groups = {
  'treated 1': [
    [10, 50],
    [4, 900],
  ],
  'treated 2': [
    [8, 120],
    [4, 1400],
  ],
  'control 1': [
    [10, 1500],
    [8, 1800],
    [4, 700],
  ],
  'control 2': [
    [10, 2600],
    [8, 2200],
    [4, 1900],
  ],
} as const

const dateIn = { spring: '2031-05-10', summer: '2031-07-10', autumn: '2031-09-10' }
type Season = keyof typeof dateIn

function besideHives(season: Season): Project {
  return {
    counts: Object.keys(groups).flatMap((field) =>
      [10, 20].map((minutes) => ({
        field,
        'hives set': field.startsWith('treated') ? 'yes' : 'no',
        date: dateIn[season],
        minutes,
        tallies: { bee: 5 },
      })),
    ),
    hives: Object.entries(groups).flatMap(([field, list]) => list.map(([hives, metres]) => ({ hives, field, metres }))),
  }
}

const finding = (project: Project, asked: Asked, code = 'same-bees-hives') =>
  ask(projectOfCounts(project), asked).findings.find((found) => found.code === code)

describe('hives on one side', () => {
  const asked = (worth: number): Asked => ({ between: 'hives set', worth })

  it.each([
    ['spring', 2, undefined],
    ['autumn', 2, 'warn'],
    ['summer', 2, 'warn'],
    ['summer', 2.2, 'warn'],
    ['summer', 2.5, 'block'],
  ] as const)('oracle: in %s, worth %d: %s', (season, worth, severity) => {
    expect(finding(besideHives(season), asked(worth))?.severity).toBe(severity)
  })

  it.each([
    ['autumn', 19.5821],
    ['summer', 44.571],
  ] as const)('oracle: the share of exposure that reaches the control, %s', (season, percent) => {
    const found = finding(besideHives(season), asked(2))
    // Half the last printed digit of the handbook's ratio.
    expectNear(found?.text.values.percent as number, percent, 5e-5)
  })

  it('hangs on the range, whatever the season: in spring the sides are separate, in summer not', () => {
    const found = finding(besideHives('spring'), asked(2.5), 'hangs-on-range')
    expect(found?.severity).toBe('warn')
    expect(said(found?.text ?? { id: '', values: {} })).toBe(
      'This hangs on how far the bees fly (nearest hives at 700 m and 50 m): with their range of spring the sides are separate, of summer they are worked by the same bees, of autumn they share some bees.',
    )
  })

  it('is the same for a relative count: exposure does not cancel', () => {
    const project = besideHives('summer')
    const both = { ...project, counts: project.counts.map((row) => ({ ...row, tallies: { bee: 5, fly: 2 } })) }
    expect(finding(both, { ...asked(2.5), against: 'fly' })?.severity).toBe('block')
  })

  it('a question that is not about hives has none', () => {
    const project = besideHives('summer')
    const renamed = project.counts.map(({ 'hives set': strip, ...row }) => ({ ...row, strip }) as CountRow)
    expect(finding({ ...project, counts: renamed }, { between: 'strip', worth: 2.5 })).toBeUndefined()
  })

  it('hives nobody looked for warn, without a ratio', () => {
    expect(finding({ counts: besideHives('summer').counts }, asked(2), 'hives-unknown')?.severity).toBe('warn')
  })

  it('a control where people looked and found none is its own', () => {
    const project = besideHives('summer')
    const looked: Project = {
      ...project,
      hives: (project.hives ?? []).filter(({ field }) => field?.startsWith('treated')),
      hivesLookedFor: ['control 1', 'control 2'].map((field) => ({ field, result: 'none found' })),
    }
    const seen = ask(projectOfCounts(looked), asked(2))
    expect(severityOf(seen, 'same-bees-hives')).toBeUndefined()
    expect(severityOf(seen, 'hives-unknown')).toBeUndefined()
  })

  it('hives given by a point reach every field by its distance', () => {
    const project: Project = {
      counts: besideHives('summer').counts,
      fields: Object.keys(groups).map((field, k) => ({ field, ...northOf([50, 60, 1878, 1888][k] as number) })),
      hives: [{ hives: 10, ...northOf(0) }],
    }
    // exp(-1828 / 1078) = 0.1835: both sides lie 10 m further each.
    expectNear(finding(project, asked(2))?.text.values.percent as number, 18.35, 0.05)
  })

  it('of several levels the worst pair decides', () => {
    const project: Project = {
      counts: [2000, 2000, 2000, 1400, 1400, 1400, 1990, 1990, 1990].map((metres, k) => ({
        field: `field ${k}`,
        'hives set': ['a none', 'b far', 'c farther'][Math.floor(k / 3)],
        date: dateIn.spring,
        minutes: 10,
        hives: 10,
        hiveDistance: metres,
        tallies: { bee: 5 },
      })),
    }
    // Against the first level exposure differs 11-fold (b) and 1.04-fold (c).
    expect(finding(project, asked(2))?.severity).toBe('block')
  })
})

describe('hives moved between before and after', () => {
  const moved = (season: Season, from: number, to: number): Project => ({
    counts: [0, 1, 2, 3].flatMap((k) =>
      [0, 1].map((period) => ({
        field: `field ${k}`,
        date: `${dateIn[season].slice(0, 8)}${period === 0 ? '02' : '20'}`,
        minutes: period === 0 ? 10 : 15 + k,
        hives: 10,
        hiveDistance: period === 0 ? from : to,
        tallies: { bee: 5 },
      })),
    ),
  })
  const asked = (season: Season, worth: number): Asked => ({ since: `${dateIn[season].slice(0, 8)}11`, worth })

  it.each([
    ['spring', 2, 3.242908, 'warn'],
    ['spring', 3, 3.242908, 'warn'],
    ['spring', 4, 3.242908, 'block'],
    ['summer', 2, 1.308677, 'block'],
    ['summer', 1.25, 1.308677, 'warn'],
    ['autumn', 2, 1.576019, 'block'],
  ] as const)('oracle: from 300 to 10 m in %s, worth %d: %d-fold, %s', (season, worth, fold, severity) => {
    const found = finding(moved(season, 300, 10), asked(season, worth))
    expect(found?.severity).toBe(severity)
    expectNear(found?.text.values.fold as number, fold)
  })

  it('says how far, and how little exposure changes', () => {
    const found = finding(moved('summer', 300, 10), asked('summer', 2))
    expect(said(found?.text ?? { id: '', values: {} })).toContain('The hives moved from 300 m to 10 m.')
    expect(said(found?.text ?? { id: '', values: {} })).toContain('changes only 1.3-fold')
    expect(finding(moved('summer', 300, 10), asked('summer', 2), 'hangs-on-range')?.severity).toBe('warn')
  })

  it('the same by placements from and to a day', () => {
    const project: Project = {
      counts: moved('summer', 1, 1).counts.map(({ hives, hiveDistance, ...row }) => row as CountRow),
      hives: [0, 1, 2, 3].flatMap((k) => [
        { hives: 10, field: `field ${k}`, metres: 300, to: '2031-07-10' },
        { hives: 10, field: `field ${k}`, metres: 10, from: '2031-07-11' },
      ]),
    }
    expectNear(finding(project, asked('summer', 2))?.text.values.fold as number, 1.308677)
  })

  it('hives that stayed where they were are no move, whatever the minutes', () => {
    const seen = ask(projectOfCounts(moved('summer', 300, 300)), asked('summer', 2))
    expect(severityOf(seen, 'same-bees-hives')).toBeUndefined()
    expect(severityOf(seen, 'hangs-on-range')).toBeUndefined()
  })

  it('nor are they a move when the bees begin to fly further: May before, June after', () => {
    const project = moved('spring', 300, 300)
    const counts = project.counts.map((row, k) => ({ ...row, date: k % 2 === 0 ? '2031-05-25' : '2031-06-05' }))
    const seen = ask(projectOfCounts({ ...project, counts }), { since: '2031-06-01', worth: 2 })
    expect(severityOf(seen, 'same-bees-hives')).toBeUndefined()
  })

  it('hives taken away altogether are a contrast', () => {
    const project: Project = {
      counts: moved('summer', 1, 1).counts.map(({ hives, hiveDistance, ...row }) => row as CountRow),
      hives: [0, 1, 2, 3].map((k) => ({ hives: 10, field: `field ${k}`, metres: 100, to: '2031-07-10' })),
      hivesLookedFor: [0, 1, 2, 3].map((k) => ({ field: `field ${k}`, result: 'none found', from: '2031-07-11' })),
    }
    const seen = ask(projectOfCounts(project), asked('summer', 2))
    expect(severityOf(seen, 'same-bees-hives')).toBeUndefined()
    expect(severityOf(seen, 'hives-unknown')).toBeUndefined()
  })
})
