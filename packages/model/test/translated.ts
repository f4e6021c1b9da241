import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser'
import type { Words } from '@thrum/model/ground'
import { IntlMessageFormat } from 'intl-messageformat'
import { expect, it } from 'vitest'

/** What a message asks for: blanks, how a number is written, branches, and the texts between them. */
export interface Shape {
  /** Such as `n plural one other`, `share number scale/100 @@`, `kind`; each once, sorted. */
  readonly asks: readonly string[]
  readonly texts: readonly string[]
  /** Each argument with every value that leads into another branch; one of which is not chosen from has a single one. */
  readonly examples: ReadonlyMap<string, readonly (string | number)[]>
}

const skeletonOf = (style: unknown): string =>
  typeof style === 'object' && style !== null && 'tokens' in style
    ? ` ${JSON.stringify(style.tokens)}`
    : ` ${String(style ?? '')}`

/** Exact numbers (`=0`) as they are; one and a large number for the rest, in which Spanish shows its mark of thousands. */
const pluralExamples = (branches: readonly string[]): readonly number[] => [
  ...branches.flatMap((branch) => (branch.startsWith('=') ? [Number(branch.slice(1))] : [])),
  1,
  7,
  12_345,
  1_000_000,
]

export function shapeOf(message: string): Shape {
  const asks = new Set<string>()
  const texts: string[] = []
  const examples = new Map<string, readonly (string | number)[]>()
  const example = (name: string, values: readonly (string | number)[]): void => {
    examples.set(name, [...new Set([...(examples.get(name) ?? []), ...values])])
  }
  const walk = (elements: readonly MessageFormatElement[], within: string): void => {
    for (const own of elements) {
      if (own.type === TYPE.literal) texts.push(own.value)
      else if (own.type === TYPE.pound) asks.add(`# in ${within}`)
      else if (own.type === TYPE.argument) {
        asks.add(own.value)
        if (!examples.has(own.value)) example(own.value, ['Weir'])
      } else if (own.type === TYPE.number) {
        asks.add(`${own.value} number${skeletonOf(own.style)}`)
        example(own.value, [0.1234])
      } else if (own.type === TYPE.select || own.type === TYPE.plural) {
        const branches = Object.keys(own.options)
        const kind = own.type === TYPE.select ? 'select' : own.pluralType
        asks.add(`${own.value} ${kind} ${branches.sort().join(' ')}`)
        example(own.value, own.type === TYPE.select ? branches : pluralExamples(branches))
        for (const [branch, { value }] of Object.entries(own.options)) walk(value, `${own.value} ${branch}`)
      } else throw new Error(`unknown part of a message: ${message}`)
    }
  }
  walk(parse(message, { ignoreTag: true }), '')
  return { asks: [...asks].sort(), texts, examples }
}

/** Every way to fill a message that leads into another branch. */
export function fillings({ examples }: Shape): readonly { readonly [name: string]: string | number }[] {
  return [...examples].reduce<readonly { readonly [name: string]: string | number }[]>(
    (before, [name, values]) => before.flatMap((own) => values.map((value) => ({ ...own, [name]: value }))),
    [{}],
  )
}

/** Words of English that Spanish does not have. */
export const englishOnly =
  /(?<!\p{L})(?:the|and|of|or|with|without|is|are|was|were|not|for|by|which|that|this|these|from|to|at|than|be|been|can|cannot|in|on|it|its|nothing|field|fields|count|counts|watch|watches|row|rows|file|kind|kinds|level|levels|between|each|other|written|wrote|there|were|had|would|write|bring)(?!\p{L})/iu

/** What is typed stays as it is: commands, options, and texts in straight quotes. */
const withoutTyped = (text: string): string =>
  text
    .replace(/^ *thrum [^\n]*$/gmu, '')
    .replace(/\bthrum (?:import|history|withdraw)\b/gu, '')
    .replace(/[a-z-]+\.(?:csv|thrum|md)\b/gu, '')
    .replace(/--[a-zA-Z]+(?: [a-z]+(?:,[a-z]+)+)?/gu, '')
    .replace(/"[^"]*"/gu, '')

/** A message that reads the same in both languages, or holds English on purpose, and why. */
export interface Allowed {
  readonly [id: string]: string
}

/** Registers what must hold of the Spanish words of a package, message by message. */
export function testSpanish(english: Words, spanish: Words, allowed: Allowed): void {
  it('every id of English has Spanish, and no other has', () => {
    expect(Object.keys(spanish).sort()).toEqual(Object.keys(english).sort())
  })

  it('blanks, numbers and branches are those of English', () => {
    for (const [id, text] of Object.entries(english)) expect(shapeOf(spanish[id] ?? '').asks, id).toEqual(shapeOf(text).asks)
  })

  it('every message can be said, in each of its branches', () => {
    for (const [id, text] of Object.entries(spanish)) {
      const format = new IntlMessageFormat(text, 'es', undefined, { ignoreTag: true })
      const said = fillings(shapeOf(text)).map((filled) => String(format.format(filled)))
      for (const sentence of said) expect(sentence, id).not.toMatch(/undefined|NaN|#|\{(?! ")/u)
    }
  })

  it('no English is left over, but for what is the same in both', () => {
    const same = Object.keys(english).filter((id) => spanish[id] === english[id])
    const left = Object.keys(spanish).filter((id) =>
      shapeOf(spanish[id] ?? '').texts.some((own) => englishOnly.test(withoutTyped(own))),
    )
    expect([...new Set([...same, ...left])].sort()).toEqual(Object.keys(allowed).sort())
  })

  it('a space that does not break stands before every sign of per cent', () => {
    expect(Object.keys(spanish).filter((id) => /(?<!\u00a0)%/u.test(spanish[id] ?? ''))).toEqual([])
  })
}
