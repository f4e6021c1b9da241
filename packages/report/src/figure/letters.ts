import type { Ink } from './ink.ts'
import { element, type SvgNode } from './svg.ts'
import type { Face } from './widths.ts'

/** Sizes of text [px]. */
export const sizes = { headline: 20, title: 15, body: 13, small: 11.5, foot: 10.5 } as const
/** From one line of text to the next, by its size. */
export const lead = 1.3

/** Faces by their own name, then what machines have that hold neither. */
export const families = {
  sans: "'Thrum Sans', 'Source Sans 3', Helvetica, Arial, 'Liberation Sans', sans-serif",
  serif: "'Thrum Serif', 'Source Serif 4', Times, 'Times New Roman', 'Liberation Serif', serif",
} as const

const faces: { readonly [face in Face]: SvgNode['attributes'] } = {
  sans: {},
  strong: { 'font-weight': 600 },
  title: { 'font-family': families.serif, 'font-weight': 600 },
}

export interface LetterStyle {
  readonly size: number
  readonly fill: string
  readonly face?: Face
  readonly anchor?: 'start' | 'middle' | 'end'
  /** Colour of the paper, drawn around the letters so that lines behind them do not touch. */
  readonly halo?: string
}

/** A line of text; y is its base line. A longer text behind it is told by a title. */
export function letters(x: number, y: number, line: string, style: LetterStyle, whole?: string): SvgNode {
  const { size, fill, face = 'sans', anchor = 'start', halo } = style
  const attributes = {
    x,
    y,
    'font-size': size,
    ...faces[face],
    ...(anchor === 'start' ? {} : { 'text-anchor': anchor }),
    fill,
    ...(halo === undefined ? {} : { stroke: halo, 'stroke-width': 3, 'stroke-linejoin': 'round', 'paint-order': 'stroke' }),
  }
  return whole === undefined || whole === line
    ? element('text', attributes, line)
    : element('text', attributes, element('title', {}, hint(whole)), line)
}

/** Lines one under the other, from the base line of the first. */
export function paragraph(
  x: number,
  y: number,
  lines: readonly string[],
  style: LetterStyle,
  whole?: string,
): readonly SvgNode[] {
  const isCut = whole !== undefined && lines.join(' ') !== whole
  return lines.map((line, k) => letters(x, y + k * style.size * lead, line, style, isCut ? whole : undefined))
}

const hintAtMost = 400

/** A text as a hint beside the pointer: whole, or the beginning of a very long one. */
export function hint(text: string): string {
  return text.length <= hintAtMost ? text : `${text.slice(0, hintAtMost).toWellFormed()}…`
}

export const stroke = (ink: Ink, colour: keyof Ink, width = 1): SvgNode['attributes'] => ({
  stroke: ink[colour],
  'stroke-width': width,
})
