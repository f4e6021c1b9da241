import { describe, expect, it } from 'vitest'
import { sha256Hex, sha256Stream } from '../../src/ground/index.ts'

describe('sha256Hex', () => {
  // Published: FIPS 180-2, appendix B.1 to B.3, and the hash of nothing.
  it.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ])('published: "%s"', (text, hex) => {
    expect(sha256Hex(text)).toBe(hex)
    expect(sha256Hex(Uint8Array.from(text, (character) => character.charCodeAt(0)))).toBe(hex)
  })

  it('published: a million times the letter a, in parts', () => {
    const stream = sha256Stream()
    for (let part = 0; part < 1000; part++) stream.update(new Uint8Array(1000).fill(97))
    expect(stream.hex()).toBe('cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0')
  })

  it('text is hashed as UTF-8', () => {
    expect(sha256Hex('é')).toBe(sha256Hex(Uint8Array.of(0xc3, 0xa9)))
  })
})
