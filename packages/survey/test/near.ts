import { expect } from 'vitest'

/** Half of the last of six printed decimals, and a little for the printed number's own rounding. */
export const sixDecimals = 0.5000001e-6

/** Holds a value against a printed one: off by no more than `tolerance`. */
export function expectNear(found: number, printed: number, tolerance = sixDecimals): void {
  expect(Math.abs(found - printed), `${found} against ${printed}`).toBeLessThanOrEqual(tolerance)
}
