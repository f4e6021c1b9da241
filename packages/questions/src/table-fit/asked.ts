import { saying, ThrumError } from '@thrum/model/ground'
import { readLevelOrders } from './level-orders.ts'
import { isSame, readColumns, readList, type Together, typedTogether } from './lists.ts'
import { type FitColumn, type FitTable, requireColumn } from './table.ts'

export const fitFamilies = ['nb2', 'nb1', 'poisson', 'binomial', 'beta-binomial', 'gaussian'] as const
export type FitFamily = (typeof fitFamilies)[number]
export const isShare = (family: FitFamily): boolean => family === 'binomial' || family === 'beta-binomial'
export const linkOf = (family: FitFamily) => (family === 'gaussian' ? 'identity' : isShare(family) ? 'logit' : 'log')

/** How limits of coefficients are found. */
export const fitIntervals = ['wald', 'profile', 'bootstrap'] as const
export type FitIntervals = (typeof fitIntervals)[number]

/** What is asked of a table, as it is typed. */
export interface FitWords {
  readonly response?: string | undefined
  readonly family?: string | undefined
  readonly fixed?: string | undefined
  readonly random?: string | undefined
  readonly slope?: string | undefined
  readonly effort?: string | undefined
  readonly offset?: string | undefined
  readonly trials?: string | undefined
  readonly zerosBy?: string | undefined
  readonly levels?: readonly string[] | undefined
  readonly asLevels?: string | undefined
  readonly compare?: string | undefined
  readonly per?: string | undefined
  readonly by?: string | undefined
  readonly refits?: string | undefined
  readonly nodes?: string | undefined
  readonly without?: string | undefined
  readonly zeros?: boolean
  readonly slopeApart?: boolean
  readonly reml?: boolean
  readonly unchecked?: boolean
}

export interface SlopeAsked {
  readonly column: FitColumn
  readonly by: Together
  readonly isApart: boolean
}

/** What is left out to see whether it is missed. */
export type WithoutAsked =
  | { readonly kind: 'term'; readonly term: Together }
  | { readonly kind: 'grouping'; readonly grouping: Together }
  | { readonly kind: 'slope' }

/** What is asked of a table, read and in agreement with itself. */
export interface FitAsked {
  readonly response: FitColumn
  readonly family: FitFamily
  readonly fixed: readonly Together[]
  readonly random: readonly Together[]
  readonly slope: SlopeAsked | null
  readonly effort: FitColumn | null
  readonly offset: FitColumn | null
  readonly trials: FitColumn | null
  /** What the chance of a zero of another origin hangs on; none of them: one chance for all rows; null: there is no such chance. */
  readonly zerosBy: readonly Together[] | null
  /** Levels in the order that was said, by the column. */
  readonly orders: ReadonlyMap<FitColumn, readonly string[]>
  readonly asLevels: ReadonlySet<FitColumn>
  /** Columns whose means are compared; null where nothing was said. */
  readonly compare: readonly Together[] | null
  /** Effort that means refer to. */
  readonly per: number
  readonly by: FitIntervals
  readonly refits: number
  readonly nodes: number | null
  readonly without: readonly WithoutAsked[]
  readonly reml: boolean
  /** False where checks are left out: they take as long as hundreds of fits. */
  readonly isChecked: boolean
}

const usualRefits = 1000
/** Quadrature with fewer nodes is not exact enough, with more it loses its weights. */
const nodesRange = { min: 9, max: 101 }
const refitsRange = { min: 100, max: 100_000 }

function readWhole(
  option: string,
  text: string | undefined,
  range: { readonly min: number; readonly max: number },
): number | null {
  if (text === undefined) return null
  const value = /^\d{1,9}$/u.test(text.trim()) ? Number(text) : Number.NaN
  if (!(value >= range.min && value <= range.max))
    throw new ThrumError('questions/fit/whole-number', { option, found: text, ...range })
  return value
}

function readPer(text: string | undefined): number {
  if (text === undefined) return 1
  const value = /^\d+(?:\.\d+)?$/u.test(text.trim()) ? Number(text) : Number.NaN
  if (!(value > 0 && value < 1e9)) throw new ThrumError('questions/fit/per', { found: text })
  return value
}

/** What kind of numbers the response holds, by which families are proposed. */
function numbersIn({ numbers, texts }: FitColumn, hasTrials: boolean): 'shares' | 'counts' | 'measured' {
  if (hasTrials) return 'shares'
  const isCount = texts.every((text, row) => text === null || (Number.isInteger(numbers[row]) && (numbers[row] ?? -1) >= 0))
  return isCount ? 'counts' : 'measured'
}

function readFamily(words: FitWords, response: FitColumn): FitFamily {
  const kind = numbersIn(response, words.trials !== undefined)
  if (words.family === undefined) throw new ThrumError('questions/fit/family-needed', { response: response.name, kind })
  const family = fitFamilies.find((own) => own === words.family)
  if (family === undefined)
    throw new ThrumError('questions/fit/no-such-family', { found: words.family, known: fitFamilies.join(', ') })
  return family
}

/** Options that go with some families only. */
function requireOfFamily(words: FitWords, family: FitFamily): void {
  const is = linkOf(family)
  const refuse = (option: string, isGiven: boolean, fits: boolean): void => {
    if (isGiven && !fits) throw new ThrumError('questions/fit/not-of-family', { option, family })
  }
  refuse('effort', words.effort !== undefined, is === 'log')
  refuse('zeros', words.zeros === true, is === 'log')
  refuse('zeros-by', words.zerosBy !== undefined, is === 'log')
  refuse('trials', words.trials !== undefined, is === 'logit')
  refuse('reml', words.reml === true, is === 'identity')
  refuse('nodes', words.nodes !== undefined, is !== 'identity')
  refuse('by', words.by !== undefined && words.by !== 'wald', is !== 'identity')
  if (is === 'logit' && words.trials === undefined) throw new ThrumError('questions/fit/trials-needed', { family })
}

/** Options that say something only beside another. */
function requireBeside(words: FitWords): void {
  const needs = (option: string, isGiven: boolean, other: string, isThere: boolean): void => {
    if (isGiven && !isThere) throw new ThrumError('questions/fit/only-with', { option, other })
  }
  needs('per', words.per !== undefined, 'effort', words.effort !== undefined)
  needs('refits', words.refits !== undefined, 'by bootstrap', words.by === 'bootstrap')
  needs('slope-apart', words.slopeApart === true, 'slope', words.slope !== undefined)
  needs('slope', words.slope !== undefined, 'random', words.random !== undefined)
  needs('nodes', words.nodes !== undefined, 'random', words.random !== undefined)
}

function readSlope(table: FitTable, words: FitWords, random: readonly Together[]): SlopeAsked | null {
  const text = words.slope
  if (text === undefined) return null
  for (let at = text.indexOf(' by '); at >= 0; at = text.indexOf(' by ', at + 1)) {
    const column = table.columns.find(({ name }) => name.toLowerCase() === text.slice(0, at).trim().toLowerCase())
    if (column === undefined) continue
    const [by, ...more] = readList(table, 'slope', text.slice(at + 4))
    if (by === undefined || more.length > 0) break
    const grouping = random.find((own) => isSame(own, by))
    if (grouping === undefined) throw new ThrumError('questions/fit/slope-not-random', { by: typedTogether(by) })
    return { column, by: grouping, isApart: words.slopeApart === true }
  }
  throw new ThrumError('questions/fit/slope', { found: text })
}

function readBy(text: string | undefined): FitIntervals {
  const by = fitIntervals.find((own) => own === (text ?? 'wald'))
  if (by === undefined) throw new ThrumError('questions/fit/by', { found: text ?? '', known: fitIntervals.join(', ') })
  return by
}

/** All that terms contain: of columns together each by itself too. */
const holds = (terms: readonly Together[], own: Together): boolean =>
  terms.some((term) => term.length > own.length && own.every((column) => term.includes(column)))

function readWithout(
  table: FitTable,
  words: FitWords,
  asked: Pick<FitAsked, 'fixed' | 'random' | 'slope'>,
): readonly WithoutAsked[] {
  const { fixed, random, slope } = asked
  const isSlope = (part: string): boolean => words.slope !== undefined && part.trim() === words.slope.trim()
  if (words.without !== undefined && isSlope(words.without)) return [{ kind: 'slope' }]
  return readList(table, 'without', words.without).map((own): WithoutAsked => {
    const typed = typedTogether(own)
    const term = fixed.find((one) => isSame(one, own))
    const grouping = random.find((one) => isSame(one, own))
    if (term !== undefined && grouping !== undefined) throw new ThrumError('questions/fit/without-both', { found: typed })
    if (term !== undefined && holds(fixed, term)) throw new ThrumError('questions/fit/without-contained', { found: typed })
    if (term !== undefined) return { kind: 'term', term }
    if (grouping !== undefined && slope?.by === grouping)
      throw new ThrumError('questions/fit/without-sloped', { found: typed, slope: words.slope ?? '' })
    if (grouping !== undefined) return { kind: 'grouping', grouping }
    throw new ThrumError('questions/fit/without-unknown', {
      found: typed,
      known: [...fixed, ...random].map(typedTogether).join(', '),
    })
  })
}

/**
 * What a person asks of a table.
 *
 * @throws ThrumError questions/fit/*, all of them about what was typed
 */
export function readFitAsked(table: FitTable, words: FitWords): FitAsked {
  if (words.response === undefined)
    throw new ThrumError('questions/fit/response-needed', { known: table.columns.map(({ name }) => name).join(', ') })
  const column = (option: string, text: string | undefined): FitColumn | null =>
    text === undefined ? null : requireColumn(table, option, text.trim())
  const response = requireColumn(table, 'response', words.response.trim())
  const family = readFamily(words, response)
  requireOfFamily(words, family)
  requireBeside(words)
  const fixed = readList(table, 'fixed', words.fixed)
  const random = readList(table, 'random', words.random)
  const slope = readSlope(table, words, random)
  const nodes = readWhole('nodes', words.nodes, nodesRange)
  if (nodes !== null && (random.length > 1 || slope !== null)) throw new ThrumError('questions/fit/nodes-one-grouping')
  const hasZeros = words.zeros === true || words.zerosBy !== undefined
  for (const terms of [fixed, random])
    if (terms.some((term) => term.includes(response)))
      throw new ThrumError('questions/fit/response-on-itself', { response: response.name })
  return {
    ...{ response, family, fixed, random, slope, nodes },
    effort: column('effort', words.effort),
    offset: column('offset', words.offset),
    trials: column('trials', words.trials),
    zerosBy: hasZeros ? readList(table, 'zeros-by', words.zerosBy) : null,
    orders: readLevelOrders(table, words.levels ?? []),
    asLevels: new Set(readColumns(table, 'as-levels', words.asLevels)),
    compare: words.compare === undefined ? null : readList(table, 'compare', words.compare),
    per: readPer(words.per),
    by: readBy(words.by),
    refits: readWhole('refits', words.refits, refitsRange) ?? usualRefits,
    without: readWithout(table, words, { fixed, random, slope }),
    reml: words.reml === true,
    isChecked: words.unchecked !== true,
  }
}

/** A term, or a grouping, as it is said. */
export const togetherSaying = (columns: Together) =>
  columns.length === 1
    ? saying('text', { text: columns[0]?.name ?? '' })
    : saying('questions/fit/together', { columns: columns.map(({ name }) => saying('text', { text: name })) })
