import type { Snapshot, TextColumn } from '@thrum/model'
import type { Design } from '../design/design.ts'
import { solarHour } from '../design/window.ts'
import { codedNumbers } from '../factor/coded-numbers.ts'
import type { FactorAbout } from '../factor/factor.ts'

export const nuisanceNames = ['date', 'stage', 'hour', 'temperature', 'observer', 'season', 'position'] as const
export type NuisanceName = (typeof nuisanceNames)[number]

/** What may differ between levels beside what is asked, as people reason about it. One value a row of the design; NaN: not recorded. */
export interface Nuisance {
  readonly name: NuisanceName
  readonly columns: readonly Float64Array[]
  /** A column whose residuals range less than this is too even to mislead. */
  readonly even: number
  /** How many rows of the design have it recorded. */
  readonly recorded: number
}

/**
 * Ranges below which a nuisance cannot mislead: days, BBCH codes, hours, degrees, shares.
 * Common practice, no source (methods 2.11).
 */
const evenBelow: { readonly [name in NuisanceName]: number } = {
  date: 2,
  stage: 1,
  hour: 0.5,
  temperature: 1.5,
  observer: 0.1,
  season: 0.1,
  position: 0.1,
}

/** What a question asks about is no nuisance to itself (methods 2.11). */
const ownNuisances: { readonly [about in FactorAbout]?: readonly NuisanceName[] } = {
  date: ['date', 'stage'],
  stage: ['date', 'stage'],
  hour: ['hour', 'temperature'],
  season: ['date', 'season', 'temperature'],
  observer: ['observer'],
  position: ['position'],
}

export function ownNuisancesOf(design: Design): readonly NuisanceName[] {
  return design.factor === null ? [] : (ownNuisances[design.factor.about] ?? [])
}

/** Solar noon and one hour more: hours are told from here, so that their square is a curve over the day (methods 2.11). */
export const middleOfDay = 13

/** A number of each row of a design. */
function overRows({ rows }: Design, at: (row: number) => number): Float64Array {
  const found = new Float64Array(rows.length)
  for (let k = 0; k < rows.length; k++) found[k] = at(rows[k] as number)
  return found
}

const numbersAt = (design: Design, values: Float64Array): Float64Array => overRows(design, (row) => values[row] ?? Number.NaN)

/** Indicator columns of each word but the first; null where the design holds fewer than two words. */
function sharesOf({ rows }: Design, { codes, dictionary }: TextColumn): readonly Float64Array[] {
  const used = new Uint8Array(dictionary.length)
  for (let k = 0; k < rows.length; k++) {
    const code = codes[rows[k] as number] ?? -1
    if (code >= 0) used[code] = 1
  }
  const [, ...words] = Array.from(used.keys()).filter((code) => used[code] === 1)
  const columns = words.map(() => new Float64Array(rows.length))
  /** By code of a word its column; the first word has none. */
  const columnOf = Array.from(used, (_, code) => columns[words.indexOf(code)])
  for (let k = 0; k < rows.length; k++) {
    const code = codes[rows[k] as number] ?? -1
    if (code < 0) for (const column of columns) column[k] = Number.NaN
    const own = columnOf[code]
    if (own !== undefined) own[k] = 1
  }
  return columns
}

/** Length of a year [d]: days of several years are laid over each other. */
const yearLength = 365.25

/** Where the longest stretch of the year without a count ends: there the field season of this design begins [d of year]. */
function seasonStart(days: readonly number[]): number {
  const ofYear = [...new Set(days.map((day) => ((day % yearLength) + yearLength) % yearLength))].sort((a, b) => a - b)
  const last = ofYear.at(-1) ?? 0
  let start = ofYear[0] ?? 0
  let longest = start + yearLength - last
  for (const [k, day] of ofYear.entries()) {
    const gap = day - (ofYear[k - 1] ?? day)
    if (gap > longest) {
      longest = gap
      start = day
    }
  }
  return start
}

/**
 * Days; where several field seasons are pooled (the season itself is a nuisance of its own), days since the start of each.
 * A field season may run over New Year.
 */
function datesOf(snapshot: Snapshot, design: Design): Float64Array {
  const days = numbersAt(design, snapshot.tables.count.columns.date.values)
  const known = [...codedNumbers(days).values]
  if (known.length === 0) return days
  // Half a day of slack: the same calendar day drifts by a quarter of a day from year to year.
  const start = seasonStart(known) - 0.5
  const seasonOf = (day: number): number => Math.floor((day - start) / yearLength)
  const seasons = new Set(known.map(seasonOf))
  return seasons.size > 1 ? days.map((day) => day - Math.round(start + 0.5 + seasonOf(day) * yearLength)) : days
}

function hoursOf(snapshot: Snapshot, design: Design): readonly Float64Array[] {
  const hours = overRows(design, (row) => (solarHour(snapshot, row)?.hour ?? Number.NaN) - middleOfDay)
  return [hours, hours.map((hour) => hour * hour)]
}

function recordedRows([column]: readonly Float64Array[]): number {
  if (column === undefined) return 0
  let recorded = 0
  for (let k = 0; k < column.length; k++) if (!Number.isNaN(column[k] as number)) recorded++
  return recorded
}

function findNuisances(snapshot: Snapshot, design: Design): readonly Nuisance[] {
  const { columns } = snapshot.tables.count
  const own = ownNuisancesOf(design)
  const columnsOf: { readonly [name in NuisanceName]: () => readonly Float64Array[] } = {
    date: () => [datesOf(snapshot, design)],
    stage: () => [numbersAt(design, columns.stage.values)],
    hour: () => hoursOf(snapshot, design),
    temperature: () => [numbersAt(design, columns.temperature.values)],
    observer: () => sharesOf(design, columns.observer),
    season: () => sharesOf(design, columns.season),
    position: () => sharesOf(design, columns.position),
  }
  return nuisanceNames
    .filter((name) => !own.includes(name))
    .map((name) => {
      const made = columnsOf[name]()
      const recorded = recordedRows(made)
      return { name, columns: recorded === 0 ? [] : made, even: evenBelow[name], recorded }
    })
}

/** A cache and nothing else: neither a design nor its snapshot is ever changed, and what is kept goes with the design. */
const kept = new WeakMap<Design, { readonly of: Snapshot; readonly nuisances: readonly Nuisance[] }>()

/**
 * The nuisances of a design, those left out that are part of what is asked. A nuisance with fewer than two words, or
 * recorded in no row, has no columns. Found once for a design, whoever asks.
 */
export function nuisancesOf(snapshot: Snapshot, design: Design): readonly Nuisance[] {
  const known = kept.get(design)
  if (known?.of === snapshot) return known.nuisances
  const nuisances = findNuisances(snapshot, design)
  kept.set(design, { of: snapshot, nuisances })
  return nuisances
}
