import { type Column, isoDate, type Snapshot, type Table, type TextColumn } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { codedNumbers } from './coded-numbers.ts'
import type { Factor, FactorAbout } from './factor.ts'
import { treatmentLevels } from './treatment-levels.ts'

/** Noon divides morning from afternoon [min since midnight]. */
const noon = 12 * 60

type Counts = Table<'count'>
interface Reading {
  readonly about: FactorAbout
  readonly from: (counts: Counts) => Words
}

/** What stands in a column, as words: each different cell once, and for each row which of them (-1: nothing). */
interface Words {
  readonly codes: Int32Array
  readonly words: readonly string[]
}

const fromText = ({ codes, dictionary }: TextColumn): Words => ({ codes, words: dictionary })

function fromNumber(column: Float64Array, word: (value: number) => string): Words {
  const { codes, values } = codedNumbers(column)
  return { codes, words: values.map(word) }
}

/** Factors that every project has: columns of counts, and what follows from their date and time. */
const standing: { readonly [name: string]: Reading } = {
  field: { about: 'field', from: ({ columns }) => fromText(columns.field) },
  plot: { about: 'position', from: ({ columns }) => fromText(columns.plot) },
  position: { about: 'position', from: ({ columns }) => fromText(columns.position) },
  crop: { about: 'crop', from: ({ columns }) => fromText(columns.crop) },
  cultivar: { about: 'other', from: ({ columns }) => fromText(columns.cultivar) },
  season: { about: 'season', from: ({ columns }) => fromText(columns.season) },
  observer: { about: 'observer', from: ({ columns }) => fromText(columns.observer) },
  method: { about: 'other', from: ({ columns }) => fromText(columns.method) },
  unit: { about: 'other', from: ({ columns }) => fromText(columns.unit) },
  visit: { about: 'date', from: ({ columns }) => fromText(columns.visit) },
  rain: { about: 'other', from: ({ columns }) => fromText(columns.rain) },
  date: { about: 'date', from: ({ columns }) => fromNumber(columns.date.values, isoDate) },
  month: { about: 'date', from: ({ columns }) => fromNumber(columns.date.values, (day) => isoDate(day).slice(0, 7)) },
  stage: { about: 'stage', from: ({ columns }) => fromNumber(columns.stage.values, String) },
  hives: { about: 'hives', from: ({ columns }) => fromNumber(columns.hives.values, String) },
  'hive distance': {
    about: 'hives',
    from: ({ columns }) => fromNumber(columns.hiveDistance.values, (metres) => `${metres} m`),
  },
  'edge distance': {
    about: 'position',
    from: ({ columns }) => fromNumber(columns.edgeDistance.values, (metres) => `${metres} m`),
  },
  daypart: {
    about: 'hour',
    from: ({ columns }) => fromNumber(columns.start.values, (minutes) => (minutes < noon ? 'morning' : 'afternoon')),
  },
}

/** A factor of the person's own that is about hives by its name: the hive rules of the audit then hold. */
const aboutHives = /\b(hives?|coloni(es|y)|colony|apiar(y|ies)|bikup\w*|bienen\w*|colmena\w*|ruche\w*)\b/iu

interface Coded {
  readonly levels: readonly string[]
  readonly levelOf: Int32Array
}

/** Words as levels, in the order in which rows first have them; two cells that read alike are one level. */
function levelsOf(rows: number, { codes, words }: Words): Coded {
  const levels: string[] = []
  const codeOf = new Map<string, number>()
  const levelOfWord = new Int32Array(words.length).fill(-1)
  const levelOf = new Int32Array(rows).fill(-1)
  for (let row = 0; row < rows; row++) {
    const code = codes[row] as number
    if (code < 0) continue
    if (levelOfWord[code] === -1) {
      const word = words[code] ?? ''
      const level = codeOf.get(word) ?? levels.push(word) - 1
      codeOf.set(word, level)
      levelOfWord[code] = level
    }
    levelOf[row] = levelOfWord[code] as number
  }
  return { levels, levelOf }
}

/** Words that are found row by row. */
function wordsByRow(rows: number, wordAt: (row: number) => string | null): Words {
  const words: string[] = []
  const codeOf = new Map<string, number>()
  const codes = new Int32Array(rows).fill(-1)
  for (let row = 0; row < rows; row++) {
    const word = wordAt(row)
    if (word === null) continue
    const code = codeOf.get(word) ?? words.push(word) - 1
    codeOf.set(word, code)
    codes[row] = code
  }
  return { codes, words }
}

function inOrder({ levels, levelOf }: Coded): Coded {
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
  let words = own === undefined ? reading?.from(counts) : wordsOf(own)
  if (set.length > 0) {
    // Rows that no treatment covers have what the person's own column says; what a standing one says is another thing.
    const written = own === undefined ? undefined : words
    const wordAt = (row: number): string | null => written?.words[written.codes[row] ?? -1] ?? null
    words = wordsByRow(counts.rows, treatmentLevels(snapshot, set, wordAt))
    if (set.some(({ level }) => aboutHives.test(level))) about = 'hives'
  }
  if (words === undefined) {
    const known = [
      ...new Set([...Object.keys(standing), ...counts.factors.keys(), ...snapshot.treatments.map(({ factor }) => factor)]),
    ]
    throw new ThrumError('survey/factor/unknown', { name, known: known.join(', ') })
  }
  return { name, about, ...inOrder(levelsOf(counts.rows, words)), assigned: assignedOf(snapshot, name, about) }
}

function wordsOf(column: Column): Words {
  return column.type === 'text' ? fromText(column) : fromNumber(column.values, String)
}
