import { dayNumber, isoDate } from '../fold/day.ts'
import { ThrumError } from '../ground/index.ts'
import type { OptionDeclaration, OptionsOf, OptionsSpec } from './declaration.ts'

export type RawOption = string | number | readonly string[]

/** Splits a list as people type it: commas part items, a backslash keeps a comma inside one. */
export function splitList(text: string): readonly string[] {
  const items = text.split(/(?<!\\),/u).map((item) => item.replaceAll('\\,', ',').trim())
  return items.filter((item) => item !== '')
}

/** A day of the calendar: 30 February is read by the platform as 2 March, and is none. */
function isDate(text: string): boolean {
  if (!/^\d{4}-\d\d-\d\d$/u.test(text)) return false
  const day = dayNumber(text)
  return !Number.isNaN(day) && isoDate(day) === text
}

function readOne(name: string, declared: OptionDeclaration, raw: RawOption): string | number | readonly string[] {
  const texts = typeof raw === 'object' ? raw : [String(raw)]
  const text = (texts[0] ?? '').trim()
  if (declared.type === 'texts') return texts.flatMap(splitList)
  if (texts.length > 1) throw new ThrumError('model/options/given-twice', { name })
  if (text === '') throw new ThrumError('model/options/empty', { name })
  if (declared.type === 'number') {
    const value = Number(text)
    if (!Number.isFinite(value) || value <= declared.above) {
      throw new ThrumError('model/options/not-a-number', { name, found: text, above: declared.above })
    }
    return value
  }
  if (declared.type === 'choice' && !declared.choices.includes(text)) {
    throw new ThrumError('model/options/no-such-choice', { name, found: text, choices: declared.choices.join(', ') })
  }
  if (declared.type === 'date' && !isDate(text)) {
    throw new ThrumError('model/options/not-a-date', { name, found: text })
  }
  return text
}

/**
 * Options of a question from what a door was handed.
 *
 * @throws ThrumError model/options/..., naming the option, what was found and what would do
 */
export function readOptions<S extends OptionsSpec>(
  spec: S,
  raw: { readonly [name: string]: RawOption | undefined },
): OptionsOf<S> {
  const read: { [name: string]: string | number | readonly string[] } = {}
  for (const [name, value] of Object.entries(raw)) {
    if (value === undefined) continue
    const declared = Object.hasOwn(spec, name) ? spec[name] : undefined
    if (declared === undefined) throw new ThrumError('model/options/unknown', { name, known: Object.keys(spec).join(', ') })
    read[name] = readOne(name, declared, value)
  }
  return read as OptionsOf<S>
}

/** The same declaration as JSON Schema 2020-12, for the HTTP door. */
export function optionsSchema(spec: OptionsSpec): { readonly [key: string]: unknown } {
  const property = (declared: OptionDeclaration): { readonly [key: string]: unknown } => {
    if (declared.type === 'number') return { type: 'number', exclusiveMinimum: declared.above }
    if (declared.type === 'texts') return { type: 'array', items: { type: 'string' } }
    if (declared.type === 'choice') return { type: 'string', enum: declared.choices }
    return declared.type === 'date' ? { type: 'string', format: 'date' } : { type: 'string' }
  }
  return {
    type: 'object',
    additionalProperties: false,
    properties: Object.fromEntries(Object.entries(spec).map(([name, declared]) => [name, property(declared)])),
  }
}
