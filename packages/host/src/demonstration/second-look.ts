import type { Rng } from '@thrum/model/ground'
import { shuffled } from '@thrum/stats'
import { type Crop, crops } from './calendar.ts'
import { droneFly, droneFlyShare, honeyBee, plantedKinds, vouchersDrawn } from './planted-truths.ts'
import type { Watch } from './watches.ts'

/** One insect that was kept or pictured when it was tapped, and looked at again. */
export interface Voucher {
  /** Position in the watches. */
  readonly watch: number
  readonly tapped: string
  readonly determined: string
  readonly how: 'photograph' | 'specimen'
}

/** Every third voucher is a specimen, the rest are photographs. */
const specimenEvery = 3

/** Taps of a kind in a crop, each as the watch in which it was made. */
function tapsOf(watches: readonly Watch[], tallies: readonly number[], crop: Crop): readonly number[] {
  return watches.flatMap((watch, k) => (watch.crop === crop ? new Array<number>(tallies[k] ?? 0).fill(k) : []))
}

/** Vouchers drawn at random, without replacement, among the taps of each kind in each crop. */
export function drawVouchers(rng: Rng, watches: readonly Watch[], tallies: readonly (readonly number[])[]): readonly Voucher[] {
  const drawn: Voucher[] = []
  for (const [k, { name }] of plantedKinds.entries()) {
    const numbers = vouchersDrawn.find(({ kind }) => kind === name)
    for (const crop of crops) {
      const own = rng.fork(`${name}/${crop}`)
      const wanted = crop === 'sunflower' ? numbers?.sunflower : numbers?.sweetCherry
      for (const watch of shuffled(own, tapsOf(watches, tallies[k] ?? [], crop)).slice(0, wanted ?? 0)) {
        const isDroneFly = name === honeyBee.name && crop === 'sunflower' && own.uniform() < droneFlyShare
        drawn.push({ watch, tapped: name, determined: isDroneFly ? droneFly : name, how: 'photograph' })
      }
    }
  }
  return drawn
    .sort((a, b) => a.watch - b.watch)
    .map((voucher, k) => (k % specimenEvery === 0 ? { ...voucher, how: 'specimen' } : voucher))
}
