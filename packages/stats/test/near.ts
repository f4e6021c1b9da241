import { expect } from 'vitest'

/** Half of the last of six printed decimals, and a little for the printed number's own rounding. */
export const sixDecimals = 0.5000001e-6

/** Holds a value against a printed one: off by no more than `tolerance`. */
export function expectNear(found: number, printed: number, tolerance: number): void {
  expect(Math.abs(found - printed), `${found} against ${printed}`).toBeLessThanOrEqual(tolerance)
}

/** Relative distance from an oracle's value, which is not 0. */
export function expectRelative(found: number, oracle: number, tolerance: number, what = ''): void {
  expect(Math.abs(found / oracle - 1), `${what} ${found} against ${oracle}`).toBeLessThanOrEqual(tolerance)
}

/** Narrows a tagged union to one kind, or fails with what was found. */
export function kindOf<T extends { readonly kind: string }, K extends T['kind']>(
  value: T,
  kind: K,
): Extract<T, { readonly kind: K }> {
  expect(value.kind).toBe(kind)
  return value as Extract<T, { readonly kind: K }>
}
