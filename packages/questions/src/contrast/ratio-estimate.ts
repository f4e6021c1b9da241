import type { Estimate } from '@thrum/model'
import { type Saying, type SayingValue, saying } from '@thrum/model/ground'
import { type Contrast, ratioOfContrast } from '@thrum/stats'
import type { KindSet, PairContrast } from '@thrum/survey'
import type { ContrastCase } from './contrast-case.ts'
import { levelNames, rateNoun } from './phrases.ts'

/** A number as JSON can hold it: an endless limit is null. */
export const finite = (value: number): number | null => (Number.isFinite(value) ? value : null)

export const ratioUnit: Saying = saying('questions/unit/ratio')

/** A pair of one kind, as a ratio of it is told. */
export interface ToldPair {
  readonly kind: KindSet
  readonly pair: PairContrast
}

/** One ratio of a pair: which contrast, at which level, under which name. */
export interface RatioRow {
  /** Behind the name of kind and level; null for the headline itself. */
  readonly name: string | null
  readonly label: string
  readonly values?: { readonly [name: string]: SayingValue }
  readonly contrast: Contrast
  /** True where it was adjusted for something. */
  readonly adjusted: boolean
  readonly level?: number
  readonly role?: Estimate['role']
  readonly verdict?: Estimate['verdict']
}

/** What a contrast is made of: rates, or counts of one kind for each of another. */
export const contrastMethod = (
  { against }: Pick<ContrastCase, 'against'>,
  { limits }: Pick<Contrast, 'limits'>,
  adjusted: boolean,
): string =>
  `questions/method/${against !== null ? 'relative-t' : limits === undefined ? 'field-t' : 'thinned'}${adjusted ? '-adjusted' : ''}`

/** The one way in which a ratio of fields becomes an estimate, whichever analysis it is of. */
export function ratioEstimate(asked: ContrastCase, { kind, pair }: ToldPair, row: RatioRow): Estimate {
  const { level = 0.95, role = 'beside', verdict = null } = row
  const { ratio, lower, upper } = ratioOfContrast(row.contrast, level)
  const isPairs = pair.units.layout === 'within' && asked.design.structure !== 'before-after-control'
  return {
    id: [`ratio/${kind.label}/${asked.design.levels[pair.level] ?? ''}`, ...(row.name === null ? [] : [row.name])].join('/'),
    label: saying(row.label, { kind: kind.label, ...levelNames(asked, pair.level), noun: rateNoun(asked), ...row.values }),
    value: finite(ratio),
    interval: { low: finite(lower), high: finite(upper), level },
    unit: ratioUnit,
    scale: 'ratio',
    n: pair.units.z.length,
    counts: isPairs ? 'pairs of fields' : 'fields',
    method: saying(contrastMethod(asked, row.contrast, row.adjusted)),
    role,
    verdict,
  }
}
