// Totals of a cell: what fields, periods, visits and chance make of its mean.

import type { Rng } from '@thrum/model/ground'
import { drawGamma, drawNormal, drawPoisson } from '@thrum/stats'
import { type CalibrationCell, effortOf, isChanged, placesOf } from './calibration-cells.ts'

/** One total to be drawn: a field at a level or in a period. */
export interface Place {
  readonly field: number
  readonly arm: number
  readonly side: number
  /** Minutes of a visit beside those of the shortest. */
  readonly effort: number
  /** Expected count of a visit in a field like all others, were it not for zero inflation. */
  readonly mean: number
}

/** The totals of a cell in a fixed order: by field, then side. Pairs within fields have one arm. */
export function placesOfCell(cell: CalibrationCell): readonly Place[] {
  const byArm = [0, 1].map((arm) => placesOf(cell).filter(([own]) => own === arm))
  return byArm.flatMap((sides, arm) =>
    sides.length === 0
      ? []
      : Array.from({ length: cell.fields }, (_, k) => k).flatMap((k) =>
          sides.map(([, side]): Place => {
            const effort = effortOf(cell, k, arm, side)
            return {
              field: arm * cell.fields + k,
              arm,
              side,
              effort,
              mean: cell.mean * effort * (isChanged(cell, arm, side) ? cell.ratio : 1),
            }
          }),
        ),
  )
}

/** A factor whose log is normal and whose expectation is 1. */
function drawFactor(rng: Rng, sd: number): number {
  return sd === 0 ? 1 : Math.exp(drawNormal(rng, -(sd * sd) / 2, sd))
}

/** Sum over visits of their gamma and lognormal factors. Gammas of one scale add up to a gamma. */
function drawVisits(rng: Rng, { visits, theta, visitSd, zeroChance }: CalibrationCell): number {
  let present = visits
  if (zeroChance > 0) for (let visit = 0; visit < visits; visit++) if (rng.uniform() < zeroChance) present -= 1
  if (present === 0) return 0
  if (visitSd === 0) return theta === Number.POSITIVE_INFINITY ? present : drawGamma(rng, present * theta, 1 / theta)
  let sum = 0
  for (let visit = 0; visit < present; visit++) {
    sum += drawFactor(rng, visitSd) * (theta === Number.POSITIVE_INFINITY ? 1 : drawGamma(rng, theta, 1 / theta))
  }
  return sum
}

/**
 * Fills `totals`, one for each place. Given their intensities, counts of visits are Poisson, and so is their sum: drawing the
 * sum is the same as drawing each visit's negative binomial and adding.
 */
export function fillTotals(rng: Rng, cell: CalibrationCell, places: readonly Place[], totals: Float64Array): void {
  let field = -1
  let fieldFactor = 1
  places.forEach((place, k) => {
    if (place.field !== field) {
      field = place.field
      fieldFactor = drawFactor(rng, cell.fieldSd)
    }
    const periodFactor = drawFactor(rng, cell.periodSd)
    totals[k] = drawPoisson(rng, place.mean * fieldFactor * periodFactor * drawVisits(rng, cell))
  })
}
