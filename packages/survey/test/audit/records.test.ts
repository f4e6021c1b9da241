import { amended, makeFact } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { auditRates, kindSet } from '../../src/index.ts'
import { type Asked, ask, type Seen, severityOf } from '../asked.ts'
import { countBatch, type Project, projectOfCounts } from '../project-of-counts.ts'
import { said } from '../said.ts'
import { changed, soundProject } from '../sound-project.ts'

const between: Asked = { between: 'strip' }
const see = (project: Project, asked: Asked = between): Seen => ask(projectOfCounts(project), asked)
const grade = (project: Project, code: string, asked: Asked = between) => severityOf(see(project, asked), code)
const sound = soundProject()
const isStrip = (row: { readonly [column: string]: unknown }): boolean => row.strip === 'yes'

describe('one observer per level', () => {
  /** Of ten visits to each level, so many by the other level's observer. */
  const exchanged = (visits: number) => {
    const project = soundProject({ arm: 6, visits: 5 })
    return changed(project, (row, k) => {
      const place = k % 30
      const own = isStrip(row) ? 'observer 2' : 'observer 1'
      const other = isStrip(row) ? 'observer 1' : 'observer 2'
      return { observer: place < visits ? other : own }
    })
  }
  it.each([
    [0, 'block'],
    [5, 'block'],
    [6, 'warn'],
    [9, 'warn'],
    [10, undefined],
    [15, undefined],
  ])('%d of 30 visits exchanged: %s', (visits, severity) => {
    expect(grade(exchanged(visits), 'one-observer-per-level')).toBe(severity)
  })

  it('at most warns of a relative count, and is no question between observers', () => {
    expect(grade(exchanged(0), 'one-observer-per-level', { between: 'strip', against: 'fly' })).toBe('warn')
    expect(grade(exchanged(0), 'one-observer-per-level', { between: 'observer' })).toBeUndefined()
  })
})

describe('records', () => {
  it('busy watches warn above 30 of a kind in ten minutes, contacts do not', () => {
    const busy = (bee: number, unit = 'individuals') =>
      changed(sound, (row, k) => ({ unit, ...(k === 5 ? { tallies: { ...row.tallies, bee } } : {}) }))
    expect(grade(busy(30), 'saturated-counts')).toBeUndefined()
    expect(grade(busy(31), 'saturated-counts')).toBe('warn')
    expect(grade(busy(31, 'visits'), 'saturated-counts')).toBeUndefined()
  })

  it('cells that wait, and kinds not looked for, are noted', () => {
    const waiting = changed(sound, (row, k) =>
      k === 5 ? { tallies: { ...row.tallies, bee: { number: 7, mark: 'waiting' as const } } } : {},
    )
    expect(grade(waiting, 'waiting')).toBe('note')
    expect(grade(waiting, 'not-looked-for')).toBe('note')
    const absent = changed(sound, (_, k) => (k === 5 ? { tallies: { fly: 2 } } : {}))
    expect(grade(absent, 'waiting')).toBeUndefined()
    expect(grade(absent, 'not-looked-for')).toBe('note')
  })

  it('nuisances nobody recorded are noted, and that a season is more than a year', () => {
    expect(
      grade(
        changed(sound, (_, k) => (k === 0 ? { stage: undefined } : {})),
        'not-checked',
      ),
    ).toBeUndefined()
    expect(
      grade(
        changed(sound, (row) => (row.field === 'field 0' ? { stage: undefined } : {})),
        'not-checked',
      ),
    ).toBe('note')
    const seasons = changed(sound, (_, k) => ({ season: String(2031 + (k % 2)) }))
    expect(grade(seasons, 'everything-differed', { between: 'season' })).toBe('note')
    expect(grade(sound, 'everything-differed', { between: 'month' })).toBe('note')
  })

  it('corrections that contradict each other, and records of a newer version, warn', () => {
    const project: Project = {
      ...sound,
      more: (author) => {
        const fix = (to: number) =>
          makeFact(
            amended,
            { of: `${countBatch}#3`, column: 'minutes', after: null, from: 10, to, reason: 'read off the sheet' },
            author,
          )
        const newer = makeFact(amended, { of: 'x', column: 'y', after: null, from: 1, to: 2, reason: 'later' }, author)
        return [fix(11), fix(12), { ...newer, v: 99 }]
      },
    }
    expect(grade(project, 'two-corrections')).toBe('warn')
    expect(grade(project, 'records-unread')).toBe('warn')
  })
})

describe('the audit of plain rates', () => {
  it('finds what is wrong with counts, not with levels', () => {
    const snapshot = projectOfCounts(
      changed(sound, (row, k) => ({
        minutes: k === 0 ? undefined : k === 1 ? 30 : 10,
        flowers: k === 2 ? undefined : 200,
        zeros: k === 3 ? 'not-known' : 'typed',
        tallies: k === 4 ? { fly: 1 } : k === 5 ? { ...row.tallies, bee: 40 } : (row.tallies ?? {}),
      })),
    )
    const selected = Array.from({ length: snapshot.tables.count.rows }, (_, k) => k)
    const findings = auditRates({ snapshot, selected, kinds: [kindSet(snapshot, 'bee')], measure: 'flower', isSnapshot: false })
    expect(findings.map(({ code, severity }) => `${severity} ${code}`)).toEqual([
      'block zeros-missing',
      'warn effort-unknown',
      'warn durations-differ',
      'warn flowers-not-counted',
      'warn saturated-counts',
      'note not-looked-for',
    ])
    for (const { text, cure } of findings) expect([said(text), cure === null ? '' : said(cure)]).toBeDefined()
  })
})
