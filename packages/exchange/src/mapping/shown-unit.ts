const signs: { readonly [unit: string]: string } = {
  Cel: '°C',
  degF: '°F',
  m2: 'm²',
  ft2: 'ft²',
  '{flowers}/m2': 'flowers per m²',
}

/** A unit as a person reads it: `Cel` is °C, `{Beaufort}` is Beaufort. */
export function shownUnit(unit: string): string {
  return signs[unit] ?? unit.replace(/[{}]/gu, '')
}
