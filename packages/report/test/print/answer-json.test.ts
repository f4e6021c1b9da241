import { saying } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { createSpeaker, withTexts } from '../../src/index.ts'

const say = createSpeaker({ seen: '{kind} seen', bee: 'honey bee', several: '{each}' })

describe('withTexts', () => {
  it('a saying keeps its id and values, and gets its text beside them', () => {
    expect(withTexts(saying('seen', { kind: 'bee' }), say)).toEqual({ id: 'seen', values: { kind: 'bee' }, text: 'bee seen' })
  })

  it('sayings are found wherever they lie; sentences inside a sentence are in its text', () => {
    const inner = saying('bee')
    expect(withTexts({ a: [1, null, 'x', { b: saying('seen', { kind: inner }) }], c: true }, say)).toEqual({
      a: [1, null, 'x', { b: { id: 'seen', values: { kind: inner }, text: 'honey bee seen' } }],
      c: true,
    })
  })

  it('what only looks like a saying is left as it is', () => {
    const like = { id: 'fact-1', values: { a: 1 }, column: 'number' }
    expect(withTexts(like, say)).toEqual(like)
    expect(withTexts({ id: 'seen' }, say)).toEqual({ id: 'seen' })
    expect(withTexts({ id: 1, values: {} }, say)).toEqual({ id: 1, values: {} })
  })

  it('does not change what it is given', () => {
    const answer = Object.freeze({ headline: Object.freeze(saying('bee')) })
    withTexts(answer, say)
    expect(answer).toEqual({ headline: { id: 'bee', values: {} } })
  })
})
