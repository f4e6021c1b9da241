// Doubles by their bits, and a checksum over many outputs. Nothing here leans on an elementary function of the engine, and nothing on a
// platform: the same file runs in any engine.

const double = new Float64Array(1)
const bits = new BigUint64Array(double.buffer)

/** The double so many places further up (or down). @param x not 0 on the way */
export function beside(x: number, places: number): number {
  double[0] = x
  bits[0] = (bits[0] as bigint) + BigInt(x < 0 ? -places : places)
  return double[0] as number
}

/** Unit of the last place of a double: from its size to the next larger. */
export function lastPlace(x: number): number {
  const size = x < 0 ? -x : x
  return beside(size, 1) - size
}

/** Doubles of any size and either sign, from a small generator of whole numbers: the same everywhere. */
export function doublesOfAnySize(count: number, seed: number): Float64Array {
  const out = new Float64Array(count)
  const halves = new Uint32Array(2)
  const word = new BigUint64Array(1)
  let state = seed | 0
  const next = (): number => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return state >>> 0
  }
  for (let i = 0; i < count; i++) {
    halves[0] = next()
    halves[1] = next()
    word[0] = (BigInt(halves[1] as number) << 32n) | BigInt(halves[0] as number)
    bits[0] = word[0] as bigint
    out[i] = double[0] as number
  }
  return out
}

/** Doubles evenly from `low` to `high`. */
export function doublesBetween(low: number, high: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => low + (i * (high - low)) / (count - 1))
}

/** 32 bits that hang on every bit of every output, in order; whatever is not a number counts as one and the same. */
export function checksumOf(f: (x: number) => number, inputs: Float64Array): number {
  let sum = 0x811c9dc5
  for (const x of inputs) {
    const value = f(x)
    double[0] = value
    const word = Number.isNaN(value) ? 0x7ff8000000000000n : (bits[0] as bigint)
    sum = Math.imul(sum ^ Number(word & 0xffffffffn), 0x01000193)
    sum = Math.imul(sum ^ Number(word >> 32n), 0x01000193)
    sum ^= sum >>> 15
  }
  return sum >>> 0
}
