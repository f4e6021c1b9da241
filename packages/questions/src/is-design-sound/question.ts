import { kindsAsked, suggestedWorth } from '../contrast/contrast-case.ts'
import type { Question } from '../question.ts'
import { contrastReceipt } from '../receipt/contrast-receipt.ts'
import { isDesignSoundOptions } from './options.ts'
import { type IsDesignSoundOptions, runIsDesignSound } from './run.ts'

/** The audit alone, before or after counting. */
export const isDesignSound: Question<typeof isDesignSoundOptions> = {
  id: 'is-design-sound',
  needs: ['count', 'tally'],
  options: isDesignSoundOptions,
  run: runIsDesignSound,
  receipt: (snapshot, answer) => {
    const options = answer.receipt.options as IsDesignSoundOptions
    return contrastReceipt(snapshot, answer, options, options.worth ?? suggestedWorth(kindsAsked(options)))
  },
}
