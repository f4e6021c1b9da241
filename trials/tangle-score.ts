// How tangled a made design really is. Plain Gram-Schmidt on columns written out in full: nothing here comes from the audit
// that it is held against.

/** One watch of a made design. */
export interface Watch {
  readonly field: string
  readonly block: string
  readonly level: 0 | 1
  /** 0 before, 1 after; 0 where time does not divide. */
  readonly period: 0 | 1
  /** Day within its year, and year. */
  readonly day: number
  readonly year: number
  /** Solar hour of the middle of the watch. */
  readonly hour: number
  readonly minutes: number
  readonly stage: number
  readonly temperature: number
  readonly observer: string
  readonly position: string
}

export type Structure = 'between, own dates' | 'between, common dates' | 'within' | 'before/after' | 'before/after with controls'
export type Planted = 'date' | 'stage' | 'hour' | 'temperature' | 'observer' | 'season' | 'position' | 'date with stage'

/** Spreads below which a nuisance cannot mislead: days, codes, hours, degrees, shares. From the handbook, 2.11. */
const spreads: { readonly [name: string]: number } = { date: 2, stage: 1, hour: 0.5, temperature: 1.5 }
const spreadOfShares = 0.1

/** From here on a design counts as aliased, and up to here as sound. */
export const aliasedFrom = 0.95
export const soundUpTo = 0.5

export interface Score {
  /** Partial R2 of what is asked on the planted nuisance, and on date with stage. */
  readonly planted: number
  readonly dateWithStage: number
  /** Every value of one level lies beyond all of the other in each block, and fewer than 2 df would be left to adjust. */
  readonly apartWithoutFreedom: boolean
  readonly verdict: 'aliased' | 'sound' | 'between' | 'even'
}

type Vector = number[]
const dot = (a: Vector, b: Vector): number => a.reduce((sum, value, k) => sum + value * (b[k] as number), 0)

/** Orthonormal vectors that span the columns; columns that add nothing are left out. */
function basisOf(columns: readonly Vector[]): readonly Vector[] {
  const basis: Vector[] = []
  for (const column of columns) {
    const rest = residual(column, basis)
    const length = Math.sqrt(dot(rest, rest))
    if (length > 1e-8 * (1 + Math.sqrt(dot(column, column)))) basis.push(rest.map((value) => value / length))
  }
  return basis
}

function residual(column: Vector, basis: readonly Vector[]): Vector {
  let rest = column
  for (let pass = 0; pass < 2; pass++) {
    for (const direction of basis) {
      const along = dot(rest, direction)
      rest = rest.map((value, k) => value - along * (direction[k] as number))
    }
  }
  return rest
}

function partialR2(contrast: Vector, kept: readonly Vector[], nuisance: readonly Vector[]): number {
  const base = basisOf(kept)
  const before = residual(contrast, base)
  const after = residual(contrast, [...base, ...basisOf(nuisance.map((column) => residual(column, base)))])
  const whole = dot(before, before)
  return whole < 1e-12 ? 1 : Math.min(1, Math.max(0, 1 - dot(after, after) / whole))
}

/** Rows on which the contrast stands: fields, cells of field and period, or the watches themselves. */
interface Rows {
  readonly watches: readonly (readonly Watch[])[]
  /** Fields (within, before/after) or blocks. */
  readonly group: readonly string[]
  readonly contrast: Vector
  /** Level of a row, for overlap. */
  readonly level: readonly number[]
}

function rowsOf(structure: Structure, watches: readonly Watch[]): Rows {
  if (structure === 'within') {
    return {
      watches: watches.map((watch) => [watch]),
      group: watches.map(({ field }) => field),
      contrast: watches.map(({ level }) => level),
      level: watches.map(({ level }) => level),
    }
  }
  const byPeriod = structure === 'before/after' || structure === 'before/after with controls'
  const cells = [...Map.groupBy(watches, ({ field, period }) => (byPeriod ? `${field}/${period}` : field)).values()]
  const first = cells.map((cell) => cell[0] as Watch)
  const level = first.map((watch) => (structure === 'before/after' ? watch.period : watch.level))
  return {
    watches: cells,
    group: first.map(({ field, block }) => (byPeriod ? field : block)),
    contrast: first.map((watch, k) =>
      structure === 'before/after with controls' ? watch.level * watch.period : (level[k] as number),
    ),
    level,
  }
}

const indicators = (words: readonly string[]): readonly Vector[] =>
  [...new Set(words)].map((word) => words.map((own) => (own === word ? 1 : 0)))

/** Blocks, fields, and the period of each block where there are controls. */
function keptColumns(structure: Structure, rows: Rows): readonly Vector[] {
  const groups = indicators(rows.group)
  if (structure !== 'before/after with controls') return groups
  const first = rows.watches.map((cell) => cell[0] as Watch)
  return [...groups, ...indicators(first.map(({ block, period }) => (period === 1 ? block : '')))]
}

function meanOf(rows: Rows, value: (watch: Watch) => number): Vector {
  return rows.watches.map((cell) => {
    const minutes = cell.reduce((sum, watch) => sum + watch.minutes, 0)
    return cell.reduce((sum, watch) => sum + watch.minutes * value(watch), 0) / minutes
  })
}

/** Columns of a nuisance, with the spread below which each is too even. */
function columnsOf(
  planted: Planted,
  rows: Rows,
  all: readonly Watch[],
): readonly { readonly column: Vector; readonly spread: number }[] {
  const number = (name: string, value: (watch: Watch) => number) => [{ column: meanOf(rows, value), spread: spreads[name] ?? 0 }]
  const shares = (word: (watch: Watch) => string) =>
    [...new Set(all.map(word))]
      .sort()
      .slice(1)
      .map((own) => ({ column: meanOf(rows, (watch) => (word(watch) === own ? 1 : 0)), spread: spreadOfShares }))
  switch (planted) {
    case 'date':
      return number('date', ({ day }) => day)
    case 'stage':
      return number('stage', ({ stage }) => stage)
    case 'date with stage':
      return [...number('date', ({ day }) => day), ...number('stage', ({ stage }) => stage)]
    case 'temperature':
      return number('temperature', ({ temperature }) => temperature)
    case 'hour':
      return [...number('hour', ({ hour }) => hour - 13), { column: meanOf(rows, ({ hour }) => (hour - 13) ** 2), spread: 0 }]
    case 'observer':
      return shares(({ observer }) => observer)
    case 'position':
      return shares(({ position }) => position)
    case 'season':
      return shares(({ year }) => String(year))
  }
}

function spreadOf(column: Vector, group: readonly string[]): number {
  const rest = residual(column, basisOf(indicators(group)))
  return Math.max(...rest) - Math.min(...rest)
}

/** Columns that are not too even to mislead; an hour and its square go together. */
function uneven(planted: Planted, columns: ReturnType<typeof columnsOf>, group: readonly string[]): readonly Vector[] {
  const enough = columns.map(({ column, spread }) => spreadOf(column, group) >= spread * (1 - 1e-9))
  return columns.filter((_, k) => (planted === 'hour' ? enough[0] : enough[k])).map(({ column }) => column)
}

/** Every unit of one level beyond every unit of the other, the same way round in each block (or field) that holds both. */
function liesApart(structure: Structure, rows: Rows, column: Vector): boolean {
  let values = column
  let level = rows.level
  let group = rows.group
  if (structure === 'before/after with controls') {
    const first = rows.watches.map((cell) => cell[0] as Watch)
    const fields = [...new Set(first.map(({ field }) => field))]
    const at = (field: string, period: number) => first.findIndex((watch) => watch.field === field && watch.period === period)
    values = fields.map((field) => (column[at(field, 1)] as number) - (column[at(field, 0)] as number))
    level = fields.map((field) => (first[at(field, 0)] as Watch).level)
    group = fields.map((field) => (first[at(field, 0)] as Watch).block)
  }
  const ways = [...new Set(group)].flatMap((own) => {
    const of = (side: number) => values.filter((_, k) => group[k] === own && level[k] === side)
    const [low, high] = [of(0), of(1)]
    if (low.length === 0 || high.length === 0) return []
    if (Math.min(...high) > Math.max(...low)) return [1]
    return [Math.max(...high) < Math.min(...low) ? -1 : 0]
  })
  return ways.length > 0 && (ways.every((way) => way === 1) || ways.every((way) => way === -1))
}

function freedomLeft(structure: Structure, watches: readonly Watch[], columns: number): number {
  const fields = new Set(watches.map(({ field }) => field)).size
  if (structure === 'within' || structure === 'before/after') return fields - 1 - columns
  return fields - new Set(watches.map(({ block }) => block)).size - 1 - columns
}

/**
 * How a design is scored, fixed before any was put to the audit.
 *
 * aliased: partial R2 of at least 0.95 on the planted nuisance, or on date with stage, of columns whose spread is above the
 * handbook's; or levels that do not overlap on the planted one with fewer than 2 df left to adjust.
 * sound: partial R2 of at most 0.5 on the planted nuisance and on date with stage.
 * even: neither, only because a spread is below the handbook's. between: all else. Neither is scored.
 */
export function scoreDesign(structure: Structure, planted: Planted, watches: readonly Watch[]): Score {
  const rows = rowsOf(structure, watches)
  const kept = keptColumns(structure, rows)
  const measure = (name: Planted) => {
    const columns = columnsOf(name, rows, watches)
    const above = uneven(name, columns, rows.group)
    return {
      raw: partialR2(
        rows.contrast,
        kept,
        columns.map(({ column }) => column),
      ),
      above: above.length === 0 ? 0 : partialR2(rows.contrast, kept, above),
      columns: above,
    }
  }
  const own = measure(planted)
  const pair = planted === 'date with stage' ? own : measure('date with stage')
  const single = planted === 'hour' || planted === 'date with stage' || own.columns.length === 1
  const apartWithoutFreedom =
    single &&
    own.columns.length > 0 &&
    freedomLeft(structure, watches, own.columns.length) < 2 &&
    (planted === 'hour' ? own.columns.slice(0, 1) : own.columns).some((column) => liesApart(structure, rows, column))
  const isAliased = own.above >= aliasedFrom || pair.above >= aliasedFrom || apartWithoutFreedom
  const isSound = own.raw <= soundUpTo && pair.raw <= soundUpTo
  const isEven = own.raw >= aliasedFrom || pair.raw >= aliasedFrom
  return {
    planted: own.raw,
    dateWithStage: pair.raw,
    apartWithoutFreedom,
    verdict: isAliased ? 'aliased' : isSound ? 'sound' : isEven ? 'even' : 'between',
  }
}
