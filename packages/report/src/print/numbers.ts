/** A number with three significant digits, never in powers of ten below a million. */
export function threeDigits(value: number): string {
  if (value === 0) return '0'
  const size = Math.abs(value)
  if (size >= 100 && size < 1e6) return Math.round(value).toString()
  return size >= 1e6 || size < 1e-4
    ? value.toExponential(2)
    : Number.parseFloat(value.toPrecision(3))
        .toString()
        .padEnd(size < 100 ? 0 : 0)
}

/** An interval; an absent limit is an open end. */
export function intervalText(low: number | null, high: number | null, as: (value: number) => string): string {
  return `${low === null ? '…' : as(low)} – ${high === null ? '…' : as(high)}`
}
