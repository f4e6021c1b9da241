import { InputError } from './errors.ts'

const refuse = (name: string, value: unknown, expected: string): never => {
  throw new InputError('ground/input/out-of-range', `${name} is ${String(value)}; expected ${expected}`)
}

/** A whole number within [min, max]. */
export function requireCount(name: string, value: number, range: { readonly min?: number; readonly max?: number } = {}): void {
  const min = range.min ?? 0
  const max = range.max ?? Number.MAX_SAFE_INTEGER
  if (!Number.isInteger(value) || value < min || value > max) {
    refuse(name, value, range.max === undefined ? `a whole number, at least ${min}` : `a whole number from ${min} to ${max}`)
  }
}

/** A number strictly between 0 and 1. */
export function requireOpenUnit(name: string, value: number): void {
  if (!(value > 0 && value < 1)) refuse(name, value, 'a number above 0 and below 1')
}

/** A finite number above 0. */
export function requirePositive(name: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) refuse(name, value, 'a finite number above 0')
}

/** A finite number. */
export function requireFinite(name: string, value: number): void {
  if (!Number.isFinite(value)) refuse(name, value, 'a finite number')
}

/** Two or more lists of one length. */
export function requireSameLength(lists: { readonly [name: string]: { readonly length: number } }): void {
  const sizes = new Set(Object.values(lists).map((list) => list.length))
  if (sizes.size > 1) {
    const found = Object.entries(lists).map(([name, list]) => `${name} ${list.length}`)
    throw new InputError('ground/input/lengths-differ', `lengths differ: ${found.join(', ')}`)
  }
}
