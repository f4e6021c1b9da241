import type { Figure } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { sixDigits } from '../print/numbers.ts'
import type { Speaker } from '../say/say.ts'
import type { Ink } from './ink.ts'
import { letters, sizes } from './letters.ts'
import type { SvgNode } from './svg.ts'

/** What a figure is drawn with. */
export interface Frame {
  readonly say: Speaker
  readonly ink: Ink
  /** Room from left to right [px]. */
  readonly width: number
}

/** The numbers of a figure as a table, for those who would rather read than look, and for programs. */
export interface TableView {
  readonly head: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

/** A drawn figure without its title: it lies from 0 to the width of its frame and from 0 to `height` [px]. */
export interface Plate {
  readonly nodes: readonly SvgNode[]
  readonly height: number
  /** How to read it. */
  readonly caption: readonly string[]
  /** What it shows, for those who cannot see it. */
  readonly told: string
  readonly table: TableView
}

/** Most marks or rows that are drawn; all stand in the table. */
export const rowsDrawn = 200
export const marksDrawn = 4000
/** Most rows that the description tells; all stand in the table. */
export const rowsTold = 12

/** A figure with nothing to draw says so. */
export function emptyPlate({ title }: Figure, table: TableView, { say, ink }: Frame): Plate {
  const note = saying('report/figure/empty')
  return {
    nodes: [letters(0, 13, say(note), { size: sizes.small, fill: ink.quiet })],
    height: 18,
    caption: [],
    told: tellEach(title, [note], 0, say),
    table,
  }
}

/** A description: the title, and the first of what it shows. */
export function tellEach(title: Saying, each: readonly Saying[], more: number, say: Speaker): string {
  return say(saying('report/figure/alt', { title, each: each.map((one) => say(one)).join('; '), more }))
}

/** A number of the table; where there is none, that. */
export function tableNumber(value: number | null, none: string, { say }: Frame): string {
  return value === null || !Number.isFinite(value) ? none : sixDigits(value, say.language)
}
