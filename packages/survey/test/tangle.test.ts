import { expect, it } from 'vitest'
import { addDesign, bounds, newTally, scoredOf, totalOf } from '../../../trials/tangle-tally.ts'

// Recovery: a small share of the trial of tangles (docs/trials/tangle.md), at a seed of its own.
const designs = 150

/** Bounds are loosened by three binomial standard errors of so few designs. */
const slack = (share: number, of: number): number => 3 * Math.sqrt((share * (1 - share)) / of)

it('the audit blocks aliased designs and leaves sound ones alone', () => {
  const tally = newTally('a small share of the trial')
  while (scoredOf(tally) < designs) addDesign(tally)
  const { aliased, sound } = totalOf(tally)
  expect(Math.min(aliased.designs, sound.designs)).toBeGreaterThan(40)
  const { aliasedBlocked, soundBlocked } = bounds
  expect(aliased.blocked / aliased.designs).toBeGreaterThanOrEqual(aliasedBlocked - slack(aliasedBlocked, aliased.designs))
  expect(sound.blocked / sound.designs).toBeLessThanOrEqual(soundBlocked + slack(soundBlocked, sound.designs))
})
