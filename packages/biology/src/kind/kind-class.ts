/** What a visitor group is, as far as range, weather and hives need to know. `butterfly` holds moths too. */
export type KindClass = 'honey-bee' | 'bumble-bee' | 'solitary-bee' | 'hover-fly' | 'butterfly' | 'beetle' | 'other'

export const kindClasses: readonly KindClass[] = [
  'honey-bee',
  'bumble-bee',
  'solitary-bee',
  'hover-fly',
  'butterfly',
  'beetle',
  'other',
]
