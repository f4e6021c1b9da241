import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sha256Hex, ThrumError } from '../../src/ground/index.ts'
import {
  addressOf,
  compareFacts,
  digestOfIds,
  factEnvelope,
  factKinds,
  fieldDescribed,
  keptCopy,
  makeFact,
  parseAddress,
  readFact,
  treatmentSet,
} from '../../src/index.ts'
import { writer } from '../made-log.ts'

const text = fc.constantFrom('a', 'b', 'ab', '')
const envelope = fc.record({ at: text, id: text, device: text })

describe('order and copies of facts', () => {
  it('identity: an order, the same from both sides', () => {
    fc.assert(
      fc.property(envelope, envelope, envelope, (a, b, c) => {
        expect(compareFacts(a, b)).toBe(compareFacts(b, a) === 0 ? 0 : -compareFacts(b, a))
        if (compareFacts(a, b) <= 0 && compareFacts(b, c) <= 0) expect(compareFacts(a, c)).toBeLessThanOrEqual(0)
      }),
      { seed: 6 },
    )
  })

  it('by moment, ties by id', () => {
    expect(compareFacts({ at: 'a', id: 'z' }, { at: 'b', id: 'a' })).toBe(-1)
    expect(compareFacts({ at: 'a', id: 'a' }, { at: 'a', id: 'b' })).toBe(-1)
    expect(compareFacts({ at: 'a', id: 'a' }, { at: 'a', id: 'a' })).toBe(0)
  })

  it('identity: both sides of a merge keep the same copy, and it does not matter in which order three meet', () => {
    fc.assert(
      fc.property(envelope, envelope, envelope, (a, b, c) => {
        const copies = [a, b, c].map(({ at, device }) => ({ at, device }))
        const [x, y, z] = copies as [(typeof copies)[0], (typeof copies)[0], (typeof copies)[0]]
        expect(keptCopy(x, y)).toEqual(keptCopy(y, x))
        expect(keptCopy(keptCopy(x, y), z)).toEqual(keptCopy(x, keptCopy(y, z)))
      }),
      { seed: 7 },
    )
  })

  it('the smaller moment is kept, then the smaller device', () => {
    expect(keptCopy({ at: '2', device: 'a' }, { at: '1', device: 'b' })).toEqual({ at: '1', device: 'b' })
    expect(keptCopy({ at: '1', device: 'b' }, { at: '1', device: 'a' })).toEqual({ at: '1', device: 'a' })
  })

  it('an address leads to a fact, or to a row inside it', () => {
    expect(addressOf('fact-1', -1)).toBe('fact-1')
    expect(addressOf('fact#1', 17)).toBe('fact#1#17')
    expect(parseAddress('fact-1')).toEqual({ fact: 'fact-1', row: -1 })
    expect(parseAddress('fact#1#17')).toEqual({ fact: 'fact#1', row: 17 })
  })

  it('a digest is that of a set: neither order nor copies matter', () => {
    expect(digestOfIds(['b', 'a', 'b'])).toBe(sha256Hex('a\nb'))
    expect(digestOfIds([])).toBe(sha256Hex(''))
    expect(digestOfIds(['a', 'b'])).not.toBe(digestOfIds(['a\nb', 'c']))
  })
})

describe('makeFact', () => {
  it('makes an envelope that every door lets through', () => {
    const author = writer()
    const fact = makeFact(fieldDescribed, { field: 'Weir', hectares: 2 }, author, { subject: 'Weir' })
    expect(factEnvelope.safeParse(fact).success).toBe(true)
    expect(fact).toMatchObject({
      kind: 'field-described',
      v: 1,
      subject: 'Weir',
      at: '2031-01-01T00:00:01.000Z/0000/tablet',
      by: 'walker of tablet',
      device: 'tablet',
      body: { field: 'Weir', hectares: 2 },
      data: null,
    })
    // A UUID of version 7 sorts by the time it was made.
    expect(fact.id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/u)
    expect(makeFact(fieldDescribed, { field: 'Weir' }, author).id).not.toBe(fact.id)
  })

  it('keeps the id that a file gives it, and drops what its shape does not know', () => {
    const body = { field: 'Weir', mood: 'cheerful' }
    const fact = makeFact(fieldDescribed, body, writer(), { id: 'of-the-file', data: Uint8Array.of(1) })
    expect(fact).toMatchObject({ id: 'of-the-file', subject: null, body: { field: 'Weir' } })
    expect(fact.body).not.toHaveProperty('mood')
    expect(fact.data).toEqual(Uint8Array.of(1))
  })

  it.each([
    ['an empty name', () => makeFact(fieldDescribed, { field: '' }, writer()), 'field-described', 'field'],
    [
      'a name of 201 characters',
      () => makeFact(fieldDescribed, { field: 'x'.repeat(201) }, writer()),
      'field-described',
      'field',
    ],
    ['no size', () => makeFact(fieldDescribed, { field: 'Weir', hectares: 0 }, writer()), 'field-described', 'hectares'],
    [
      'a latitude beyond the pole',
      () => makeFact(fieldDescribed, { field: 'Weir', latitude: 91 }, writer()),
      'field-described',
      'latitude',
    ],
    [
      'a day that is none',
      () => makeFact(treatmentSet, { factor: 'strip', level: 'yes', from: '2031-02-30', assigned: 'chosen' }, writer()),
      'treatment-set',
      'from',
    ],
  ])('refuses %s, naming the kind and the place', (_, make, kind, where) => {
    let caught: unknown = null
    try {
      make()
    } catch (error) {
      caught = error
    }
    expect(caught).toBeInstanceOf(ThrumError)
    expect(caught).toMatchObject({ code: 'model/fact/misshapen', values: { kind, where } })
  })
})

describe('readFact', () => {
  it('reads what it knows, and says what it is about', () => {
    expect(readFact({ kind: 'field-described', v: 1, body: { field: 'Weir' } })).toEqual({
      kind: 'read',
      body: { field: 'Weir' },
      about: 'data',
    })
    const asked = { question: 'what-differs', asked: '{}', worth: 2 }
    expect(readFact({ kind: 'worth-set', v: 1, body: asked })).toMatchObject({ kind: 'read', about: 'asking' })
  })

  it.each([
    [{ kind: 'nectar-measured', v: 1, body: { litres: 1 } }, 'unknown kind'],
    [{ kind: 'field-described', v: 2, body: { field: 'Weir' } }, 'newer version'],
    [{ kind: 'field-described', v: 1, body: {} }, 'misshapen'],
    [{ kind: 'field-described', v: 0, body: { field: 'Weir' } }, 'misshapen'],
  ])('%j waits', (fact, because) => {
    expect(readFact(fact)).toEqual({ kind: 'waits', because })
  })

  // Decision: names and versions of kinds stand in files for ever.
  it('golden: the kinds of facts, their versions, and what they are about', () => {
    expect([...factKinds.values()].map(({ kind, v, about }) => `${kind} ${v} ${about}`)).toEqual([
      'project-described 1 data',
      'field-described 1 data',
      'kind-described 1 data',
      'treatment-set 1 data',
      'factor-described 1 data',
      'hives-placed 1 data',
      'hives-looked-for 1 data',
      'plan-made 1 data',
      'sheet-read 1 data',
      'rows-brought 1 data',
      'sheet-accepted 1 data',
      'sheet-discarded 1 data',
      'amended 2 data',
      'withdrawn 2 data',
      'cell-settled 2 data',
      'redacted 2 data',
      'worth-set 1 asking',
      'question-looked-at 1 asking',
      'question-pinned 1 asking',
    ])
  })
})
