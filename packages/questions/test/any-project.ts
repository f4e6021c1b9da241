import type { Snapshot } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import fc from 'fast-check'
import { expect } from 'vitest'
import { type CountRow, projectOfCounts } from '../../survey/test/project-of-counts.ts'
import { checkAnswer } from './answer-shape.ts'
import { isDesignSoundIn, said, whatDiffersIn, whoVisitsIn } from './ask.ts'

/** Anything a person may have written down, or not. */
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { freq: 5 })
const tally = fc.oneof({ weight: 6, arbitrary: fc.integer({ min: 0, max: 9 }) }, { weight: 1, arbitrary: fc.constant(null) })
const row = fc.record({
  field: fc.constantFrom('Weir', 'Ings', 'Quern', 'Oxlea'),
  strip: maybe(fc.constantFrom('no', 'yes')),
  position: maybe(fc.constantFrom('edge', 'centre')),
  date: maybe(fc.constantFrom('2031-05-05', '2031-05-09', '2031-05-20')),
  start: maybe(fc.constantFrom('9:30', '11:00', '15:10')),
  observer: maybe(fc.constantFrom('walker 1', 'walker 2')),
  crop: maybe(fc.constantFrom('cherry', 'sunflower')),
  minutes: fc.oneof({ weight: 5, arbitrary: fc.constantFrom(5, 10) }, { weight: 1, arbitrary: fc.constant(null) }),
  flowers: maybe(fc.constantFrom(0, 50, 300)),
  area: maybe(fc.constantFrom(2, 4)),
  stage: maybe(fc.constantFrom(61, 65, 69)),
  temperature: maybe(fc.constantFrom(8, 18, 24)),
  rain: maybe(fc.constantFrom('none', 'rain')),
  tallies: fc.record({ bee: tally, fly: tally, moth: tally }, { requiredKeys: [] }),
})
/** A project writes in one counting unit, and in one way what a kind without a row means. */
const project = fc.record({
  rows: fc.array(row, { minLength: 1, maxLength: 16 }),
  unit: fc.constantFrom('individuals', 'visits', 'snapshot'),
  zeros: fc.constantFrom('typed', 'none-seen', 'not-known'),
  random: fc.boolean(),
})

const snapshotOf = ({ rows, unit, zeros, random }: typeof project extends fc.Arbitrary<infer P> ? P : never): Snapshot =>
  projectOfCounts({
    counts: rows.map((own) => ({ ...own, unit, zeros }) as CountRow),
    treatments: random ? [{ factor: 'strip', level: 'yes', field: 'Weir', assigned: 'at random' }] : [],
  })

const asking = fc.constantFrom<readonly [string, (snapshot: Snapshot) => ReturnType<typeof whoVisitsIn>]>(
  ['who visits', (snapshot) => whoVisitsIn(snapshot)],
  ['who visits, by field, per flower', (snapshot) => whoVisitsIn(snapshot, { by: 'field', per: 'flower' })],
  ['who visits, by strip, all weathers', (snapshot) => whoVisitsIn(snapshot, { by: 'strip', window: 'all' })],
  ['strips, all kinds', (snapshot) => whatDiffersIn(snapshot, { between: 'strip', worth: 1.5 })],
  [
    'strips, two kinds, per area',
    (snapshot) => whatDiffersIn(snapshot, { between: 'strip', kinds: ['bee', 'fly'], per: 'area', worth: 2 }),
  ],
  [
    'positions, per flower, more expected',
    (snapshot) => whatDiffersIn(snapshot, { between: 'position', kinds: ['bee'], per: 'flower', expect: 'more', worth: 2 }),
  ],
  ['before and after', (snapshot) => whatDiffersIn(snapshot, { since: '2031-05-07', kinds: ['bee'], worth: 2 })],
  ['before and after, by strip', (snapshot) => whatDiffersIn(snapshot, { since: '2031-05-07', between: 'strip', worth: 2 })],
  ['bees for each fly', (snapshot) => whatDiffersIn(snapshot, { between: 'strip', kinds: ['bee'], against: 'fly', worth: 2 })],
  ['kind against kind', (snapshot) => whatDiffersIn(snapshot, { between: 'kind', levels: ['bee', 'fly'], worth: 2 })],
  ['crops', (snapshot) => whatDiffersIn(snapshot, { between: 'crop', worth: 2 })],
  ['is it sound, strips', (snapshot) => isDesignSoundIn(snapshot, { between: 'strip' })],
  ['is it sound, before and after', (snapshot) => isDesignSoundIn(snapshot, { since: '2031-05-07', between: 'strip' })],
)

/**
 * Property: every question put to any project is answered, with something that may be said, or ends with a remedy in words.
 *
 * @returns how many were answered, and how many stopped
 */
export async function askAnyProject(
  seed: number,
  runs: number,
): Promise<{ readonly answered: number; readonly stopped: number }> {
  const seen = { answered: 0, stopped: 0 }
  await fc.assert(
    fc.asyncProperty(project, asking, async (made, [, ask]) => {
      try {
        const answer = await ask(snapshotOf(made))
        checkAnswer(answer)
        seen.answered += 1
      } catch (error) {
        // Anything but a failure with words and a remedy is a mistake of the program.
        if (!(error instanceof ThrumError)) throw error
        said(error.saying)
        expect(said(error.remedy)).not.toBe('')
        seen.stopped += 1
      }
    }),
    { seed, numRuns: runs },
  )
  return seen
}
