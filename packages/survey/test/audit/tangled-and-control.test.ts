import { describe, expect, it } from 'vitest'
import { isBlocked } from '../../src/index.ts'
import { type Asked, ask, type Seen, severityOf } from '../asked.ts'
import { type Project, projectOfCounts } from '../project-of-counts.ts'
import { said } from '../said.ts'
import { changed, dayOf, soundProject } from '../sound-project.ts'

const between: Asked = { between: 'strip' }
const see = (project: Project, asked: Asked = between): Seen => ask(projectOfCounts(project), asked)
const grade = (project: Project, code: string, asked: Asked = between) => severityOf(see(project, asked), code)
const sound = soundProject()
const isStrip = (row: { readonly [column: string]: unknown }): boolean => row.strip === 'yes'

describe('tangled', () => {
  it('note, warn and block, each with its words', () => {
    // Six fields a level at 63, 65, 67, 63, 65, 67, one level so many codes further on: partial R2 3 d2 / (3 d2 + 32).
    const further = (codes: number) =>
      see(changed(soundProject({ visits: 1 }), (row, k) => ({ stage: 63 + (k % 3) * 2 + (isStrip(row) ? codes : 0) })))
    const [little, note, warn, block] = [2, 3, 5, 12].map(further) as [Seen, Seen, Seen, Seen]
    expect(severityOf(little, 'tangled')).toBeUndefined()
    expect([note, warn, block].map((seen) => severityOf(seen, 'tangled'))).toEqual(['note', 'warn', 'block'])
    expect(said(warn.findings.find(({ code }) => code === 'tangled')?.text ?? { id: '', values: {} })).toMatch(
      /^bloom stage is partly tangled with no against yes \(bloom stage 65\.0 against 70\.0\): .* 3\.3 times less sure/u,
    )
  })

  it('a lost one says that no analysis can tell, with the days', () => {
    const [finding] = see(changed(sound, (row) => (isStrip(row) ? { date: dayOf(40) } : { date: dayOf(1) }))).findings
    expect(finding?.severity).toBe('block')
    expect(said(finding?.text ?? { id: '', values: {} })).toBe(
      'no and yes differ in date in the same way everywhere (date 2031-05-06 against 2031-06-14). What is seen may be the one or the other, and no analysis of these counts can tell which.',
    )
    expect(said(finding?.cure ?? { id: '', values: {} })).toBe('Visit fields of every level on the same days.')
  })

  it.each(['date', 'stage', 'hour', 'temperature', 'observer'])('%s can at most warn of a relative count', (name) => {
    const far = { date: dayOf(40), stage: 67, start: '10:30', temperature: 26, observer: 'observer 1' }
    const near = { date: dayOf(0), stage: 62, start: '14:30', temperature: 18, observer: 'observer 2' }
    const project = changed(sound, (row) => ({
      [name === 'hour' ? 'start' : name]: (isStrip(row) ? far : near)[name === 'hour' ? 'start' : (name as 'date')],
    }))
    expect(isBlocked(see(project).findings)).toBe(true)
    expect(isBlocked(see(project, { between: 'strip', against: 'fly' }).findings)).toBe(false)
    expect(grade(project, 'tangled', { between: 'strip', against: 'fly' })).toBe('warn')
  })
})

describe('before and after', () => {
  const since: Asked = { since: dayOf(5) }

  it('without control blocks, since the date is the change; of a relative count it warns', () => {
    expect(grade(sound, 'no-control', since)).toBe('block')
    expect(grade(sound, 'no-control', { ...since, against: 'fly' })).toBe('warn')
  })

  it('with control has no such finding, and days are no nuisance', () => {
    const seen = see(sound, { between: 'strip', since: dayOf(5) })
    expect(seen.design.structure).toBe('before-after-control')
    expect(seen.findings).toEqual([])
  })

  it('a treated side that moved on further in bloom is told as a change', () => {
    const project = changed(sound, (row, k) => ({
      stage: (row.date as string) < dayOf(5) ? 62 : isStrip(row) ? 66 + (k % 2) : 63 + (k % 2),
    }))
    const seen = see(project, { between: 'strip', since: dayOf(5) })
    const tangled = seen.findings.find(({ code }) => code === 'tangled')
    expect(said(tangled?.text ?? { id: '', values: {} })).toContain('further by 1.5 codes against further by 4.5 codes')
    expect(said(tangled?.cure ?? { id: '', values: {} })).toBe(
      'Visit changed and unchanged fields on the same days, before and after.',
    )
  })
})
