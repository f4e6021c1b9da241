import { ThrumError } from '@thrum/model/ground'
import { plainName } from '../cell/plain-name.ts'
import { shortened } from '../cell/shortened.ts'

/**
 * A header that is a whole question of a form is known by its beginning [characters]. A mapping has room for it, with what
 * tells it from others of the same beginning.
 */
export const longestHeader = 180

/** A line of the file as it was split. */
export interface SplitLine {
  readonly cells: readonly string[]
  readonly line: number
  readonly strayQuote: boolean
}

export interface Header {
  /** Places of the header's lines among the lines looked at. */
  readonly at: readonly number[]
  readonly names: readonly string[]
}

const filledCells = (cells: readonly string[]): number => cells.reduce((n, cell) => n + (cell.trim() === '' ? 0 : 1), 0)

/** True for what stands in rows rather than above them: numbers, dates, times, signs for nothing. */
function looksLikeValue(cell: string): boolean {
  const text = cell.trim()
  return /^[<>~≈±]?\s*[-+]?\.?\d/u.test(text) || /^(?:na|n\/a|nan|null|true|false|-|\?)$/iu.test(text)
}

const values = (cells: readonly string[]): number => cells.reduce((n, cell) => n + (looksLikeValue(cell) ? 1 : 0), 0)

/** The number of cells that most lines with more than one filled cell have. */
function commonWidth(lines: readonly SplitLine[]): number {
  const widths = new Map<number, number>()
  for (const { cells } of lines) if (filledCells(cells) > 1) widths.set(cells.length, (widths.get(cells.length) ?? 0) + 1)
  let best = 0
  let most = 0
  for (const [width, times] of widths) if (times > most) [best, most] = [width, times]
  return best
}

/** A header is mostly filled, mostly different words, hardly any values. */
function canBeHeader(cells: readonly string[], width: number): boolean {
  const filled = cells.filter((cell) => cell.trim() !== '')
  if (filled.length < Math.max(2, width / 2)) return false
  return values(filled) <= filled.length * 0.2 && new Set(filled.map(plainName)).size >= filled.length * 0.6
}

/** A line of group names above a header: some names, some blanks, no values. */
const canBeGroups = (cells: readonly string[]): boolean =>
  filledCells(cells) > 1 && values(cells) === 0 && cells.some((cell) => cell.trim() === '')

/** Names made one by one: plain, never empty, never twice. */
function uniqueNames(names: readonly string[]): readonly string[] {
  const seen = new Set<string>()
  return names.map((name, k) => {
    const base = name === '' ? `column ${k + 1}` : shortened(name, longestHeader)
    let unique = base
    for (let n = 2; seen.has(unique); n++) unique = `${base} (${n})`
    seen.add(unique)
    return unique
  })
}

/** Names of the lower line under those of the upper, which carry right until the next one. */
function joinNames(upper: readonly string[] | null, lower: readonly string[]): readonly string[] {
  if (upper === null) return uniqueNames(lower.map(plainName))
  let group = ''
  const width = Math.max(upper.length, lower.length)
  return uniqueNames(
    Array.from({ length: width }, (_, k) => {
      const above = plainName(upper[k] ?? '')
      if (above !== '') group = above
      const below = plainName(lower[k] ?? '')
      if (group === '') return below
      return below === '' ? (above === '' ? '' : group) : `${group} / ${below}`
    }),
  )
}

const withoutEmptyEnd = (cells: readonly string[], width: number): readonly string[] => {
  let end = cells.length
  while (end > width && (cells[end - 1] ?? '').trim() === '') end--
  return cells.slice(0, end)
}

/**
 * Finds the header among the first lines of a file: one line, or two with group names above.
 *
 * @param asked line numbers a person gave
 * @throws ThrumError exchange/sheet/no-header, exchange/sheet/not-a-table
 */
export function findHeader(lines: readonly SplitLine[], asked?: readonly number[]): Header {
  const width = commonWidth(lines)
  if (width < 2) throw new ThrumError('exchange/sheet/not-a-table')
  const make = (at: readonly number[]): Header => {
    const [upper, lower] = at.map((k) => withoutEmptyEnd(lines[k]?.cells ?? [], width))
    return { at, names: lower === undefined ? joinNames(null, upper ?? []) : joinNames(upper ?? [], lower) }
  }
  if (asked !== undefined && asked.length > 0) {
    const at = asked.map((number) => lines.findIndex(({ line }) => line === number))
    if (at.includes(-1) || at.length > 2) throw new ThrumError('exchange/sheet/no-header', { line: asked.join(', ') })
    return make(at)
  }
  for (let k = 0; k < lines.length; k++) {
    const cells = lines[k]?.cells ?? []
    const filled = filledCells(cells)
    if (filled < Math.max(2, width / 2)) continue
    if (!canBeHeader(cells, width)) throw new ThrumError('exchange/sheet/no-header', { line: lines[k]?.line ?? 1 })
    const above = lines[k - 1]?.cells
    if (above !== undefined && canBeGroups(above)) return make([k - 1, k])
    const below = lines[k + 1]?.cells
    const complements = below?.every((cell, place) => place === 0 || cell.trim() === '' || !looksLikeValue(cell)) ?? false
    if (below !== undefined && complements && canBeGroups(cells) && canBeHeader(below, width)) return make([k, k + 1])
    return make([k])
  }
  throw new ThrumError('exchange/sheet/no-header', { line: 1 })
}
