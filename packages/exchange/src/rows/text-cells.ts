import type { TextColumn } from '@thrum/model'
import { plainName } from '../cell/plain-name.ts'
import { textRoles } from '../mapping/roles.ts'
import type { Mapping } from '../mapping/shape.ts'
import type { MappedColumns, SheetColumn } from './mapped-columns.ts'

/** A text of each row, as names that are matched by the fold: code of a word, or -1. */
export interface TextSource {
  readonly column: string
  readonly header: string
  /** Words, each once. */
  readonly words: readonly string[]
  codeAt(row: number): number
}

/** The texts of a column: plain names (notes as written), through the meanings a person gave. */
export function textSource(column: string, from: SheetColumn): TextSource {
  const words: string[] = []
  const codeOf = new Map<string, number>()
  const asWritten = from.mapped.as === 'note'
  const means = from.mapped.means ?? {}
  const missing = /^(?:na|n\/a|#n\/a|null)$/iu
  const codeOfCell = Int32Array.from(from.cells.dictionary, (written) => {
    const text = written.trim()
    const said = Object.hasOwn(means, text) ? means[text] : undefined
    if (said === null || (said === undefined && missing.test(text))) return -1
    const word = said === undefined ? (asWritten ? text : plainName(text)) : String(said)
    if (word === '') return -1
    const known = codeOf.get(word)
    if (known !== undefined) return known
    codeOf.set(word, words.length)
    return words.push(word) - 1
  })
  return { column, header: from.header, words, codeAt: (row) => codeOfCell[from.cells.codes[row] ?? -1] ?? -1 }
}

const constantText = (column: string, word: string): TextSource => ({ column, header: column, words: [word], codeAt: () => 0 })

/** Every text column and factor of the table `count` that the sheet or the mapping's constants fill. */
export function textSources(columns: MappedColumns, mapping: Mapping): readonly TextSource[] {
  const found: TextSource[] = []
  for (const role of textRoles) {
    const every = columns.every(role)
    const only = every[0]
    if (only !== undefined) found.push(every.length === 1 ? textSource(role, only) : joinedTexts(role, every))
    else {
      const said = mapping.constants?.[role as keyof NonNullable<Mapping['constants']>]
      if (typeof said === 'string') found.push(constantText(role, said))
    }
  }
  for (const column of columns.every('factor')) {
    if (column.mapped.unit === undefined) found.push(textSource(column.mapped.factor ?? column.header, column))
  }
  return found.filter((source) => source.words.length > 0)
}

/** Several note columns make one note. */
function joinedTexts(column: string, every: readonly SheetColumn[]): TextSource {
  const sources = every.map((one) => textSource(column, one))
  const words: string[] = []
  const codeOf = new Map<string, number>()
  const texts = (row: number): string => sources.flatMap((source) => source.words[source.codeAt(row)] ?? []).join('; ')
  return {
    column,
    header: every.map(({ header }) => header).join(', '),
    get words() {
      return words.length === 0 ? sources.flatMap((source) => source.words).slice(0, 1) : words
    },
    codeAt: (row) => {
      const text = texts(row)
      if (text === '') return -1
      const known = codeOf.get(text)
      if (known !== undefined) return known
      codeOf.set(text, words.length)
      return words.push(text) - 1
    },
  }
}

/** The texts of chosen rows as one column with a dictionary of its own. */
export function textColumnOf(source: TextSource, rows: Int32Array): TextColumn {
  const codes = new Int32Array(rows.length)
  for (let k = 0; k < rows.length; k++) codes[k] = source.codeAt(rows[k] as number)
  return { type: 'text', codes, dictionary: source.words }
}
