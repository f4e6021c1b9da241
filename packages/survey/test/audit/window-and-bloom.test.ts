import { describe, expect, it } from 'vitest'
import { stagesApart } from '../../src/index.ts'
import { type Asked, ask, type Seen, severityOf } from '../asked.ts'
import { type Project, projectOfCounts } from '../project-of-counts.ts'
import { said } from '../said.ts'
import { changed, soundProject } from '../sound-project.ts'

const between: Asked = { between: 'strip' }
const see = (project: Project, asked: Asked = between): Seen => ask(projectOfCounts(project), asked)
const grade = (project: Project, code: string, asked: Asked = between) => severityOf(see(project, asked), code)
const sound = soundProject()
const isStrip = (row: { readonly [column: string]: unknown }): boolean => row.strip === 'yes'

describe('outside the window', () => {
  const rained = (where: (row: { readonly [column: string]: unknown }, k: number) => boolean) =>
    changed(sound, (row, k) => (where(row, k) ? { rain: 'rain' } : {}))

  it('some counts are left out with a warning; asked for all, they stay in', () => {
    const seen = see(rained((_, k) => k === 5))
    expect(severityOf(seen, 'outside-window')).toBe('warn')
    expect(seen.design.rows.length).toBe(sound.counts.length - 1)
    const all = see(
      rained((_, k) => k === 5),
      { between: 'strip', window: 'all' },
    )
    expect(severityOf(all, 'outside-window')).toBeUndefined()
    expect(all.design.rows.length).toBe(sound.counts.length)
  })

  it('all counts of one level block, and of a relative count too', () => {
    expect(grade(rained(isStrip), 'outside-window')).toBe('block')
    expect(grade(rained(isStrip), 'outside-window', { between: 'strip', against: 'fly' })).toBe('block')
  })

  it('a level that is empty for another reason is not told as outside', () => {
    const project = changed(sound, (row, k) => (isStrip(row) ? { minutes: undefined } : k === 5 ? { rain: 'rain' } : {}))
    const seen = see(project)
    expect(severityOf(seen, 'outside-window')).toBe('warn')
    const turned = changed(sound, (row, k) => (isStrip(row) ? { rain: 'rain' } : k === 5 ? { minutes: undefined } : {}))
    expect(see(turned).findings.map(({ text }) => text.id)).not.toContain('survey/audit/level-without-effort/time')
  })
})

describe('bloom', () => {
  const staged = (no: number, yes: number) =>
    changed(sound, (row, k) => ({ stage: (isStrip(row) ? yes : no) + (k % 2 === 0 ? 1 : -1) }))
  const apart = (project: Project, adjusted: readonly string[], asked = between) => {
    const seen = see(project, asked)
    const input = {
      ...seen,
      snapshot: projectOfCounts(project),
      selected: [],
      kinds: [],
      worth: 1.5,
      relative: asked.against !== undefined,
    }
    return stagesApart(input, adjusted)
  }

  it('levels four codes apart may be compared, further ones only with the stage in', () => {
    expect(apart(staged(62, 66), [])).toEqual([])
    const [finding] = apart(staged(62, 66.1), [])
    expect(finding?.severity).toBe('block')
    expect(said(finding?.text ?? { id: '', values: {} })).toContain('from 62.0 to 66.1')
    expect(apart(staged(62, 66.1), ['stage'])).toEqual([])
    expect(apart(staged(62, 66.1), [], { between: 'strip', against: 'fly' })[0]?.severity).toBe('warn')
  })

  it.each([
    [59, 'warn'],
    [60, 'warn'],
    [61, undefined],
    [67, undefined],
    [68, 'warn'],
    [70, 'warn'],
  ])('stage %d: %s', (stage, severity) => {
    expect(
      grade(
        changed(sound, () => ({ stage })),
        'outside-bloom',
      ),
    ).toBe(severity)
  })
})
