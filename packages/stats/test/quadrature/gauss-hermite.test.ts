import { InputError } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { exp } from '../../src/elementary.ts'
import { gaussHermite } from '../../src/quadrature/gauss-hermite.ts'
import { expectNear, expectRelative } from '../near.ts'
import { cell, referenceTable } from '../reference-table.ts'

describe('Gauss-Hermite rules', () => {
  // Abramowitz and Stegun (1964), table 25.10: positive nodes and their weights (from memory; each also follows from the oracle).
  it.each([
    [
      3,
      [
        [0, 1.1816359006],
        [1.224744871392, 0.295408975151],
      ],
    ],
    [
      4,
      [
        [0.524647623275, 0.804914090006],
        [1.650680123886, 0.0813128354473],
      ],
    ],
    [
      5,
      [
        [0, 0.945308720483],
        [0.95857246461, 0.393619323152],
        [2.02018287046, 0.0199532420591],
      ],
    ],
    [
      10,
      [
        [0.342901327224, 0.610862633735],
        [1.03661082979, 0.240138611082],
        [1.7566836493, 0.0338743944555],
        [2.53273167423, 0.00134364574678],
        [3.43615911884, 0.00000764043285523],
      ],
    ],
  ] as const)('published: %i nodes', (n, published) => {
    const { nodes, logWeights } = gaussHermite(n)
    const from = n >> 1
    expect(nodes.length - from).toBe(published.length)
    published.forEach(([node, weight], k) => {
      expectNear(nodes[from + k] as number, node, 6e-12 * Math.max(1, node))
      expectRelative(exp(logWeights[from + k] as number), weight, 1e-11, `weight ${k}`)
    })
  })

  it('oracle: nodes and log weights of 15, 40 and 128 nodes (mpmath)', () => {
    const rules = new Map([15, 40, 128].map((n) => [n, gaussHermite(n)] as const))
    const table = referenceTable('quadrature/gauss-hermite')
    expect(table.length).toBe(15 + 40 + 128)
    for (const row of table) {
      const rule = rules.get(cell(row, 'n'))
      const k = cell(row, 'k')
      expectNear(rule?.nodes[k] ?? Number.NaN, cell(row, 'node'), 4e-15 * Math.max(1, Math.abs(cell(row, 'node'))))
      expectNear(rule?.logWeights[k] ?? Number.NaN, cell(row, 'logWeight'), 1e-12 * Math.max(1, Math.abs(cell(row, 'logWeight'))))
    }
  })

  it.each([1, 2, 3, 4, 7, 15, 20, 31, 64, 127, 128])('identity: %i nodes are exact for polynomials up to degree 2 n - 1', (n) => {
    const { nodes, logWeights } = gaussHermite(n)
    // Even powers, each divided by its moment Gamma(k + 1/2): the sum is 1. In logs, for the moments are large.
    let logMoment = Math.log(Math.PI) / 2
    for (let k = 0; 2 * k <= 2 * n - 1; k++) {
      if (k > 0) logMoment += Math.log(k - 0.5)
      let sum = 0
      for (let j = 0; j < n; j++) {
        const size = Math.abs(nodes[j] as number)
        if (size === 0 && k > 0) continue
        sum += exp((logWeights[j] as number) + (k === 0 ? 0 : 2 * k * Math.log(size)) - logMoment)
      }
      expectNear(sum, 1, 2e-12)
    }
    // Odd powers fall to 0 by the mirror, and the next even one is no longer exact.
    for (let j = 0; j < n; j++) {
      expectNear(nodes[j] as number, -(nodes[n - 1 - j] as number), 2e-14)
      expectNear(logWeights[j] as number, logWeights[n - 1 - j] as number, 2e-12)
    }
    if (n > 20) return
    let sum = 0
    for (let j = 0; j < n; j++) sum += exp(logWeights[j] as number) * (nodes[j] as number) ** (2 * n)
    expect(sum / Math.exp(logMoment + Math.log(n - 0.5))).toBeLessThan(1 - 1e-12)
  })

  it('identity: nodes ascend, and those of one degree part those of the next', () => {
    for (let n = 2; n <= 128; n += 9) {
      const own = gaussHermite(n).nodes
      const before = gaussHermite(n - 1).nodes
      for (let k = 0; k < n - 1; k++) {
        expect(own[k]).toBeLessThan(before[k] as number)
        expect(own[k + 1]).toBeGreaterThan(before[k] as number)
      }
    }
  })

  it.each([0, -1, 129, 2.5, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d nodes', (n) => {
    expect(() => gaussHermite(n)).toThrow(InputError)
  })
})
