import { sha256 } from '@noble/hashes/sha2.js'
import { utf8ToBytes } from '@noble/hashes/utils.js'

/** Name and version of the generator, kept in every receipt. A change of a single draw needs a new name. */
export const rngAlgorithm = 'xoshiro128++/sha256-fork/1'

/** A seeded stream of random numbers. */
export interface Rng {
  readonly seed: string
  /** 32 random bits as an unsigned whole number. */
  uint32(): number
  /** Uniform on the open interval (0, 1), 52 bits and a half step, so that it is never 0 or 1. */
  uniform(): number
  /** Uniform whole number from 0 to n - 1, without bias. */
  below(n: number): number
  /** A stream of its own by label: the same label gives the same stream, whatever was drawn before. */
  fork(label: string): Rng
}

/**
 * xoshiro128++ 1.0 of Blackman & Vigna (2021), ACM Trans. Math. Softw. 47(4):36, on four 32-bit words.
 *
 * @param state four unsigned 32-bit words, not all zero
 * @check state 1, 2, 3, 4 gives 641, 1573767, 3222811527, 3517856514, 836907274 (reference C code)
 */
export function xoshiro128pp(state: readonly [number, number, number, number]): () => number {
  let [s0, s1, s2, s3] = state
  const rotl = (x: number, k: number): number => (x << k) | (x >>> (32 - k))
  return () => {
    const result = (rotl((s0 + s3) | 0, 7) + s0) | 0
    const t = s1 << 9
    s2 ^= s0
    s3 ^= s1
    s1 ^= s2
    s0 ^= s3
    s2 ^= t
    s3 = rotl(s3, 11)
    return result >>> 0
  }
}

/** A generator from any text. State: the first 16 bytes of SHA-256 of the text, little-endian. */
export function createRng(seed: string): Rng {
  const bytes = sha256(utf8ToBytes(seed))
  const view = new DataView(bytes.buffer, bytes.byteOffset, 16)
  const word = (k: number): number => view.getUint32(4 * k, true)
  const next = xoshiro128pp([word(0) | 1, word(1), word(2), word(3)])
  return {
    seed,
    uint32: next,
    uniform: () => {
      const high = next() >>> 6
      const low = next() >>> 6
      return (high * 67108864 + low + 0.5) / 4503599627370496
    },
    below: (n) => {
      const limit = 4294967296 - (4294967296 % n)
      let draw = next()
      while (draw >= limit) draw = next()
      return draw % n
    },
    fork: (label) => createRng(`${seed}/${label}`),
  }
}
