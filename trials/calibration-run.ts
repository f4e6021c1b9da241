// One cell of the trial of calibration: many data sets, and how often what was said was right.

import { createRng } from '@thrum/model/ground'
import { type CalibrationCell, keyOf } from './calibration-cells.ts'
import { decide, designOf, limitsKept, limitsOf, verdictOf } from './calibration-decide.ts'
import { fillTotals, placesOfCell } from './calibration-draw.ts'

/** Numbers of data sets, of `sets` made. "Plain" is the same t without the refusals on numbers of insects. */
export interface CellFound {
  readonly sets: number
  readonly answered: number
  /** Of the answered: the 95 % interval holds the true ratio; lies wholly above it. */
  readonly covered: number
  readonly above: number
  /** Of the answered: verdict `shown`; `shown` or `leaning`: with an S just above 1, behind which nothing hides as `alike`. */
  readonly shown: number
  readonly shownOrLeaning: number
  /** Of the answered: `shown` with S = 2. */
  readonly shownAtTwo: number
  /** Of the answered: `alike` with S exactly as large as the true ratio (of a ratio of 1: none is asked). */
  readonly alike: number
  readonly plain: number
  readonly plainCovered: number
  readonly plainShown: number
  /** Medians of the interval's length on the log; 0 where nothing was answered. */
  readonly width: number
  readonly plainWidth: number
  /** Mean of estimate less truth, on the log, over the answered. */
  readonly bias: number
  /** Of the answered: decided by thinning. */
  readonly thinned: number
  readonly refused: { readonly [because: string]: number }
}

/** No S hides behind `alike`: every exclusion of 1 counts. */
const barelyWorth = 1.0001

function medianOf(values: Float64Array): number {
  if (values.length === 0) return 0
  const sorted = values.toSorted()
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1 ? (sorted[middle] as number) : ((sorted[middle - 1] as number) + (sorted[middle] as number)) / 2
}

/**
 * Makes `sets` data sets of a cell and asks the product about each. The same seed and cell make the same sets, whatever else
 * was run.
 */
export function runCell(cell: CalibrationCell, sets: number, seed: string): CellFound {
  const rng = createRng(`calibration/${seed}/${keyOf(cell)}`)
  const places = placesOfCell(cell)
  const design = designOf(cell, places)
  const totals = new Float64Array(places.length)
  const truth = Math.log(cell.ratio)
  const worth = Math.max(cell.ratio, 1 / cell.ratio)
  const widths = new Float64Array(sets)
  const plainWidths = new Float64Array(sets)
  const refused: { [because: string]: number } = {}
  let [answered, covered, above, shown, shownOrLeaning, shownAtTwo, alike] = [0, 0, 0, 0, 0, 0, 0]
  let [plain, plainCovered, plainShown, off, thinned] = [0, 0, 0, 0, 0]
  for (let set = 0; set < sets; set++) {
    fillTotals(rng, cell, places, totals)
    const { refusal, contrast, plain: plainContrast } = decide(cell, design, places, totals)
    if (refusal !== null) refused[refusal] = (refused[refusal] ?? 0) + 1
    if (contrast === null || plainContrast === null) continue
    const ofPlain = limitsOf(plainContrast)
    plainWidths[plain] = ofPlain.upper - ofPlain.lower
    plain += 1
    if (ofPlain.lower <= truth && truth <= ofPlain.upper) plainCovered += 1
    if (verdictOf(plainContrast, barelyWorth) === 'shown') plainShown += 1
    if (refusal !== null) continue
    // Limits of a contrast by thinning are searched for: each level once.
    const limits = limitsKept(contrast)
    const { lower, upper } = limits(0.95)
    const verdict = verdictOf(contrast, barelyWorth, limits)
    widths[answered] = upper - lower
    answered += 1
    if (lower <= truth && truth <= upper) covered += 1
    if (lower > truth) above += 1
    if (verdict === 'shown') shown += 1
    if (verdict === 'shown' || verdict === 'leaning') shownOrLeaning += 1
    if (verdictOf(contrast, 2, limits) === 'shown') shownAtTwo += 1
    if (worth > 1 && verdictOf(contrast, worth, limits) === 'alike') alike += 1
    off += contrast.estimate - truth
    if (contrast.limits !== undefined) thinned += 1
  }
  const round = (value: number): number => Number(value.toPrecision(4))
  return {
    sets,
    answered,
    covered,
    above,
    shown,
    shownOrLeaning,
    shownAtTwo,
    alike,
    plain,
    plainCovered,
    plainShown,
    width: round(medianOf(widths.subarray(0, answered))),
    plainWidth: round(medianOf(plainWidths.subarray(0, plain))),
    bias: answered === 0 ? 0 : round(off / answered),
    thinned,
    refused,
  }
}
