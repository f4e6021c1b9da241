/** A number with three significant digits, zeros at the end left out; powers of ten only from a million on and below 0.0001. */
export function threeDigits(value: number): string {
  const size = Math.abs(value)
  if (size === 0) return '0'
  if (size >= 1e6 || size < 1e-4) return value.toExponential(2)
  return size >= 100 ? Math.round(value).toString() : Number.parseFloat(value.toPrecision(3)).toString()
}

/** An interval; an absent limit is an open end. */
export function intervalText(low: number | null, high: number | null, as: (value: number) => string): string {
  return `${low === null ? '…' : as(low)} – ${high === null ? '…' : as(high)}`
}
