import type { Words } from '@thrum/model/ground'
import { words as tableFit } from './print/table-fit.words.en.ts'

/** What `report` says itself, in English. ICU message texts by id. */
export const words: Words = {
  ...tableFit,
  'report/all-kinds': 'all kinds',
  'report/heading/estimates': 'What was found',
  'report/heading/can-say': 'What may be said',
  'report/heading/cannot-say': 'What may not be said',
  'report/heading/cautions': 'Cautions',
  'report/heading/analyses': 'By other analyses',
  'report/heading/next': 'What to do next',
  'report/heading/method': 'How it was worked out',
  'report/table-of': '({unit}; 95\u00a0% interval unless said)',
  'report/table-of/values': '({unit})',
  'report/no-limit': 'no limit',
  'report/units/fields': '{n, plural, one {1 field} other {# fields}}',
  'report/units/pairs-of-fields': '{n, plural, one {1 field} other {# fields}}',
  'report/units/watches': '{n, plural, one {1 watch} other {# watches}}',
  'report/severity/block': '[blocks]',
  'report/severity/warn': '[warns]',
  'report/severity/note': '[note]',
  'report/cure': 'Cure: {cure}',
  'report/evidence': '({rows, plural, one {one count shows} other {# counts show}} it)',
  'report/trust/published': 'published',
  'report/trust/computed': 'computed',
  'report/trust/from-memory': 'from memory',
  'report/trust/common-practice-no-source': 'common practice, no source',
  'report/receipt':
    'Receipt: data {digest}, {selected} of {of} counts, {method}, Thrum {version}. With --receipt FOLDER come the rows and an R script that recomputes it.',
}
