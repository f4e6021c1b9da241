import type { Author, Fact } from '@thrum/model'
import { createRng } from '@thrum/model/ground'
import { drawCropSamples } from './crop-samples.ts'
import { createFactWriter } from './fact-writer.ts'
import { habitatBlooms } from './habitat.ts'
import { drawStrips, plantedNouns } from './planted-nouns.ts'
import { countTable, habitatTable, sampleTable, sprayTable, tallyTable, voucherTable, weatherTable } from './planted-tables.ts'
import { drawVouchers } from './second-look.ts'
import { drawSkies, drawWeather } from './sky.ts'
import { sprayDiary } from './spray-diary.ts'
import { drawAllTallies, drawFlowers } from './visitors.ts'
import { planWatches } from './watches.ts'

export interface DemonstrationAsked {
  /** Any text; the same text gives the same facts, ids included. */
  readonly seed: string
  readonly author: Author
}

/**
 * The demonstration project Ostrel Vale as facts, like those a person and their sheets would leave: an invented valley of
 * four sweet-cherry orchards and four sunflower-seed fields, 160 counts over two seasons, and all that lies around them.
 * What is true of it stands in `planted-truths.ts`; what may be asked of it in `planted-questions.ts`.
 *
 * @returns facts in the order in which they were written, the plan before any count
 */
export function demonstrationFacts({ seed, author }: DemonstrationAsked): readonly Fact[] {
  const rng = createRng(`ostrel vale/${seed}`)
  const write = createFactWriter(seed, author)
  const strips = drawStrips(rng.fork('strips'))
  const watches = planWatches(rng.fork('starts'))
  const weather = drawWeather(rng.fork('weather'))
  const skies = drawSkies(rng.fork('skies'), weather, watches)
  const tallies = drawAllTallies(rng.fork('visitors'), watches, strips)
  const flowers = drawFlowers(rng.fork('flowers'), watches)
  const vouchers = drawVouchers(rng.fork('vouchers'), watches, tallies)
  return [
    ...plantedNouns(seed, write, strips),
    ...write.sheet('counts.csv', [countTable(watches, skies, flowers), tallyTable(watches, tallies)]),
    ...write.sheet('vouchers.csv', [voucherTable(vouchers, watches)]),
    ...write.sheet('crop-samples.csv', [sampleTable(drawCropSamples(rng.fork('crop samples')))]),
    ...write.sheet('weather.csv', [weatherTable(weather)]),
    ...write.sheet('habitat.csv', [habitatTable(habitatBlooms(strips))]),
    ...write.sheet('sprays.csv', [sprayTable(sprayDiary())]),
  ]
}
