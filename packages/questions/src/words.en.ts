import type { Words } from '@thrum/model/ground'
import { words as contrast } from './contrast/words.en.ts'
import { words as countModelChecks } from './count-model-checks/words.en.ts'
import { words as isDesignSound } from './is-design-sound/words.en.ts'
import { words as tableFit } from './table-fit/words.en.ts'
import { words as whatDiffers } from './what-differs/words.en.ts'
import { words as whoVisits } from './who-visits/words.en.ts'

/** What the questions say to a person, in English. */
export const words: Words = {
  ...contrast,
  ...whatDiffers,
  ...whoVisits,
  ...isDesignSound,
  ...countModelChecks,
  ...tableFit,
}
