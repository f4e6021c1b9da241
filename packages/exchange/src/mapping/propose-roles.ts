import { type Saying, saying } from '@thrum/model/ground'
import type { Sheet } from '../read/sheet.ts'
import { type ColumnLook, lookAtColumn } from './column-look.ts'
import {
  headerWords,
  kindWords,
  numberWords,
  plantWords,
  presenceWords,
  roleWords,
  sumWords,
  visitsWords,
} from './header-words.ts'
import { type InsectHeader, insectHeader } from './insect-words.ts'
import { isSingleRole, type Role } from './roles.ts'

/** A header, its cells at a glance, and what it is proposed as. */
export interface ProposedColumn {
  readonly header: string
  readonly look: ColumnLook
  readonly insect: InsectHeader | null
  readonly as: Role
  readonly because: Saying
  /** A question this role leaves open, e.g. whether a column of 0 and 1 is a count. */
  readonly asks: Saying | null
}

interface Guess {
  readonly as: Role
  readonly because: Saying
  readonly asks?: Saying
}

const guess = (as: Role, id: string, header: string, asks?: string): Guess => {
  const because = saying(`exchange/propose/${id}`, { header, as })
  return asks === undefined ? { as, because } : { as, because, asks: saying(`exchange/ask/${asks}`, { header }) }
}

/** Values that a role cannot do without: a header alone does not make a date. */
function fits(role: Role, look: ColumnLook): boolean {
  if (look.filled === 0) return true
  if (role === 'date') return look.dates > 0.5
  if (role === 'start' || role === 'end') return look.clocks > 0.5
  if (role === 'year') return look.whole && look.least >= 1800 && look.largest <= 2199
  if (role === 'day') return look.whole && look.least >= 1 && look.largest <= 31
  if (role === 'minutes') return look.durations > 0.4
  const measured: readonly Role[] = [
    'flowers',
    'flowerUnits',
    'flowersPerUnit',
    'area',
    'temperature',
    'wind',
    'cloud',
    'sun',
    'hives',
    'hiveDistance',
    'edgeDistance',
    'stage',
  ]
  return !measured.includes(role) || look.numbers > 0.4
}

function fromHeader(header: string, look: ColumnLook, rows: number): Guess | null {
  const words = headerWords(header)
  const role = roleWords.find(([role, pattern]) => pattern.test(words) && fits(role, look))?.[0]
  if (role === undefined) return null
  // A visit that is another one in every row is the row's id; a record of ids that repeat a few values is not.
  if (role === 'key' && look.distinct < rows * 0.02) return null
  if (role === 'visit' && rows > 2 && look.distinct > rows * 0.9) return guess('key', 'distinct-visit', header)
  return guess(role, 'header', header)
}

function asTally(header: string, look: ColumnLook): Guess | null {
  const words = headerWords(header)
  if (look.filled > 0 && look.counts < 0.6 && look.numbers < 0.6) return null
  if (sumWords.test(words)) return guess('ignore', 'sum-of-others', header, 'sum-of-others')
  if (look.zeroOne && presenceWords.test(words)) return guess('ignore', 'presence', header, 'presence')
  return guess('tally', 'insect', header)
}

function fromValues(header: string, look: ColumnLook, rows: number, isOfInsects: boolean): Guess {
  if (look.filled === 0) return guess('ignore', 'empty', header)
  if (look.zeroOne && presenceWords.test(headerWords(header))) return guess('ignore', 'presence', header, 'presence')
  if (look.dates > 0.9) return guess('date', 'dates', header)
  if (look.yesOrNo && !isOfInsects) return guess('factor', 'yes-or-no', header)
  const repeated = look.distinct >= 2 && look.distinct <= 30 && look.distinct <= look.filled / 2
  if (repeated) return guess('factor', 'repeated', header)
  if (look.numbers < 0.2 && look.longest > 12 && look.filled < rows) return guess('note', 'free-text', header)
  return guess('ignore', 'unknown', header, look.numbers > 0.9 && look.whole ? 'unknown-counts' : 'unknown')
}

/** The column of kinds of a long table, with that of numbers: null where the table is wide. */
function longColumns(sheet: Sheet, looks: readonly ColumnLook[]): { readonly kind: number; readonly number: number } | null {
  const insects = sheet.headers.filter((header, k) => {
    const look = looks[k]
    return look !== undefined && insectHeader(header)?.sure === true && look.numbers > 0.6
  })
  if (insects.length > 1) return null
  for (const pattern of kindWords) {
    const kind = sheet.headers.findIndex((header, k) => {
      const words = headerWords(header)
      const look = looks[k]
      return look !== undefined && pattern.test(words) && !plantWords.test(words) && look.filled > 0 && look.numbers < 0.2
    })
    if (kind < 0) continue
    const number = sheet.headers.findIndex(
      (header, k) => k !== kind && numberWords.test(headerWords(header)) && (looks[k]?.numbers ?? 0) > 0.6,
    )
    return { kind, number }
  }
  return null
}

/** Proposes a role for every column, from its header first and its values second. */
export function proposeRoles(sheet: Sheet): { readonly shape: 'wide' | 'long'; readonly columns: readonly ProposedColumn[] } {
  const looks = sheet.columns.map(lookAtColumn)
  const long = longColumns(sheet, looks)
  const taken = new Set<Role>()
  const columns = sheet.headers.map((header, k): ProposedColumn => {
    const look = looks[k] as ColumnLook
    const insect = insectHeader(header)
    let found: Guess | null = null
    if (long?.kind === k) found = guess('kind', 'kind-column', header)
    else if (long?.number === k) found = guess('number', 'number-column', header)
    else if (long === null && insect?.sure === true) found = asTally(header, look)
    else if (long !== null && kindWords.some((pattern) => pattern.test(headerWords(header))))
      found = guess('ignore', 'other-names', header)
    // A column of visits of all kinds: a number that is not a few rounds over and over.
    else if (
      long === null &&
      visitsWords.test(headerWords(header)) &&
      look.numbers > 0.6 &&
      (!look.whole || look.distinct > 12 || look.zeros)
    ) {
      found = guess('tally', 'visits', header)
    }
    found ??= fromHeader(header, look, sheet.rows)
    if (found === null && long === null && insect !== null) found = asTally(header, look)
    found ??= fromValues(header, look, sheet.rows, insect !== null)
    const oneOfMany =
      long !== null &&
      ((found.as === 'key' && look.distinct > sheet.rows * 0.9) || (found.as === 'start' && look.distinct > sheet.rows * 0.2))
    if (oneOfMany) found = guess('ignore', 'of-single-rows', header)
    if (isSingleRole(found.as) && taken.has(found.as)) found = { ...fromValues(header, look, sheet.rows, insect !== null) }
    if (isSingleRole(found.as) && taken.has(found.as)) found = guess('ignore', 'second-of-role', header)
    taken.add(found.as)
    return { header, look, insect, as: found.as, because: found.because, asks: found.asks ?? null }
  })
  return { shape: long === null ? 'wide' : 'long', columns }
}
