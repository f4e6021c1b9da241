/** How a column is held against a value: `is` and `contains` for texts, `above` and `below` for numbers. */
export const hows = ['is', 'contains', 'above', 'below'] as const
export type How = (typeof hows)[number]

export interface Filter {
  readonly column: string
  readonly how: How
  readonly value: string
}

const signs = { is: '=', contains: '~', above: '>', below: '<' } as const

export const filterText = ({ column, how, value }: Filter): string => `${column}${signs[how]}${value}`
