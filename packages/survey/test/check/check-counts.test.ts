import { describe, expect, it } from 'vitest'
import { checkCounts } from '../../src/index.ts'
import { type Project, projectOfCounts } from '../project-of-counts.ts'
import { said } from '../said.ts'
import { changed, soundProject } from '../sound-project.ts'

const sound = soundProject()

/** Codes of what the check finds, every sentence spoken. */
function found(project: Project): readonly string[] {
  return checkCounts(projectOfCounts(project)).map(({ code, severity, text, cure }) => {
    said(text)
    if (cure !== null) said(cure)
    return `${severity} ${code}`
  })
}

describe('check of what was counted', () => {
  it('has nothing to say of counts that are whole', () => {
    expect(found(sound)).toEqual([])
  })

  it.each<readonly [string, { readonly [column: string]: unknown }]>([
    ['warn no-field', { field: undefined }],
    ['warn no-date', { date: undefined }],
    ['note no-stage', { stage: undefined }],
    ['note no-flowers', { flowers: undefined }],
    ['note no-weather', { temperature: undefined, wind: undefined }],
    ['block impossible-times', { end: 500 }],
    ['note unit-not-said', { unit: undefined }],
    ['warn effort-unknown', { minutes: undefined }],
    ['block zeros-missing', { zeros: 'not-known' }],
    ['warn durations-differ', { minutes: 30 }],
    ['warn saturated-counts', { tallies: { bee: 31, fly: 0 } }],
    ['warn cells-waiting', { tallies: { bee: { number: 3, mark: 'waiting' }, fly: 0 } }],
  ])('%s', (expected, change) => {
    expect(found(changed(sound, (_, k) => (k === 5 ? change : {})))).toEqual([expected])
  })

  it('a watch entered twice', () => {
    expect(found({ ...sound, counts: [...sound.counts, ...sound.counts.slice(0, 1)] })).toEqual(['warn entered-twice'])
  })

  it('a field without a place', () => {
    expect(found({ ...sound, fields: (sound.fields ?? []).slice(1) })).toEqual(['note no-place'])
  })

  it('nothing counted', () => {
    expect(found({ counts: [] })).toEqual(['block no-counts'])
  })

  it('scans have no minutes to lack', () => {
    expect(found(changed(sound, () => ({ unit: 'snapshot', minutes: undefined })))).toEqual([])
  })
})
