import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type Asked, ask } from '../asked.ts'
import { projectOfCounts } from '../project-of-counts.ts'
import { changed, dayOf, soundProject } from '../sound-project.ts'

/** Findings that may hang on what stands in the cells of tallies. */
const aboutTallies = ['saturated-counts', 'not-looked-for', 'waiting']

/** Uneven dates, stages, hours, observers and effort, so that there is something to find. */
const uneven = changed(soundProject({ arm: 4 }), (row, k) => ({
  date: dayOf(3 * (k % 4) + (row.strip === 'yes' ? 6 : 0)),
  stage: 61 + ((k * 7) % 6),
  start: 600 + ((k * 53) % 300),
  observer: `observer ${1 + ((k * 5) % 3)}`,
  minutes: 10 + (k % 7),
  temperature: 14 + ((k * 3) % 9),
}))

it.each([
  [{ between: 'strip' }],
  [{ between: 'strip', since: dayOf(6) }],
  [{ since: dayOf(6) }],
  [{ between: 'daypart' }],
  [{ between: 'strip', against: 'fly' }],
] as const satisfies readonly (readonly [Asked])[])('property: %j has the same findings whatever was counted', (asked) => {
  const told = (counts: readonly number[]) => {
    const project = changed(uneven, (_, k) => ({ tallies: { bee: counts[2 * k] ?? 0, fly: counts[2 * k + 1] ?? 0 } }))
    const { findings, tangles } = ask(projectOfCounts(project), asked)
    return { findings: findings.filter(({ code }) => !aboutTallies.includes(code)), tangles }
  }
  const first = told([])
  expect(first.findings.length).toBeGreaterThan(0)
  fc.assert(
    fc.property(fc.array(fc.nat({ max: 60 }), { minLength: 64, maxLength: 64 }), (counts) => {
      expect(told(counts)).toEqual(first)
    }),
    { numRuns: 25, seed: 2911 },
  )
})
