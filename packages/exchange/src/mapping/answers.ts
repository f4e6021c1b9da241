import { measureUnits, type Role } from './roles.ts'
import type { MappedColumn, Mapping } from './shape.ts'

/** How a person answers what a mapping leaves open: by a number, or by one of some words. */
export type AnswerForm =
  | {
      readonly is: 'number'
      readonly name: 'minutes' | 'area' | 'year'
      readonly above: number
      readonly most: number
      readonly isWhole: boolean
    }
  | { readonly is: 'words'; readonly name: string; readonly words: readonly string[] }

/** What is asked of a mapping, as the proposal names it. */
export interface Asked {
  readonly id: string
  readonly header: string | null
}

type Constants = NonNullable<Mapping['constants']>

/** Ways in which a dash is typed. */
const dashes = ['-', '–', '—', '--', '––', '——', '---'] as const
/** Roles of a column that is asked about as a whole: what it is, or that it is left out. */
const wholeColumn: readonly Role[] = ['tally', 'factor', 'note', 'ignore']

const columnOf = (mapping: Mapping, header: string | null): MappedColumn | undefined =>
  mapping.columns.find((own) => own.header === header)

function withColumn(mapping: Mapping, header: string | null, change: (column: MappedColumn) => MappedColumn): Mapping {
  return { ...mapping, columns: mapping.columns.map((own) => (own.header === header ? change(own) : own)) }
}

function without<T extends object>(of: T | undefined, name: string): T {
  return Object.fromEntries(Object.entries(of ?? {}).filter(([own]) => own !== name)) as T
}

const withConstant = (mapping: Mapping, name: keyof Constants, value: Constants[keyof Constants]): Mapping => ({
  ...mapping,
  constants: { ...mapping.constants, [name]: value },
})

/** A column taken for something else: what was said of it as what it was before no longer holds. */
export const withRole = (mapping: Mapping, place: number, as: Role): Mapping => ({
  ...mapping,
  columns: mapping.columns.map((own, k) => (k === place ? { header: own.header, as } : own)),
})

/** One answer for one kind of question: how it is given, what the mapping says so far, and the mapping with the answer in it. */
interface Rule {
  readonly form: (asked: Asked, mapping: Mapping) => AnswerForm
  readonly said: (asked: Asked, mapping: Mapping) => string | number | null
  readonly put: (asked: Asked, mapping: Mapping, answer: string | number) => Mapping
  /** What a column must be taken for, for the question to make sense; anything unless said. */
  readonly of?: readonly Role[]
}

const number = (name: 'minutes' | 'area' | 'year', above: number, most: number): Rule['form'] => {
  const form = { is: 'number', name, above, most, isWhole: name === 'year' } as const
  return () => form
}
const words =
  (name: string, ...own: readonly string[]): Rule['form'] =>
  () => ({ is: 'words', name, words: own })

const minutes: Rule = {
  form: number('minutes', 0, 1440),
  said: (_, { constants }) => constants?.minutes ?? null,
  put: (_, mapping, answer) => {
    const { effort: _gone, ...rest } = mapping
    return answer === 'not recorded'
      ? { ...mapping, effort: 'not recorded', constants: without(mapping.constants, 'minutes') }
      : withConstant(rest, 'minutes', Number(answer))
  },
}

const dateOrder: Rule = {
  form: words('date-order', 'day first', 'month first'),
  said: (_, { file }) => file?.dateOrder ?? null,
  put: (_, mapping, answer) => ({ ...mapping, file: { ...mapping.file, dateOrder: answer as 'day first' } }),
}

/** What texts of a column mean, as one of: none was seen, nobody looked, it waits for a person. */
function meaning(texts: readonly string[]): Rule {
  const known = { 'none-seen': 0, 'not-looked-for': null } as const
  return {
    of: ['tally', 'number'],
    form: words('meaning', 'waits', 'none-seen', 'not-looked-for'),
    said: ({ header }, mapping) => {
      const means = columnOf(mapping, header)?.means ?? {}
      const text = texts.find((own) => Object.hasOwn(means, own))
      return text === undefined ? 'waits' : means[text] === null ? 'not-looked-for' : 'none-seen'
    },
    put: ({ header }, mapping, answer) =>
      withColumn(mapping, header, (column) => {
        const { means = {}, ...own } = column
        const others = Object.entries(means).filter(([text]) => !texts.includes(text))
        const said = answer === 'waits' ? [] : texts.map((text) => [text, known[answer as keyof typeof known]] as const)
        const all = Object.fromEntries([...others, ...said])
        return Object.keys(all).length === 0 ? own : { ...own, means: all }
      }),
  }
}

const role: Rule = {
  form: words('role', ...wholeColumn),
  said: ({ header }, mapping) => columnOf(mapping, header)?.as ?? null,
  put: ({ header }, mapping, answer) =>
    withRole(
      mapping,
      mapping.columns.findIndex((own) => own.header === header),
      answer as Role,
    ),
}

const rules: { readonly [id: string]: Rule } = {
  effort: minutes,
  'effort-noted': minutes,
  'area-noted': {
    form: number('area', 0, 1e9),
    said: (_, { constants }) => constants?.area ?? null,
    put: (_, mapping, answer) => withConstant(mapping, 'area', Number(answer)),
  },
  year: {
    form: number('year', 1799, 2199),
    said: (_, { file }) => file?.year ?? null,
    put: (_, mapping, answer) => ({ ...mapping, file: { ...mapping.file, year: Number(answer) } }),
  },
  'date-order': dateOrder,
  'date-orders-mixed': dateOrder,
  unit: {
    of: Object.keys(measureUnits) as Role[],
    form: ({ header }, mapping) => {
      const as = columnOf(mapping, header)?.as
      const known: readonly string[] = as !== undefined && Object.hasOwn(measureUnits, as) ? measureUnits[as as 'area'] : []
      return { is: 'words', name: 'unit', words: known }
    },
    said: ({ header }, mapping) => columnOf(mapping, header)?.unit ?? null,
    put: ({ header }, mapping, answer) => withColumn(mapping, header, (column) => ({ ...column, unit: String(answer) })),
  },
  'counting-unit': {
    form: words('counting-unit', 'individuals', 'visits', 'snapshot'),
    said: (_, { constants }) => constants?.unit ?? null,
    put: (_, mapping, answer) => withConstant(mapping, 'unit', answer),
  },
  dash: meaning(dashes),
  blank: meaning(['']),
  absent: {
    form: words('absent', 'none-seen', 'not-looked-for', 'not-known'),
    said: (_, { absent }) => absent ?? null,
    put: (_, mapping, answer) => ({ ...mapping, absent: answer as 'none-seen' }),
  },
  duplicates: {
    form: words('duplicates', 'waits', 'keep-one', 'keep-all'),
    said: (_, { duplicates }) => duplicates ?? 'waits',
    put: (_, { duplicates: _gone, ...mapping }, answer) =>
      answer === 'waits' ? mapping : { ...mapping, duplicates: answer as 'keep-one' },
  },
  assigned: {
    of: ['factor'],
    form: words('assigned', 'at random', 'chosen', 'not known'),
    said: ({ header }, { assigned }) => assigned?.[header ?? ''] ?? null,
    put: ({ header }, mapping, answer) => ({
      ...mapping,
      assigned: { ...mapping.assigned, [header ?? '']: answer as 'chosen' },
    }),
  },
  presence: role,
  'sum-of-others': role,
  unknown: role,
  'unknown-counts': role,
}

const ruleOf = ({ id }: Asked): Rule | undefined => {
  const name = id.replace('exchange/ask/', '')
  return Object.hasOwn(rules, name) ? rules[name] : undefined
}

/** True where a question still makes sense: of a column that is taken for something else it does not. */
export function isOpen(asked: Asked, mapping: Mapping): boolean {
  const rule = ruleOf(asked)
  const as = columnOf(mapping, asked.header)?.as
  if (rule === role || as === undefined) return true
  return as !== 'ignore' && (rule?.of?.includes(as) ?? true)
}

/** How a question about a table is answered; null where only the mapping file can say it. */
export const answerForm = (asked: Asked, mapping: Mapping): AnswerForm | null => ruleOf(asked)?.form(asked, mapping) ?? null

/** What the mapping says so far; null where it says nothing. */
export const saidSoFar = (asked: Asked, mapping: Mapping): string | number | null => ruleOf(asked)?.said(asked, mapping) ?? null

/** The mapping with an answer in it. */
export const withAnswer = (asked: Asked, mapping: Mapping, answer: string | number): Mapping =>
  ruleOf(asked)?.put(asked, mapping, answer) ?? mapping
