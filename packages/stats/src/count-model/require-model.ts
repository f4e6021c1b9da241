import { InputError, requireFinite } from '@thrum/model/ground'
import type { Grouping } from './effects/grouping.ts'
import type { Response } from './family/family.ts'
import type { CountModel } from './model.ts'

/** With fewer nodes the gradient is not that of the sum to the last digits; with more, the outer weights vanish. */
const fewestNodes = 9
const mostNodes = 101

function requireLength(name: string, length: number, n: number): void {
  if (length !== n)
    throw new InputError('ground/input/lengths-differ', `${name} has ${length} entries; expected ${n}, one per row`)
}

function requireCounts(name: string, values: ArrayLike<number>, n: number): Float64Array {
  requireLength(name, values.length, n)
  const own = Float64Array.from(values)
  for (const value of own) {
    if (!(Number.isInteger(value) && value >= 0))
      throw new InputError('ground/input/out-of-range', `${name} holds ${value}; expected whole numbers from 0`)
  }
  return own
}

/** @throws InputError where a grouping does not give each row one of its levels, or its slope is not finite */
export function requireGrouping({ name, of, levels, slope }: Grouping, n: number): void {
  if (of.length !== n || of.some((level) => level < 0 || level >= levels))
    throw new InputError('ground/input/out-of-range', `grouping ${name} does not give each row one of ${levels} levels`)
  if (slope === undefined) return
  requireLength(`slope ${slope.name} of ${name}`, slope.values.length, n)
  for (let i = 0; i < n; i++) requireFinite(`slope ${slope.name} of ${name}`, slope.values[i] as number)
}

/** @throws InputError on lengths that differ, counts that are not whole numbers from 0, a level that is not there, an offset without end */
export function requireModel({ family, counts, trials, design, offset, groupings = [], zeros, nodes }: CountModel): {
  readonly response: Response
  readonly offset: Float64Array
} {
  const { rows: n } = design
  const own = requireCounts('counts', counts, n)
  const isShare = family === 'binomial' || family === 'beta-binomial'
  if (isShare !== (trials !== undefined))
    throw new InputError(
      'ground/input/out-of-range',
      isShare ? `family ${family} needs trials, out of how many` : `family ${family} takes no trials`,
    )
  const most = trials === undefined ? null : requireCounts('trials', trials, n)
  if (most !== null && own.some((count, i) => count > (most[i] as number)))
    throw new InputError('ground/input/out-of-range', 'a count is above its trials')
  if (offset !== undefined) requireLength('offset', offset.length, n)
  const shifts = Float64Array.from({ length: n }, (_, i) => offset?.[i] ?? 0)
  for (const value of shifts) requireFinite('offset', value)
  for (const grouping of groupings) requireGrouping(grouping, n)
  if (zeros !== undefined && zeros.rows !== n)
    throw new InputError('ground/input/lengths-differ', `zeros has ${zeros.rows} rows; expected ${n}`)
  if (zeros !== undefined && isShare)
    throw new InputError('ground/input/out-of-range', 'zeros of another origin go with counts, not with shares')
  if (nodes !== undefined) {
    if (!(Number.isInteger(nodes) && (nodes === 1 || (nodes >= fewestNodes && nodes <= mostNodes))))
      throw new InputError(
        'ground/input/out-of-range',
        `nodes is ${nodes}; expected 1, which is Laplace, or ${fewestNodes} to ${mostNodes}`,
      )
    if (groupings.length !== 1 || groupings[0]?.slope !== undefined)
      throw new InputError('ground/input/out-of-range', 'quadrature is for one grouping without a slope; leave nodes out')
  }
  return { response: { counts: own, trials: most }, offset: shifts }
}
