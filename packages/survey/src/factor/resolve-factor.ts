import { type Column, isoDate, type Snapshot, type Table, type TextColumn } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import type { Factor, FactorAbout } from './factor.ts'
import { treatmentLevels } from './treatment-levels.ts'

/** Noon divides morning from afternoon [min since midnight]. */
const noon = 12 * 60

type Counts = Table<'count'>
interface Reading {
  readonly about: FactorAbout
  readonly wordAt: (counts: Counts) => (row: number) => string | null
}

const fromText = (column: TextColumn) => (row: number) => {
  const code = column.codes[row] ?? -1
  return code < 0 ? null : (column.dictionary[code] ?? null)
}

function fromNumber(values: Float64Array, word: (value: number) => string) {
  const known = new Map<number, string>()
  return (row: number): string | null => {
    const value = values[row] ?? Number.NaN
    if (Number.isNaN(value)) return null
    const found = known.get(value)
    if (found !== undefined) return found
    const made = word(value)
    known.set(value, made)
    return made
  }
}

/** Factors that every project has: columns of counts, and what follows from their date and time. */
const standing: { readonly [name: string]: Reading } = {
  field: { about: 'field', wordAt: ({ columns }) => fromText(columns.field) },
  plot: { about: 'position', wordAt: ({ columns }) => fromText(columns.plot) },
  position: { about: 'position', wordAt: ({ columns }) => fromText(columns.position) },
  crop: { about: 'crop', wordAt: ({ columns }) => fromText(columns.crop) },
  cultivar: { about: 'other', wordAt: ({ columns }) => fromText(columns.cultivar) },
  season: { about: 'season', wordAt: ({ columns }) => fromText(columns.season) },
  observer: { about: 'observer', wordAt: ({ columns }) => fromText(columns.observer) },
  method: { about: 'other', wordAt: ({ columns }) => fromText(columns.method) },
  unit: { about: 'other', wordAt: ({ columns }) => fromText(columns.unit) },
  visit: { about: 'date', wordAt: ({ columns }) => fromText(columns.visit) },
  rain: { about: 'other', wordAt: ({ columns }) => fromText(columns.rain) },
  date: { about: 'date', wordAt: ({ columns }) => fromNumber(columns.date.values, isoDate) },
  month: { about: 'date', wordAt: ({ columns }) => fromNumber(columns.date.values, (day) => isoDate(day).slice(0, 7)) },
  stage: { about: 'stage', wordAt: ({ columns }) => fromNumber(columns.stage.values, String) },
  hives: { about: 'hives', wordAt: ({ columns }) => fromNumber(columns.hives.values, String) },
  'hive distance': {
    about: 'hives',
    wordAt: ({ columns }) => fromNumber(columns.hiveDistance.values, (metres) => `${metres} m`),
  },
  'edge distance': {
    about: 'position',
    wordAt: ({ columns }) => fromNumber(columns.edgeDistance.values, (metres) => `${metres} m`),
  },
  daypart: {
    about: 'hour',
    wordAt: ({ columns }) => fromNumber(columns.start.values, (minutes) => (minutes < noon ? 'morning' : 'afternoon')),
  },
}

/** A factor of the person's own that is about hives by its name: the hive rules of the audit then hold. */
const aboutHives = /\b(hives?|coloni(es|y)|colony|apiar(y|ies)|bikup\w*|bienen\w*|colmena\w*|ruche\w*)\b/iu

function codesOf(
  rows: number,
  wordAt: (row: number) => string | null,
): { readonly levels: string[]; readonly levelOf: Int32Array } {
  const levels: string[] = []
  const codeOf = new Map<string, number>()
  const levelOf = new Int32Array(rows)
  for (let row = 0; row < rows; row++) {
    const word = wordAt(row)
    if (word === null) levelOf[row] = -1
    else {
      let code = codeOf.get(word)
      if (code === undefined) {
        code = levels.length
        levels.push(word)
        codeOf.set(word, code)
      }
      levelOf[row] = code
    }
  }
  return { levels, levelOf }
}

function inOrder({ levels, levelOf }: { readonly levels: readonly string[]; readonly levelOf: Int32Array }) {
  const order = levels.map((_, k) => k).sort((a, b) => compareLevels(levels[a] ?? '', levels[b] ?? ''))
  const place = new Int32Array(levels.length)
  order.forEach((from, to) => {
    place[from] = to
  })
  return {
    levels: order.map((k) => levels[k] ?? ''),
    levelOf: levelOf.map((code) => (code < 0 ? -1 : (place[code] ?? -1))),
  }
}

/** Numbers by size, the rest by code unit, so that the order does not hang on the machine's language; no before yes. */
function compareLevels(a: string, b: string): number {
  const [x, y] = [Number.parseFloat(a), Number.parseFloat(b)]
  if (!Number.isNaN(x) && !Number.isNaN(y) && x !== y) return x - y
  return a < b ? -1 : a > b ? 1 : 0
}

/** Names of everything that counts of this project can be told apart by, with at least two levels. */
export function factorNames(snapshot: Snapshot): readonly string[] {
  const names = [
    ...Object.keys(standing),
    ...snapshot.tables.count.factors.keys(),
    ...snapshot.treatments.map(({ factor }) => factor),
  ]
  return [...new Set(names)].filter((name) => resolveFactor(snapshot, name).levels.length > 1)
}

function assignedOf(snapshot: Snapshot, name: string, about: FactorAbout): Factor['assigned'] {
  // Date, place and observer are never dealt out by lot: they are what they are.
  return about === 'other' || about === 'hives' ? (snapshot.assigned.get(name) ?? 'not known') : 'chosen'
}

/**
 * A factor by its name: a treatment that was set, a column of counts, a column a file brought, or something that follows
 * from date and time (season, month, daypart).
 *
 * @throws ThrumError survey/factor/unknown, naming those there are
 */
export function resolveFactor(snapshot: Snapshot, name: string): Factor {
  const counts = snapshot.tables.count
  const own = counts.factors.get(name)
  const set = snapshot.treatments.filter(({ factor }) => factor === name)
  const reading = Object.hasOwn(standing, name) ? standing[name] : undefined
  let about: FactorAbout = reading?.about ?? (aboutHives.test(name) ? 'hives' : 'other')
  let wordAt: ((row: number) => string | null) | undefined
  if (set.length > 0) {
    wordAt = treatmentLevels(snapshot, set, own === undefined ? undefined : wordsOf(own))
    if (set.some(({ level }) => aboutHives.test(level))) about = 'hives'
  } else if (own !== undefined) wordAt = wordsOf(own)
  else wordAt = reading?.wordAt(counts)
  if (wordAt === undefined) {
    const known = [
      ...new Set([...Object.keys(standing), ...counts.factors.keys(), ...snapshot.treatments.map(({ factor }) => factor)]),
    ]
    throw new ThrumError('survey/factor/unknown', { name, known: known.join(', ') })
  }
  return { name, about, ...inOrder(codesOf(counts.rows, wordAt)), assigned: assignedOf(snapshot, name, about) }
}

function wordsOf(column: Column): (row: number) => string | null {
  return column.type === 'text' ? fromText(column) : fromNumber(column.values, String)
}
