import { shortened as beginning, shownOfCell } from '@thrum/exchange'
import type { Saying, SayingValue } from '@thrum/model/ground'

/** A text as it is shown. A cell of a megabyte is not sent to a page that shows a line of it. */
export const shortText = (text: string): string => beginning(text, shownOfCell)

function shortValue(value: SayingValue): SayingValue {
  if (typeof value === 'string') return shortText(value)
  if (typeof value === 'number') return value
  return Array.isArray(value) ? value.map((own: Saying) => shortened(own)) : shortened(value as Saying)
}

/** A sentence whose blanks are no longer than is shown. */
export function shortened({ id, values }: Saying): Saying {
  return { id, values: Object.fromEntries(Object.entries(values).map(([name, value]) => [name, shortValue(value)])) }
}
