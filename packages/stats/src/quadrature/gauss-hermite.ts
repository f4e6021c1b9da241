import { InputError } from '@thrum/model/ground'
import { exp, log } from '../elementary.ts'

/** Nodes and weights of a rule for the integral of exp(-x^2) g(x), nodes ascending. */
export interface HermiteRule {
  readonly nodes: Float64Array
  /** log of the weights: the outer ones of long rules are very small. */
  readonly logWeights: Float64Array
}

const mostNodes = 128
const mostRounds = 60
const halfLogPi = 0.5723649429247001

/** Orthonormal Hermite function of degree n at x, times exp(x^2 / 2), as a mantissa and the log of its scale, and that of degree n - 1. */
function hermiteAt(n: number, x: number): { readonly value: number; readonly before: number; readonly logScale: number } {
  let before = 0
  let value = exp(-halfLogPi / 2)
  let logScale = 0
  for (let k = 0; k < n; k++) {
    const next = x * Math.sqrt(2 / (k + 1)) * value - Math.sqrt(k / (k + 1)) * before
    before = value
    value = next
    if (Math.abs(value) > 1e100) {
      value *= 1e-100
      before *= 1e-100
      logScale += log(1e100)
    }
  }
  return { value, before, logScale }
}

/**
 * Gauss-Hermite rule of n nodes: roots of the Hermite polynomial, by halving where its sign changes and then Newton's method.
 *
 * @param n whole number from 1 to 128
 * @throws InputError otherwise
 * @source Abramowitz M., Stegun I.A. (1964) Handbook of Mathematical Functions, 25.4.46 (the rule; from memory)
 * @check n = 3: nodes 0 and 1.22474487, weights 1.18163590 and 0.29540898 (Abramowitz and Stegun, table 25.10; from memory, and exact)
 */
export function gaussHermite(n: number): HermiteRule {
  if (!(Number.isInteger(n) && n >= 1 && n <= mostNodes))
    throw new InputError('ground/input/out-of-range', `a Gauss-Hermite rule has 1 to ${mostNodes} nodes, not ${n}`)
  const nodes = new Float64Array(n)
  const logWeights = new Float64Array(n)
  // Roots of degree k lie between those of degree k - 1: all of them degree by degree, the outermost below sqrt(2 k + 1).
  let roots: number[] = []
  for (let degree = 1; degree <= n; degree++) {
    const edge = Math.sqrt(2 * degree + 1)
    const bounds = [-edge, ...roots, edge]
    roots = bounds.slice(1).map((right, k) => rootBetween(degree, bounds[k] as number, right))
  }
  for (const [k, root] of roots.entries()) {
    const { before, logScale } = hermiteAt(n, root)
    nodes[k] = root
    // Weight 1 / (n h(n - 1)^2) for orthonormal polynomials.
    logWeights[k] = -log(n) - 2 * (log(Math.abs(before)) + logScale)
  }
  return { nodes, logWeights }
}

function rootBetween(degree: number, left: number, right: number): number {
  let low = left
  let high = right
  const signLow = Math.sign(hermiteAt(degree, low).value)
  let x = (low + high) / 2
  for (let round = 0; round < mostRounds; round++) {
    const { value, before } = hermiteAt(degree, x)
    if (value === 0) return x
    if (Math.sign(value) === signLow) low = x
    else high = x
    // d h(n) / dx = sqrt(2 n) h(n - 1).
    const next = x - value / (Math.sqrt(2 * degree) * before)
    const isInside = next > low && next < high
    const moved = isInside ? next : (low + high) / 2
    if (Math.abs(moved - x) <= 1e-16 * Math.max(1, Math.abs(x))) return moved
    x = moved
  }
  return x
}
