import type { Saying, SayingValue } from '@thrum/model/ground'

/** Letters of a cell that are shown; the file keeps them all. */
const most = 200

/** A text as it is shown. A cell of a megabyte is not sent to a page that shows a line of it. */
export function shortText(text: string): string {
  if (text.length <= most) return text
  // Cut between characters, never through one.
  return `${[...text.slice(0, most + 1)].slice(0, -1).join('')}…`
}

function shortValue(value: SayingValue): SayingValue {
  if (typeof value === 'string') return shortText(value)
  if (typeof value === 'number') return value
  return Array.isArray(value) ? value.map((own: Saying) => shortened(own)) : shortened(value as Saying)
}

/** A sentence whose blanks are no longer than is shown. */
export function shortened({ id, values }: Saying): Saying {
  return { id, values: Object.fromEntries(Object.entries(values).map(([name, value]) => [name, shortValue(value)])) }
}
