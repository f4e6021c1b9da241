/** Hours of the local solar day: `from` to `to` are in; up to `marginalFrom` and `marginalTo` marginal; the rest out [h]. */
export interface CountingHours {
  readonly marginalFrom: number
  readonly from: number
  readonly to: number
  readonly marginalTo: number
}

/** 10:00 to 16:00 in, an hour before and an hour and a half after marginal. Common practice, no source. */
export const generalHours: CountingHours = { marginalFrom: 9, from: 10, to: 16, marginalTo: 17.5 }

/** Squash and pumpkin: flowers close by late morning, so nothing is marginal. Common practice, no source. */
export const squashHours: CountingHours = { marginalFrom: 6, from: 6, to: 10, marginalTo: 10 }

/** Cucumber and melon. Common practice, no source. */
export const cucumberHours: CountingHours = { marginalFrom: 7, from: 7, to: 13, marginalTo: 13 }

const squashWords = [
  'squash',
  'pumpkin',
  'cucurbita',
  'courgette',
  'zucchini',
  'pumpa',
  'græskar',
  'kürbis',
  'calabaza',
  'potiron',
  'courge',
]
const cucumberWords = [
  'cucumber',
  'melon',
  'cucumis',
  'citrullus',
  'gurka',
  'agurk',
  'gurke',
  'pepino',
  'sandía',
  'concombre',
  'pastèque',
]

const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()

/**
 * The hours in which flowers of a crop are open and visited, as a default that a project may change per cultivar.
 *
 * Found by a word inside the crop's name (English, Latin and a few other languages). Every crop not named here, an unnamed
 * one included, has the general hours.
 *
 * @param crop the crop as the project writes it, or null where none was written
 * @source Common practice, no source.
 */
export function countingHoursOf(crop: string | null): CountingHours {
  const name = plain(crop ?? '')
  if (squashWords.some((word) => name.includes(plain(word)))) return squashHours
  if (cucumberWords.some((word) => name.includes(plain(word)))) return cucumberHours
  return generalHours
}
