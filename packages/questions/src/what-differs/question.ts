import type { Question } from '../question.ts'
import { contrastReceipt } from '../receipt/contrast-receipt.ts'
import { kindsReceipt } from '../receipt/kinds-receipt.ts'
import { whatDiffersOptions } from './options.ts'
import { requireWorth, runContrast, type WhatDiffersOptions } from './run.ts'
import { runKinds } from './run-kinds.ts'

const isOfKinds = (options: WhatDiffersOptions): boolean => options.between === 'kind'

/** A contrast between levels of anything recorded, kinds among them. */
export const whatDiffers: Question<typeof whatDiffersOptions> = {
  id: 'what-differs',
  needs: ['count', 'tally'],
  options: whatDiffersOptions,
  run: (snapshot, options, work) =>
    isOfKinds(options) ? runKinds(snapshot, options, work) : runContrast(snapshot, options, work),
  receipt: (snapshot, answer) => {
    const options = answer.receipt.options as WhatDiffersOptions
    return isOfKinds(options)
      ? kindsReceipt(snapshot, answer, options)
      : contrastReceipt(snapshot, answer, options, requireWorth(options))
  },
}
