import { selectionOptions } from '../contrast/options.ts'

export const whoVisitsOptions = {
  kinds: { type: 'texts', offers: 'kinds', explained: 'questions/option/kinds-each' },
  by: { type: 'text', offers: 'factors', explained: 'questions/option/by' },
  ...selectionOptions,
} as const
