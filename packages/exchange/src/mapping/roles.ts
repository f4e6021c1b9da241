/** What a column of a sheet can be. Names of roles are the columns of the table `count` they fill, and a few more. */

/** Roles that fill a text column of a count. */
export const textRoles = [
  'field',
  'plot',
  'visit',
  'key',
  'observer',
  'crop',
  'cultivar',
  'season',
  'method',
  'unit',
  'position',
  'rain',
  'flowersHow',
  'note',
] as const

/** Roles that fill a measured number of a count, with the units a sheet may give it in; the first is the table's own. */
export const measureUnits = {
  flowers: ['{flowers}', '{flowers}/m2'],
  flowerUnits: ['{units}'],
  flowersPerUnit: ['{flowers}/{units}'],
  area: ['m2', 'ha', 'ft2', 'acre'],
  temperature: ['Cel', 'degF'],
  wind: ['{Beaufort}', 'm/s', 'km/h', 'mph', 'kn'],
  cloud: ['{okta}', '%', '/10'],
  sun: ['%', '/10'],
  stage: ['{BBCH}'],
  hives: ['{hives}'],
  hiveDistance: ['m', 'km', 'ft', 'yd'],
  edgeDistance: ['m', 'km', 'ft', 'yd'],
} as const

/** Measures whose unit must be said by the header or by a person: the roles that people measure in several units. */
export const unitMustBeSaid: ReadonlySet<string> = new Set([
  'area',
  'temperature',
  'wind',
  'cloud',
  'hiveDistance',
  'edgeDistance',
])

export const durationUnits = ['min', 'h', 's', 'h:min', 'min:s'] as const

export const timeRoles = ['date', 'day', 'month', 'year', 'start', 'end', 'minutes', 'pauses', 'offset'] as const

/** Roles that say who visited: a column a kind in wide tables, `kind` and `number` in long ones. */
export const tallyRoles = ['tally', 'kind', 'number', 'caste', 'behaviour'] as const

export const measureRoles = Object.keys(measureUnits) as (keyof typeof measureUnits)[]
export const roles = [...textRoles, ...measureRoles, ...timeRoles, ...tallyRoles, 'factor', 'ignore'] as const
export type TextRole = (typeof textRoles)[number]
export type MeasureRole = keyof typeof measureUnits
export type Role = (typeof roles)[number] | MeasureRole

export function isTextRole(role: Role): role is TextRole {
  return (textRoles as readonly string[]).includes(role)
}

export function isMeasureRole(role: Role): role is MeasureRole {
  return Object.hasOwn(measureUnits, role)
}

/** Roles of which a sheet can have one column only. */
export function isSingleRole(role: Role): boolean {
  return role !== 'tally' && role !== 'factor' && role !== 'ignore' && role !== 'note'
}
