import { describe, expect, it } from 'vitest'
import { type Fact, foldAsked, foldFacts, isAboutAsking, questionPinned } from '../../src/index.ts'
import { factOf, writer } from '../made-log.ts'

const pinOf = (author = writer()) => {
  let made = 0
  return (asked: string, pinned: boolean, options: { readonly [name: string]: string | number | string[] } = {}): Fact =>
    factOf(author, `pin ${made++}`, questionPinned, { question: 'what-differs', asked, options, pinned })
}

describe('pins', () => {
  it('the last word about a question asked stands, whatever the order of arrival', () => {
    const pin = pinOf()
    const facts = [pin('a', true), pin('b', true), pin('a', false), pin('c', true), pin('c', false), pin('c', true)]
    for (const arrived of [facts, facts.toReversed()])
      expect(foldFacts(arrived).pins.map(({ asked }) => asked)).toEqual(['b', 'c'])
  })

  it('a pin holds the options as they were last pinned, and its place in the order', () => {
    const pin = pinOf()
    const [first, second, again] = [
      pin('a', true, { worth: 2 }),
      pin('b', true),
      pin('a', true, { worth: 1.5, kinds: ['honey bee', 'hover fly'] }),
    ]
    const { pins } = foldFacts([first, second, again])
    expect(pins).toEqual([
      {
        question: 'what-differs',
        asked: 'a',
        options: { worth: 1.5, kinds: ['honey bee', 'hover fly'] },
        at: first.at,
      },
      { question: 'what-differs', asked: 'b', options: {}, at: second.at },
    ])
  })

  it('is about asking: it changes the digest of asking and not that of the data', () => {
    const fact = pinOf()('a', true)
    expect(isAboutAsking(fact)).toBe(true)
    const [before, after] = [foldFacts([]), foldFacts([fact])]
    expect(after.digest).toBe(before.digest)
    expect(after.askedDigest).not.toBe(before.askedDigest)
    expect(foldAsked(before, [fact])).toEqual(after)
  })
})
