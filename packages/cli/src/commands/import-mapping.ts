import {
  type Mapping,
  type ProposalQuestion,
  type ProposalReason,
  parseMapping,
  proposeMapping,
  readSheet,
  type Sheet,
} from '@thrum/exchange'
import { splitList } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { type Arguments, single } from '../terminal/arguments.ts'

/** What may be said of a file on the command line instead of in its mapping. */
export const mappingOptions = [
  'absent',
  'minutes',
  'area',
  'unit',
  'crop',
  'season',
  'observer',
  'year',
  'effort',
  'assigned',
  'key',
] as const

const constants = ['unit', 'crop', 'season', 'observer'] as const

function assignedOf(given: Arguments): { readonly [factor: string]: string } {
  return Object.fromEntries(
    (given.options.get('assigned') ?? []).map((text) => {
      const equals = text.indexOf('=')
      if (equals < 1) throw new ThrumError('cli/import/assigned', { found: text })
      return [text.slice(0, equals).trim(), text.slice(equals + 1).trim()]
    }),
  )
}

/** What is said to be assigned must be compared in the table. @throws ThrumError cli/import/assigned-unknown, naming what is */
function requireFactors({ columns }: Mapping, assigned: { readonly [factor: string]: string }): void {
  const known = columns.flatMap(({ as, header, factor }) => (as === 'factor' ? [factor ?? header] : []))
  const unknown = Object.keys(assigned).find((name) => !known.includes(name))
  if (unknown !== undefined)
    throw new ThrumError('cli/import/assigned-unknown', { name: unknown, known: known.length === 0 ? '–' : known.join(', ') })
}

/** @throws ThrumError model/options/not-a-number */
function numberSaid(given: Arguments, name: string): number | undefined {
  const text = single(given, name)
  if (text === undefined) return undefined
  const value = text.trim() === '' ? Number.NaN : Number(text)
  if (!Number.isFinite(value) || value <= 0) throw new ThrumError('model/options/not-a-number', { name, found: text, above: 0 })
  return value
}

/** The mapping with what was said on the command line in it. @throws ThrumError exchange/mapping/misshapen */
function withSaid(mapping: Mapping, given: Arguments): Mapping {
  const numbers = (['minutes', 'area'] as const).flatMap((name) => {
    const value = numberSaid(given, name)
    return value === undefined ? [] : [[name, value] as const]
  })
  const texts = constants.flatMap((name) => {
    const value = single(given, name)
    return value === undefined ? [] : [[name, value] as const]
  })
  const said = { ...mapping.constants, ...Object.fromEntries(numbers), ...Object.fromEntries(texts) }
  const year = numberSaid(given, 'year')
  const absent = single(given, 'absent')
  const effort = single(given, 'effort')
  const key = single(given, 'key')
  const saidAssigned = assignedOf(given)
  requireFactors(mapping, saidAssigned)
  const assigned = { ...mapping.assigned, ...saidAssigned }
  return parseMapping({
    ...mapping,
    ...(Object.keys(said).length > 0 ? { constants: said } : {}),
    ...(year === undefined ? {} : { file: { ...mapping.file, year } }),
    ...(absent === undefined ? {} : { absent }),
    ...(effort === undefined ? {} : { effort }),
    ...(key === undefined ? {} : { key: splitList(key) }),
    ...(Object.keys(assigned).length > 0 ? { assigned } : {}),
  })
}

/** A mapping for the file, with what was said on the command line in it, and how it came about. */
export interface MappingMade {
  readonly mapping: Mapping
  readonly reasons: readonly ProposalReason[]
  readonly questions: readonly ProposalQuestion[]
  /** The file as it was read for proposing; null where nothing was proposed. */
  readonly sheet: Sheet | null
}

/** The mapping kept beside the file, or one proposed from its headers and values; what was said on the line comes last. */
export function mappingFor(bytes: Uint8Array, kept: Mapping | null, given: Arguments): MappingMade {
  if (kept !== null) return { mapping: withSaid(kept, given), reasons: [], questions: [], sheet: null }
  const sheet = readSheet(bytes)
  const { mapping, reasons, questions } = proposeMapping(sheet)
  return { mapping: withSaid(mapping, given), reasons, questions, sheet }
}
