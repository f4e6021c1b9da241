/** Day number (days since 1 January 1970) of an ISO date, proleptic Gregorian. */
export function dayNumber(isoDate: string): number {
  return Math.round(Date.parse(`${isoDate}T00:00:00Z`) / 86_400_000)
}

/** ISO date of a day number. */
export function isoDate(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10)
}
