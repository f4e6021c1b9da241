import { describe, expect, it } from 'vitest'
import { byGravity } from '../../src/index.ts'
import { type Asked, ask, type Seen } from '../asked.ts'
import { type Project, projectOfCounts } from '../project-of-counts.ts'
import { soundProject } from '../sound-project.ts'

const between: Asked = { between: 'strip' }
const see = (project: Project, asked: Asked = between): Seen => ask(projectOfCounts(project), asked)
const sound = soundProject()

describe('a sound design', () => {
  it('has no finding at all', () => {
    expect(see(sound).findings).toEqual([])
    expect(see(sound, { between: 'strip', against: 'fly' }).findings).toEqual([])
  })
})

describe('order', () => {
  it('the gravest first, and among equals as found', () => {
    const findings = [
      { severity: 'note', k: 1 },
      { severity: 'block', k: 2 },
      { severity: 'warn', k: 3 },
      { severity: 'block', k: 4 },
    ] as const
    expect(byGravity(findings).map(({ k }) => k)).toEqual([2, 4, 3, 1])
  })
})
