import { beaufortOf } from '@thrum/biology'
import { type MeasureRole, measureUnits } from './roles.ts'

/** A speed below zero is none: it stays as it was written. */
const beaufort = (metresPerSecond: number): number => (metresPerSecond < 0 ? metresPerSecond : beaufortOf(metresPerSecond))

type Conversion = (value: number) => number
const same: Conversion = (value) => value
const times =
  (factor: number): Conversion =>
  (value) =>
    value * factor

/** By role, then by the unit of the sheet: to the unit of the table. Exact definitions, except Beaufort (above). */
const conversions: { readonly [R in MeasureRole]?: { readonly [unit: string]: Conversion } } = {
  area: { ha: times(10_000), ft2: times(0.09290304), acre: times(4046.8564224) },
  temperature: { degF: (value) => ((value - 32) * 5) / 9 },
  wind: {
    'm/s': beaufort,
    'km/h': (value) => beaufort(value / 3.6),
    mph: (value) => beaufort(value * 0.44704),
    kn: (value) => beaufort((value * 1852) / 3600),
  },
  cloud: { '%': times(0.08), '/10': times(0.8) },
  sun: { '/10': times(10) },
  hiveDistance: { km: times(1000), ft: times(0.3048), yd: times(0.9144) },
  edgeDistance: { km: times(1000), ft: times(0.3048), yd: times(0.9144) },
}

/** How numbers in a unit become numbers in the unit of the table; null for a unit the role does not know. */
export function conversionTo(role: MeasureRole, unit: string | undefined): Conversion | null {
  const known = measureUnits[role] as readonly string[]
  if (unit === undefined || unit === known[0]) return same
  if (!known.includes(unit)) return null
  return conversions[role]?.[unit] ?? same
}
