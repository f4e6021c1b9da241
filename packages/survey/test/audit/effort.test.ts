import { describe, expect, it } from 'vitest'
import { isBlocked } from '../../src/index.ts'
import { type Asked, ask, type Seen, severityOf } from '../asked.ts'
import { type Project, projectOfCounts } from '../project-of-counts.ts'
import { said } from '../said.ts'
import { changed, soundProject } from '../sound-project.ts'

const between: Asked = { between: 'strip' }
const see = (project: Project, asked: Asked = between): Seen => ask(projectOfCounts(project), asked)
const grade = (project: Project, code: string, asked: Asked = between) => severityOf(see(project, asked), code)
const sound = soundProject()
const isStrip = (row: { readonly [column: string]: unknown }): boolean => row.strip === 'yes'

describe('effort', () => {
  const without = (column: string, where: (k: number) => boolean) =>
    changed(sound, (_, k) => (where(k) ? { [column]: undefined } : {}))

  it('minutes unknown in some counts warn, in all block; a relative count needs none', () => {
    expect(
      grade(
        without('minutes', (k) => k === 5),
        'effort-unknown',
      ),
    ).toBe('warn')
    expect(
      grade(
        without('minutes', () => true),
        'effort-unknown',
      ),
    ).toBe('block')
    const design = see(
      without('minutes', (k) => k === 5),
      { between: 'strip', against: 'fly' },
    )
    expect(severityOf(design, 'effort-unknown')).toBeUndefined()
  })

  it('a level all of whose counts lack it blocks, and is named', () => {
    const seen = see(changed(sound, (row) => (isStrip(row) ? { minutes: undefined } : {})))
    const [finding] = seen.findings.filter(({ severity }) => severity === 'block' && true)
    expect(seen.findings.map(({ code }) => code)).toContain('effort-unknown')
    expect(seen.findings.some(({ text }) => said(text) === 'No count with yes has its watched minutes recorded.')).toBe(true)
    expect(finding).toBeDefined()
  })

  it.each([
    [15, undefined],
    [15.1, 'warn'],
  ])('watches of 10 and %d minutes: %s', (longest, severity) => {
    expect(
      grade(
        changed(sound, (_, k) => (k === 7 ? { minutes: longest } : {})),
        'durations-differ',
      ),
    ).toBe(severity)
  })

  it('snapshots have no minutes to lack', () => {
    const scans = changed(sound, () => ({ unit: 'snapshot', minutes: undefined }))
    expect(see(scans).findings).toEqual([])
  })

  it.each([
    ['flower', 'flowers', 'flowers-not-counted'],
    ['area', 'area', 'area-unknown'],
  ] as const)('per %s: some counts without warn, all block, and per time it is no matter', (measure, column, code) => {
    const asked: Asked = { between: 'strip', measure }
    expect(
      grade(
        without(column, (k) => k === 5),
        code,
        asked,
      ),
    ).toBe('warn')
    expect(
      grade(
        without(column, () => true),
        code,
        asked,
      ),
    ).toBe('block')
    expect(
      grade(
        without(column, () => true),
        code,
      ),
    ).toBeUndefined()
    expect(grade(sound, code, asked)).toBeUndefined()
    const lacking = changed(sound, (row) => (isStrip(row) ? { [column]: undefined } : {}))
    expect(isBlocked(see(lacking, asked).findings)).toBe(true)
  })

  it('counts with no open flower are noted per flower', () => {
    const seen = see(
      changed(sound, (_, k) => (k === 5 ? { flowers: 0 } : {})),
      { between: 'strip', measure: 'flower' },
    )
    expect(severityOf(seen, 'no-open-flowers')).toBe('note')
  })
})

describe('zeros missing', () => {
  const unsure = changed(sound, (_, k) => (k < 4 ? { zeros: 'not-known' } : {}))
  it('block a rate and a relative count alike (methods 2.9a: zeros stay as they are)', () => {
    expect(grade(unsure, 'zeros-missing')).toBe('block')
    expect(grade(unsure, 'zeros-missing', { between: 'strip', against: 'fly' })).toBe('block')
    expect(
      grade(
        changed(sound, () => ({ zeros: 'none-seen' })),
        'zeros-missing',
      ),
    ).toBeUndefined()
  })
})
