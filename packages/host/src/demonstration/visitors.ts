import type { Rng } from '@thrum/model/ground'
import { drawNegativeBinomial, drawNormal } from '@thrum/stats'
import { isFading } from './calendar.ts'
import { plantedFields } from './places.ts'
import { fieldSd, fieldSeasonSd, hiveMove, type PlantedKind, plantedKinds, seasonRatio, visitSd } from './planted-truths.ts'
import type { Watch } from './watches.ts'

/** Draws once for each name and gives the same again: what a field, a season or a visit has of its own. */
function ownOf(rng: Rng, sd: number): (name: string) => number {
  const known = new Map<string, number>()
  return (name) => {
    const found = known.get(name) ?? drawNormal(rng.fork(name), 0, sd)
    known.set(name, found)
    return found
  }
}

/**
 * How many of a kind were tapped in each count.
 *
 * @param strips for each of `plantedFields` whether it has a flower strip
 * @returns one whole number a watch, 0 where none was seen
 */
export function drawTallies(
  rng: Rng,
  kind: PlantedKind,
  watches: readonly Watch[],
  strips: readonly boolean[],
): readonly number[] {
  const ofField = ownOf(rng.fork('field'), fieldSd)
  const ofFieldSeason = ownOf(rng.fork('field and season'), fieldSeasonSd)
  const ofVisit = ownOf(rng.fork('visit'), visitSd)
  const ofEdge = ownOf(rng.fork('edge'), kind.edgeSd)
  const counts = rng.fork('counts')
  return watches.map((watch) => {
    const field = plantedFields[watch.field]?.name ?? ''
    let logMean = Math.log(kind.mean) + ofField(field)
    logMean += watch.season * Math.log(seasonRatio) + ofFieldSeason(`${field}/${watch.season}`)
    logMean += ofVisit(`${field}/${watch.date}`)
    if (strips[watch.field]) logMean += Math.log(kind.stripRatio)
    if (watch.position === 'edge') logMean += Math.log(kind.edgeRatio) + ofEdge(field)
    if (watch.half === 'afternoon') logMean += Math.log(kind.afternoonRatio)
    if (watch.observer === 2) logMean += Math.log(kind.seenByObserver2)
    if (isFading(watch.crop, watch.season, watch.day)) logMean += Math.log(hiveMove.fade * hiveMove.hiveRatio)
    return drawNegativeBinomial(counts, Math.exp(logMean), kind.theta)
  })
}

/** Tallies of every planted kind, in the order of `plantedKinds`. */
export function drawAllTallies(rng: Rng, watches: readonly Watch[], strips: readonly boolean[]): readonly (readonly number[])[] {
  return plantedKinds.map((kind) => drawTallies(rng.fork(kind.name), kind, watches, strips))
}

/** Open flowers on a plot in full flowering, the same at edge and centre and with or without strip; area of a plot [m2]. */
const openFlowers = { 'sweet cherry': 320, sunflower: 900 } as const
export const plotArea = { 'sweet cherry': 4, sunflower: 2 } as const
const flowersFieldSd = 0.05
const flowersCountSd = 0.06

/** Open flowers counted on the plot of each count. They fade as the visitors do. */
export function drawFlowers(rng: Rng, watches: readonly Watch[]): readonly number[] {
  const ofField = ownOf(rng.fork('field'), flowersFieldSd)
  const ofCount = rng.fork('counts')
  return watches.map((watch) => {
    const own = ofField(plantedFields[watch.field]?.name ?? '') + drawNormal(ofCount, 0, flowersCountSd)
    const fade = isFading(watch.crop, watch.season, watch.day) ? hiveMove.fade : 1
    return Math.round(openFlowers[watch.crop] * fade * Math.exp(own))
  })
}
