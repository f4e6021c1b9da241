import { exp, log, log1p } from '../../src/elementary.ts'
import { checksumOf, doublesBetween, doublesOfAnySize } from './bits.ts'

/**
 * Checksums of half a million outputs: of doubles of any size, and of those that kernels meet. Fixed in the test; the same bits must come
 * out of every engine.
 */
export function elementaryChecksums(): { readonly [name: string]: number } {
  const any = doublesOfAnySize(60_000, 20_261_128)
  return {
    'exp, any size': checksumOf(exp, any),
    'exp, -746 to 710': checksumOf(exp, doublesBetween(-746, 710, 100_000)),
    'exp, -3 to 3': checksumOf(exp, doublesBetween(-3, 3, 50_000)),
    'log, any size': checksumOf(log, any),
    'log, 0 to 3': checksumOf(log, doublesBetween(0, 3, 100_000)),
    'log1p, any size': checksumOf(log1p, any),
    'log1p, -1 to 1': checksumOf(log1p, doublesBetween(-1, 1, 100_000)),
  }
}
