import { describe, expect, it } from 'vitest'
import {
  amended,
  type Fact,
  factorDescribed,
  foldAsked,
  foldFacts,
  questionLookedAt,
  withdrawn,
  worthSet,
} from '../../src/index.ts'
import { factOf, writer } from '../made-log.ts'

const author = writer()
const correct = (id: string, of: string, column: string, to: string | number): Fact =>
  factOf(author, id, amended, { of, column, after: null, from: null, to, reason: 'slip' })

describe('corrections of facts that a person recorded', () => {
  it('reach the name of a factor', () => {
    const described = factOf(author, 'f', factorDescribed, { factor: 'stirp', assigned: 'at random' })
    const { assigned } = foldFacts([described, correct('a', 'f', 'factor', 'strip')])
    expect([...assigned]).toEqual([['strip', 'at random']])
  })

  it('reach S, as of the moment of the correction, and leave the digest of the data alone', () => {
    const asked = { question: 'what-differs', asked: 'strips' }
    const set = factOf(author, 's', worthSet, { ...asked, worth: 20 })
    const look = factOf(author, 'l', questionLookedAt, { ...asked, digest: 'd', verdict: null })
    const correction = correct('a', 's', 'worth', 2)
    const before = foldFacts([set, look])
    const after = foldFacts([set, look, correction])
    expect(after.worths).toEqual([{ ...asked, worth: 2, at: correction.at }])
    expect(after.digest).toBe(before.digest)
    expect(after.askedDigest).not.toBe(before.askedDigest)
    expect(foldAsked(before, [set, look, correction]).worths).toEqual(after.worths)
    const undone = foldFacts([set, look, correction, factOf(author, 'w', withdrawn, { of: 'a', reason: 'r' })])
    expect(undone.worths).toMatchObject([{ worth: 20, at: set.at }])
    expect(undone.digest).toBe(before.digest)
  })
})
