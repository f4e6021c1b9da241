import type { Snapshot } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import type { Factor, FactorAbout } from './factor.ts'

/**
 * How a measured level enters: as it is; as ln(distance + 10 m); as ln(hives per ha + 0.5) (methods 1.7 and 2.8). On the two
 * logarithms a step is a factor, else a number of units.
 */
export type MeasuredScale = 'linear' | 'log-distance' | 'log-hives'

/** Metres added to a distance before its logarithm (methods 1.7, common practice). */
const addedMetres = 10
/** Hives per hectare added before the logarithm (methods 2.8). */
const addedHives = 0.5

/** A level that was measured: for each count of the snapshot its number as it enters; NaN where there is none. */
export interface MeasuredFactor {
  readonly name: string
  readonly about: FactorAbout
  readonly scale: MeasuredScale
  readonly values: Float64Array
}

const logDistance = (metres: number): number => Math.log(metres + addedMetres)
const logHives = (perHectare: number): number => Math.log(perHectare + addedHives)

function hivesPerHectare(snapshot: Snapshot): Float64Array {
  const { hives } = snapshot.tables.count.columns
  return hives.values.map((number, row) => number / (snapshot.fields[snapshot.countField[row] ?? -1]?.hectares ?? Number.NaN))
}

/** @throws ThrumError survey/factor/not-measured, naming what was measured */
export function measuredFactor(snapshot: Snapshot, name: string): MeasuredFactor {
  const { columns, factors } = snapshot.tables.count
  const own = factors.get(name)
  if (own?.type === 'number') return { name, about: 'other', scale: 'linear', values: own.values }
  const known: { readonly [name: string]: () => Omit<MeasuredFactor, 'name'> } = {
    'hives per ha': () => ({ about: 'hives', scale: 'log-hives', values: hivesPerHectare(snapshot).map(logHives) }),
    'hive distance': () => ({ about: 'hives', scale: 'log-distance', values: columns.hiveDistance.values.map(logDistance) }),
    'edge distance': () => ({ about: 'position', scale: 'log-distance', values: columns.edgeDistance.values.map(logDistance) }),
    stage: () => ({ about: 'stage', scale: 'linear', values: columns.stage.values }),
    temperature: () => ({ about: 'other', scale: 'linear', values: columns.temperature.values }),
    flowers: () => ({ about: 'other', scale: 'linear', values: columns.flowers.values }),
  }
  const found = Object.hasOwn(known, name) ? known[name]?.() : undefined
  if (found === undefined || found.values.every(Number.isNaN)) {
    const measured = [...factors].flatMap(([factor, column]) => (column.type === 'number' ? [factor] : []))
    throw new ThrumError('survey/factor/not-measured', { name, known: [...Object.keys(known), ...measured].join(', ') })
  }
  return { name, ...found }
}

/** Length of one step as the measured number enters. */
export function stepLength({ scale }: Pick<MeasuredFactor, 'scale'>, step: number): number {
  return scale === 'linear' ? step : Math.log(step)
}

const median = (sorted: readonly number[]): number => sorted[Math.floor((sorted.length - 1) / 2)] ?? Number.NaN

/** The number as a person wrote it, back from how it enters. */
function asWritten({ scale }: MeasuredFactor, value: number): number {
  const plain = scale === 'linear' ? value : Math.exp(value) - (scale === 'log-distance' ? addedMetres : addedHives)
  return Math.round(plain * 100) / 100
}

/**
 * The lower and the upper half of a measured level, so that a person sees what was counted where and the audit can ask of
 * both: split at the median of fields where a field has one number, else of counts. The slope itself uses the numbers.
 */
export function halvesOf(snapshot: Snapshot, selected: ArrayLike<number>, measured: MeasuredFactor): Factor {
  const byField = new Map<number, { low: number; high: number }>()
  const values: number[] = []
  for (const row of Array.from(selected)) {
    const value = measured.values[row] ?? Number.NaN
    if (Number.isNaN(value)) continue
    values.push(value)
    const field = snapshot.countField[row] ?? -1
    const span = byField.get(field) ?? { low: value, high: value }
    byField.set(field, { low: Math.min(span.low, value), high: Math.max(span.high, value) })
  }
  const isOfFields = [...byField.values()].every(({ low, high }) => low === high)
  const split = median((isOfFields ? [...byField.values()].map(({ low }) => low) : values).sort((a, b) => a - b))
  const written = asWritten(measured, split)
  return {
    name: measured.name,
    about: measured.about,
    levels: [`≤ ${written}`, `> ${written}`],
    levelOf: Int32Array.from(measured.values, (value) => (Number.isNaN(value) ? -1 : value <= split ? 0 : 1)),
    assigned: snapshot.assigned.get(measured.name) ?? 'not known',
  }
}
