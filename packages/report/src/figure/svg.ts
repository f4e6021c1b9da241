import { plainText } from '../say/say.ts'

/** An element of a drawing as data: it is written as SVG text by `markup`, and never parsed. */
export interface SvgNode {
  readonly name: string
  readonly attributes: { readonly [name: string]: string | number }
  readonly children: readonly (SvgNode | string)[]
}

export function element(name: string, attributes: SvgNode['attributes'], ...children: readonly (SvgNode | string)[]): SvgNode {
  return { name, attributes, children }
}

/** Elements drawn at another place. */
export function movedTo(x: number, y: number, children: readonly SvgNode[]): SvgNode {
  return element('g', { transform: `translate(${numberText(x)} ${numberText(y)})` }, ...children)
}

/** Two decimals [px] are finer than any printer; what lies beyond them may differ between machines. */
export function numberText(value: number): string {
  const rounded = Math.round(value * 100) / 100
  return rounded === 0 ? '0' : String(rounded)
}

/**
 * Text from a person or a file as one line that XML can hold: control codes and marks of direction made visible, halves of
 * broken characters and code points that XML forbids replaced, blanks run together.
 */
export function lineText(raw: string): string {
  return plainText(raw)
    .toWellFormed()
    .replace(/[\ufffe\uffff]/g, '\ufffd')
    .replace(/ +/g, ' ')
    .trim()
}

const entities: { readonly [character: string]: string } = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }
const escaped = (text: string): string => text.replace(/[&<>"']/g, (character) => entities[character] ?? character)

/** SVG text of a drawing. Whatever text it holds stays text. The same drawing gives the same bytes. */
export function markup({ name, attributes, children }: SvgNode): string {
  const written = Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? numberText(value) : escaped(value)}"`)
    .join('')
  if (children.length === 0) return `<${name}${written}/>`
  return `<${name}${written}>${children.map((child) => (typeof child === 'string' ? escaped(child) : markup(child))).join('')}</${name}>`
}
