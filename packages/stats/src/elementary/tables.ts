// Tables of the elementary functions, worked out in whole numbers: the same bits on every engine.

/** Bits behind the point of the whole numbers that stand for fractions here. */
const bits = 160n
const one = 1n << bits

/** 2^m for m = -1074 to 1023, at m + 1074. */
export const scales = new Float64Array(2098)
scales[1074] = 1
for (let m = 1; m < 1024; m++) scales[1074 + m] = (scales[1073 + m] as number) * 2
for (let m = 1; m <= 1074; m++) scales[1074 - m] = (scales[1075 - m] as number) / 2

/** The nearest double of a fraction in whole numbers. `Number` of a whole number rounds to nearest by the standard. */
const toDouble = (fraction: bigint): number => Number(fraction) * (scales[1074 - Number(bits)] as number)

/** A double as a fraction in whole numbers, exact for multiples of 2^-112. */
const toFraction = (value: number): bigint => BigInt(value * (scales[1074 + 112] as number)) << (bits - 112n)

function squareRoot(fraction: bigint): bigint {
  const n = fraction << bits
  let root = 1n << BigInt(Math.ceil(n.toString(2).length / 2))
  for (;;) {
    const next = (root + n / root) >> 1n
    if (next >= root) return root
    root = next
  }
}

/** log((1 + z) / (1 - z)) = 2 (z + z^3/3 + z^5/5 ...). */
function logOfRatio(z: bigint): bigint {
  const square = (z * z) / one
  let power = z
  let sum = 0n
  for (let k = 1n; power !== 0n; k += 2n) {
    sum += power / k
    power = (power * square) / one
  }
  return 2n * sum
}

/** log of a fraction between 1/2 and 2. */
const logOf = (x: bigint): bigint => logOfRatio(((x - one) << bits) / (x + one))

/** log 2 from (1 + 1/3) / (1 - 1/3). */
const ln2 = logOfRatio(one / 3n)

/** A fraction as the sum of two doubles, the first a multiple of 2^-`places`, so that sums of such stay exact. */
function inTwo(fraction: bigint, places: bigint): readonly [number, number] {
  const cut = bits - places
  const high = ((fraction + (1n << (cut - 1n))) >> cut) << cut
  return [toDouble(high), toDouble(fraction - high)]
}

/** Steps of the table of powers: 2^(k / 128). */
export const powerSteps = 128
/** 2^(k / 128) as a double, and what it is short of. */
export const powers = new Float64Array(powerSteps)
export const powerRests = new Float64Array(powerSteps)
/** log 2 / 128 in two parts, the first of 32 bits: its product with a whole number below 2^18 is exact. */
export const [powerStepHigh, powerStepLow] = inTwo(ln2 / 128n, 39n)
/** 128 / log 2. */
export const stepsPerUnit = toDouble(((one * 128n) << bits) / ln2)

/** Marks of the table of logarithms: i / 128 for i = 0 to 182, of which those from 90 on are used. */
export const logMarks = 128
/** About 128 / i, of 20 bits, so that its product with the upper half of a double is exact. */
export const reciprocals = new Float64Array(183)
/** -log(reciprocals) in two parts, the first a multiple of 2^-42. */
export const logs = new Float64Array(183)
export const logRests = new Float64Array(183)
export const [ln2High, ln2Low] = inTwo(ln2, 42n)

let root = 2n * one
for (let k = 0; k < 7; k++) root = squareRoot(root)
let power = one
for (let k = 0; k < powerSteps; k++) {
  powers[k] = toDouble(power)
  powerRests[k] = toDouble(power - toFraction(powers[k] as number))
  power = (power * root) >> bits
}
for (let i = 90; i < reciprocals.length; i++) {
  const near = Math.round((logMarks / i) * 524288) / 524288
  reciprocals[i] = near
  const [high, rest] = inTwo(-logOf(toFraction(near)), 42n)
  logs[i] = high
  logRests[i] = rest
}
