import type { Words } from '@thrum/model/ground'
import { words as contrast } from './contrast/words.es.ts'
import { words as countModelChecks } from './count-model-checks/words.es.ts'
import { words as isDesignSound } from './is-design-sound/words.es.ts'
import { words as tableFit } from './table-fit/words.es.ts'
import { words as whatDiffers } from './what-differs/words.es.ts'
import { words as whoVisits } from './who-visits/words.es.ts'

/** What the questions say to a person, in Spanish. */
export const words: Words = {
  ...contrast,
  ...whatDiffers,
  ...whoVisits,
  ...isDesignSound,
  ...countModelChecks,
  ...tableFit,
}
