import type { CountingUnit } from '@thrum/model'
import { foldedName } from '../cell/plain-name.ts'

const snapshot = /snapshot|scan|instant|momentaufnahme|ogonblick|ojeblik|instantane/u
const visits = /visit|besuche|besok|besog|visita/u
const individuals = /individu|insect|bees?$|insekt|tiere|djur|dyr|insecto|insecte/u

/** The counting unit a word stands for; null where it stands for none. */
export function countingUnitOf(word: string): CountingUnit | null {
  const plain = foldedName(word)
  if (snapshot.test(plain)) return 'snapshot'
  if (visits.test(plain)) return 'visits'
  return individuals.test(plain) ? 'individuals' : null
}
