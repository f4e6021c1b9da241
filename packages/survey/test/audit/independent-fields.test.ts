import { describe, expect, it } from 'vitest'
import { type Asked, ask, type Seen, severityOf } from '../asked.ts'
import { type Project, projectOfCounts } from '../project-of-counts.ts'
import { said } from '../said.ts'
import { dayOf, northOf, soundProject } from '../sound-project.ts'

const between: Asked = { between: 'strip' }
const see = (project: Project, asked: Asked = between): Seen => ask(projectOfCounts(project), asked)
const grade = (project: Project, code: string, asked: Asked = between) => severityOf(see(project, asked), code)
const sound = soundProject()
const isStrip = (row: { readonly [column: string]: unknown }): boolean => row.strip === 'yes'

describe('not replicated', () => {
  it.each([
    [2, 'block'],
    [3, 'warn'],
    [5, 'warn'],
    [6, undefined],
  ])('%d fields a level: %s', (arm, severity) => {
    expect(grade(soundProject({ arm }), 'not-replicated')).toBe(severity)
  })

  it.each([
    [1, 'block'],
    [2, 'block'],
    [3, 'warn'],
    [5, 'warn'],
    [6, undefined],
  ])('%d fields that hold both: %s', (fields, severity) => {
    const project = soundProject({ arm: fields })
    const within = {
      ...project,
      counts: project.counts.slice(0, 4 * fields).map((row, k) => ({ ...row, strip: k % 4 < 2 ? 'no' : 'yes' })),
    }
    expect(grade(within, 'not-replicated')).toBe(severity)
  })

  it('the fewest fields decide, and the cure says how many more of what', () => {
    const project = soundProject({ arm: 6 })
    const lopsided = {
      ...project,
      counts: project.counts.filter((row) => !isStrip(row) || row.field === 'field 6' || row.field === 'field 7'),
    }
    const finding = see(lopsided).findings.find(({ code }) => code === 'not-replicated')
    expect(finding?.severity).toBe('block')
    expect(said(finding?.text ?? { id: '', values: {} })).toContain('6 with no, 2 with yes')
    expect(said(finding?.cure ?? { id: '', values: {} })).toBe('More fields: one with yes.')
  })

  it('is not softened for a relative count', () => {
    expect(grade(soundProject({ arm: 2 }), 'not-replicated', { between: 'strip', against: 'fly' })).toBe('block')
  })
})

describe('same bees in fields of different levels', () => {
  /** Levels alternate along a line, so that neighbours differ. */
  const spaced = (metres: number): Project => {
    const project = soundProject()
    return {
      ...project,
      fields: (project.fields ?? []).map(({ field }, k) => ({
        field,
        ...northOf(k < 6 ? 20_000 * k : 20_000 * (k - 6) + metres),
      })),
      kinds: [
        { kind: 'bee', group: 'bumble bee' },
        { kind: 'fly', group: 'hover fly' },
        { kind: 'hive bee', group: 'honey bee' },
      ],
    }
  }
  it.each([
    ['fly', 249, 'block'],
    ['fly', 251, 'warn'],
    ['fly', 299, 'warn'],
    ['fly', 301, undefined],
    ['bee', 249, 'block'],
    ['bee', 999, 'warn'],
    ['bee', 1001, undefined],
    ['hive bee', 249, 'block'],
    ['hive bee', 2999, 'warn'],
    ['hive bee', 3001, undefined],
  ])('%s, %d m: %s', (kind, metres, severity) => {
    expect(grade(spaced(metres), 'same-bees-fields', { between: 'strip', kind })).toBe(severity)
  })

  it('of two kinds the further flier decides; a relative count is not spared', () => {
    expect(grade(spaced(999), 'same-bees-fields', { between: 'strip', kind: 'fly', against: 'bee' })).toBe('warn')
    expect(grade(spaced(200), 'same-bees-fields', { between: 'strip', kind: 'fly', against: 'bee' })).toBe('block')
  })

  it('fields of one level may lie side by side', () => {
    const project = soundProject()
    const fields = (project.fields ?? []).map(({ field }, k) => ({ field, ...northOf(k < 6 ? 10 * k : 50_000 + 10 * k) }))
    expect(grade({ ...project, fields }, 'same-bees-fields')).toBeUndefined()
  })

  it('distance is from edge to edge where outlines are known', () => {
    const square = (north: number) => {
      const { latitude, longitude } = northOf(north)
      const side = 0.001
      return [
        [longitude, latitude],
        [longitude + side, latitude],
        [longitude + side, latitude + side],
        [longitude, latitude + side],
      ] as [number, number][]
    }
    // 0.001 degrees are 111 m: outlines that begin 350 m apart leave 239 m between them.
    const outlined = (metres: number): Project => {
      const project = spaced(metres)
      return {
        ...project,
        fields: (project.fields ?? []).map(({ field }, k) => ({
          field,
          polygon: square(k < 6 ? 20_000 * k : 20_000 * (k - 6) + metres),
        })),
      }
    }
    expect(grade(outlined(350), 'same-bees-fields')).toBe('block')
    expect(grade(outlined(370), 'same-bees-fields')).toBe('warn')
  })

  it('unknown places warn', () => {
    const project = { ...sound, fields: (sound.fields ?? []).slice(1) }
    expect(grade(project, 'places-unknown')).toBe('warn')
    expect(grade({ ...sound, fields: [] }, 'same-bees-fields')).toBeUndefined()
  })

  it('is no question within fields', () => {
    expect(grade({ ...sound, fields: [] }, 'places-unknown', { between: 'daypart' })).toBeUndefined()
  })
})

describe('hives just moved', () => {
  it.each([
    [3, 'warn'],
    [4, undefined],
  ])('%d days before the first count: %s', (days, severity) => {
    const project = { ...sound, hives: [{ hives: 4, field: 'field 2', metres: 50, from: dayOf(-days) }] }
    expect(grade(project, 'hives-just-moved')).toBe(severity)
  })

  it('at another field, or after the counts, is nothing', () => {
    const placed = (field: string, from: string) => ({ ...sound, hives: [{ hives: 4, field, metres: 50, from }] })
    expect(grade(placed('far away', dayOf(8)), 'hives-just-moved')).toBeUndefined()
    expect(grade(placed('field 2', dayOf(10)), 'hives-just-moved')).toBeUndefined()
  })
})
