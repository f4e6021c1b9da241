import type { Question } from '../question.ts'
import { visitsReceipt } from '../receipt/visits-receipt.ts'
import type { WhoVisitsOptions } from './groups.ts'
import { whoVisitsOptions } from './options.ts'
import { runWhoVisits } from './run.ts'

/** Rates and shares per kind, by field, stage, season or anything recorded. */
export const whoVisits: Question<typeof whoVisitsOptions> = {
  id: 'who-visits',
  needs: ['count', 'tally'],
  options: whoVisitsOptions,
  run: runWhoVisits,
  receipt: (snapshot, answer) => visitsReceipt(snapshot, answer, answer.receipt.options as WhoVisitsOptions),
}
