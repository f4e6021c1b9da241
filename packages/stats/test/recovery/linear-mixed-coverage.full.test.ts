import { describe, expect, it } from 'vitest'
import { fitLinearMixed, linearMixedContrast } from '../../src/index.ts'
import { type MadeMeasures, madeMeasures } from '../linear-mixed/made-measures.ts'

// Recovery: 2,000 seeded sets a cell; the effect of a treatment of whole fields, with fields less 2 degrees of freedom. Those are
// right for balanced sets; for the others they are a guess, to be a point (crossed) or two (slopes) off at most. Four Monte Carlo
// standard errors (2 points at 95 %) are added on either side.
const sets = 2000
const slack = 4 * Math.sqrt((0.95 * 0.05) / sets)
const effect = 0.8

const cells: readonly (readonly [string, Omit<MadeMeasures, 'seed'>, number, number])[] = [
  ['10 fields', { fields: 10 }, 0.95, 0.95],
  ['6 fields', { fields: 6, fieldSd: 2 }, 0.95, 0.95],
  ['10 fields crossed with dates, uneven', { fields: 10, isCrossed: true, isUneven: true }, 0.94, 0.96],
  ['12 fields with slopes', { fields: 12, slope: 'free', isUneven: true }, 0.93, 0.97],
]

describe('linearMixedContrast covers the effect of a treatment of fields', () => {
  it.each(cells)('recovery: %s', (name, asked, least, most) => {
    let hits = 0
    let told = 0
    for (let k = 0; k < sets; k++) {
      const fit = fitLinearMixed({ likelihood: 'restricted', ...madeMeasures({ seed: `${name} ${k}`, effect, ...asked }) })
      if (fit.kind !== 'fitted') continue
      const contrast = linearMixedContrast(fit, [0, 1, 0], (asked.fields ?? 10) - 2)
      if (contrast.kind !== 'contrast') continue
      told++
      if (contrast.limits.lower <= effect && effect <= contrast.limits.upper) hits++
    }
    expect(told).toBeGreaterThan(0.999 * sets)
    expect(hits / told).toBeGreaterThan(least - slack)
    expect(hits / told).toBeLessThan(most + slack)
  })
})
