/**
 * The tables of a project and their columns, declared once: files bring rows of them, the fold makes them, questions
 * read them. Names of tables are the singular nouns of the tidy package; extra columns of a `count` are factors:
 * anything a person recorded and may want to compare.
 */
export interface ColumnDeclaration {
  readonly type: 'number' | 'text'
  /** UCUM code of a measured number. */
  readonly unit?: string
  /** True for what somebody measured, counted or estimated: it carries a mark. */
  readonly measured?: boolean
}

const text = { type: 'text' } as const
const number = (unit: string, measured = true) => ({ type: 'number', unit, measured }) as const

export const tableDeclarations = {
  /** One timed watch at a plot, with what was recorded of its visit. */
  count: {
    field: text,
    plot: text,
    visit: text,
    key: text,
    observer: text,
    crop: text,
    cultivar: text,
    season: text,
    method: text,
    /** Counting unit: snapshot, individuals or visits. */
    unit: text,
    /** Where the plot lies in the field, e.g. edge or centre. */
    position: text,
    rain: text,
    /** How open flowers were found: counted, sampled, by eye. */
    flowersHow: text,
    /** What a kind without a row means: typed, none-seen, not-known. */
    zeros: text,
    note: text,
    /** Days since 1 January 1970. */
    date: number('d', false),
    /** Minutes since local midnight. */
    start: number('min', false),
    end: number('min', false),
    /** Minutes that the observer's clock is ahead of UTC. */
    offset: number('min', false),
    minutes: number('min'),
    pauses: number('min'),
    flowers: number('{flowers}'),
    area: number('m2'),
    temperature: number('Cel'),
    wind: number('{Beaufort}'),
    cloud: number('{okta}'),
    sun: number('%'),
    stage: number('{BBCH}'),
    hives: number('{hives}'),
    hiveDistance: number('m'),
    edgeDistance: number('m'),
    /** Line of the original file. */
    line: number('1', false),
  },
  /** How many of a kind in a count. `count` is the row of its count among the counts of the same sheet. */
  tally: {
    kind: text,
    caste: text,
    behaviour: text,
    count: number('1', false),
    number: number('{individuals}'),
    line: number('1', false),
  },
  /** A cell that waits for a person, or a line that was refused: kept as it was written. */
  setAside: {
    /** waiting or refused */
    state: text,
    table: text,
    column: text,
    written: text,
    /** Saying id of the reason. */
    because: text,
    row: number('1', false),
    line: number('1', false),
  },
  voucher: {
    field: text,
    tapped: text,
    determined: text,
    by: text,
    how: text,
    date: number('d', false),
    line: number('1', false),
  },
  sample: {
    field: text,
    plot: text,
    treatment: text,
    flowers: number('{flowers}'),
    fruit: number('{fruit}'),
    weight: number('g'),
    date: number('d', false),
    line: number('1', false),
  },
  weather: {
    station: text,
    date: number('d', false),
    minimum: number('Cel'),
    maximum: number('Cel'),
    rain: number('mm'),
    line: number('1', false),
  },
  habitat: {
    patch: text,
    habitat: text,
    latitude: number('deg', false),
    longitude: number('deg', false),
    hectares: number('har'),
    bloomFrom: number('d', false),
    bloomTo: number('d', false),
    line: number('1', false),
  },
  spray: {
    field: text,
    substance: text,
    product: text,
    date: number('d', false),
    start: number('min', false),
    gramsPerHectare: number('g/har'),
    line: number('1', false),
  },
} as const satisfies { readonly [table: string]: { readonly [column: string]: ColumnDeclaration } }

export type TableName = keyof typeof tableDeclarations

export function isTableName(name: string): name is TableName {
  return Object.hasOwn(tableDeclarations, name)
}

/** Counting units of methods.md 1.1; they must never be pooled. */
export const countingUnits = ['snapshot', 'individuals', 'visits'] as const
export type CountingUnit = (typeof countingUnits)[number]
