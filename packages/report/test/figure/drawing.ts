import { textWidth } from '../../src/figure/measure.ts'
import type { Face } from '../../src/figure/widths.ts'

/** A line of text or a mark of a drawing, where it stands on the page [px]. */
export interface Piece {
  readonly name: string
  readonly text: string
  readonly x: number
  readonly y: number
  readonly box: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number }
}

const decoded = (text: string): string =>
  text
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, '&')

function attributesOf(written: string): ReadonlyMap<string, string> {
  return new Map([...written.matchAll(/([\w:-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, decoded(value)]))
}

function faceOf(attributes: ReadonlyMap<string, string>): Face {
  if (attributes.has('font-family')) return 'title'
  return attributes.get('font-weight') === '600' ? 'strong' : 'sans'
}

function textPiece(text: string, attributes: ReadonlyMap<string, string>, dx: number, dy: number): Piece {
  const number = (key: string): number => Number(attributes.get(key) ?? '0')
  const [x, y, size] = [number('x') + dx, number('y') + dy, number('font-size')]
  const width = textWidth(text, size, faceOf(attributes))
  const anchor = attributes.get('text-anchor')
  const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x
  return { name: 'text', text, x, y, box: { left, right: left + width, top: y - size * 0.74, bottom: y + size * 0.22 } }
}

function shapePiece(name: string, attributes: ReadonlyMap<string, string>, dx: number, dy: number): Piece | null {
  const number = (key: string): number => Number(attributes.get(key) ?? '0')
  if (name === 'circle') {
    const [x, y, r] = [number('cx') + dx, number('cy') + dy, number('r')]
    return { name, text: '', x, y, box: { left: x - r, right: x + r, top: y - r, bottom: y + r } }
  }
  if (name === 'rect') {
    const [x, y] = [number('x') + dx, number('y') + dy]
    return { name, text: '', x, y, box: { left: x, right: x + number('width'), top: y, bottom: y + number('height') } }
  }
  const start = /^M(-?[\d.]+) (-?[\d.]+)/.exec(attributes.get('d') ?? '')
  if (name !== 'path' || start === null) return null
  const [x, y] = [Number(start[1]) + dx, Number(start[2]) + dy]
  return { name, text: '', x, y, box: { left: x, right: x, top: y, bottom: y } }
}

/** Everything drawn, in the order of drawing. Reads what `markup` writes, and nothing else. */
export function piecesOf(svg: string): readonly Piece[] {
  const pieces: Piece[] = []
  const places: { readonly dx: number; readonly dy: number }[] = []
  let open: { readonly name: string; readonly attributes: ReadonlyMap<string, string> } | null = null
  let isHint = false
  for (const [, closing, name = '', written = '', own, text] of svg.matchAll(
    /<(\/?)([\w:]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>|([^<]+)/g,
  )) {
    const { dx, dy } = places.at(-1) ?? { dx: 0, dy: 0 }
    if (text !== undefined) {
      if (open !== null && !isHint) pieces.push(textPiece(decoded(text), open.attributes, dx, dy))
    } else if (name === 'title' || name === 'desc') isHint = closing === ''
    else if (name === 'g') {
      const moved = /translate\((-?[\d.]+) (-?[\d.]+)\)/.exec(written)
      if (closing === '/') places.pop()
      else if (own === '') places.push({ dx: dx + Number(moved?.[1] ?? 0), dy: dy + Number(moved?.[2] ?? 0) })
    } else if (name === 'text') open = closing === '/' ? null : { name, attributes: attributesOf(written) }
    else if (closing === '') {
      const piece = shapePiece(name, attributesOf(written), dx, dy)
      if (piece !== null) pieces.push(piece)
    }
  }
  return pieces
}

export const textsOf = (svg: string): readonly Piece[] => piecesOf(svg).filter(({ name }) => name === 'text')

/** Pairs of texts that touch each other. */
export function overlaps(svg: string): readonly string[] {
  const texts = textsOf(svg)
  return texts.flatMap((a, k) =>
    texts
      .slice(k + 1)
      .filter((b) => a.box.left < b.box.right && b.box.left < a.box.right && a.box.top < b.box.bottom && b.box.top < a.box.bottom)
      .map((b) => `${a.text} | ${b.text}`),
  )
}

/** What stands beyond the edge of the page. */
export function outside(svg: string, width: number, height: number): readonly string[] {
  return piecesOf(svg)
    .filter(({ box }) => box.left < 0 || box.right > width || box.top < 0 || box.bottom > height)
    .map(({ name, text, box }) => `${name} ${text} ${JSON.stringify(box)}`)
}

/** A drawing as lines of rounded places, for golden tests. */
export function outline(svg: string): string {
  return piecesOf(svg)
    .map(({ name, text, x, y }) => `${name} ${Math.round(x)} ${Math.round(y)}${text === '' ? '' : ` ${text}`}`)
    .join('\n')
}
