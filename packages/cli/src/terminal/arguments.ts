import { ThrumError } from '@thrum/model/ground'

/** Words of a command line: what stands alone, and what follows a --name. */
export interface Arguments {
  readonly words: readonly string[]
  readonly options: ReadonlyMap<string, readonly string[]>
  readonly flags: ReadonlySet<string>
}

/** Flags that every command knows; they take no value. */
export const commonFlags = ['json', 'help'] as const

/** `worth-set` as typed is `worthSet` as declared. */
export const optionName = (typed: string): string => typed.replace(/-([a-z])/gu, (_, letter: string) => letter.toUpperCase())
export const typedName = (option: string): string => option.replace(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`)

/**
 * Reads `--name value`, `--name=value` and flags. Whether a name is known is the command's to say.
 *
 * @throws ThrumError cli/arguments/... for a single dash, or a flag with a value; model/options/empty for a name without one
 */
export function parseArguments(argv: readonly string[], flags: readonly string[]): Arguments {
  const words: string[] = []
  const options = new Map<string, string[]>()
  const given = new Set<string>()
  for (let k = 0; k < argv.length; k++) {
    const part = argv[k] as string
    if (part === '-h') given.add('help')
    // A number below zero is a word, not an option.
    else if (!part.startsWith('-') || /^-(?:\d|$)/u.test(part)) words.push(part)
    else if (!part.startsWith('--')) throw new ThrumError('cli/arguments/single-dash', { found: part })
    else {
      const equals = part.indexOf('=')
      const name = optionName(part.slice(2, equals < 0 ? undefined : equals))
      if (equals >= 0 && flags.includes(name))
        throw new ThrumError('cli/arguments/flag-with-value', { name: typedName(name), found: part.slice(equals + 1) })
      if (flags.includes(name)) given.add(name)
      else {
        const value = equals < 0 ? argv[++k] : part.slice(equals + 1)
        if (value === undefined || (equals < 0 && value.startsWith('--')))
          throw new ThrumError('model/options/empty', { name: typedName(name) })
        options.set(name, [...(options.get(name) ?? []), value])
      }
    }
  }
  return { words, options, flags: given }
}

/** The one value of an option; undefined where it was not given. @throws ThrumError model/options/given-twice */
export function single({ options }: Arguments, name: string): string | undefined {
  const values = options.get(name)
  if (values !== undefined && values.length > 1) throw new ThrumError('model/options/given-twice', { name: typedName(name) })
  return values?.[0]
}

/** @throws ThrumError model/options/unknown for an option or flag that the command does not know */
export function requireKnown({ options, flags }: Arguments, known: readonly string[]): void {
  for (const name of [...options.keys(), ...flags]) {
    if (!known.includes(name) && !(commonFlags as readonly string[]).includes(name)) {
      throw new ThrumError('model/options/unknown', {
        name: typedName(name),
        known: known.map((own) => `--${typedName(own)}`).join(', '),
      })
    }
  }
}
