import type { Figure } from '@thrum/model'
import type { Speaker } from '../say/say.ts'
import { inks, type Theme } from './ink.ts'
import { drawIntervals } from './intervals.ts'
import { lead, letters, paragraph, sizes } from './letters.ts'
import { wrapEvenly, wrapText } from './measure.ts'
import { writePage } from './page.ts'
import type { Frame, Plate, TableView } from './plate.ts'
import { drawRates } from './rates-by-level.ts'
import { drawStrips } from './strips.ts'
import { lineText, movedTo, type SvgNode } from './svg.ts'

export interface FigureSettings {
  readonly say: Speaker
  readonly theme: Theme
  /** Width of the whole drawing [px]; less than `narrowest` is taken as that. */
  readonly width: number
}

export interface DrawnFigure {
  /** A file of its own: no script, no reference to elsewhere. The same figure gives the same bytes. */
  readonly svg: string
  readonly width: number
  readonly height: number
  /** What it shows, in words. */
  readonly alt: string
  readonly table: TableView
}

/** No drawing is narrower than this [px]. */
export const narrowest = 280

/** Room left around a drawing [px]; a page that has a margin of its own lets the drawing reach into it by as much. */
export const marginOf = (width: number): number => (width < 520 ? 16 : 28)

export function pageWidth({ width }: FigureSettings): number {
  return Number.isFinite(width) ? Math.max(narrowest, Math.round(width)) : narrowest
}

function drawPlate(figure: Figure, frame: Frame): Plate {
  switch (figure.kind) {
    case 'intervals':
      return drawIntervals(figure, frame)
    case 'rates-by-level':
      return drawRates(figure, frame)
    case 'strips':
      return drawStrips(figure, frame)
  }
}

/** Most lines of what stands under a figure: what it comes to, and how to read it. */
const captionLines = 16

/** A figure with its title above and how to read it below. */
export interface TitledPlate extends Plate {
  readonly title: string
}

/** @param letter which figure of several it is */
export function drawTitled(figure: Figure, frame: Frame, letter: string | null): TitledPlate {
  const { ink, say, width } = frame
  const title = lineText(say(figure.title))
  const indent = letter === null ? 0 : 20
  const titles = wrapText(title, width - indent, 3, sizes.title, 'title')
  const titleStyle = { size: sizes.title, fill: ink.text, face: 'title' } as const
  const plate = drawPlate(figure, frame)
  const top = 16 + (titles.length - 1) * sizes.title * lead + 14
  const captions = plate.caption.length === 0 ? [] : wrapEvenly(plate.caption.join(' '), width, captionLines, sizes.small)
  const captionY = top + plate.height + 20
  const nodes: SvgNode[] = [
    ...(letter === null ? [] : [letters(0, 16, letter, titleStyle)]),
    ...paragraph(indent, 16, titles, titleStyle, title),
    movedTo(0, top, plate.nodes),
    ...paragraph(0, captionY, captions, { size: sizes.small, fill: ink.quiet }),
  ]
  const height = captions.length === 0 ? top + plate.height : captionY + (captions.length - 1) * sizes.small * lead + 5
  return { ...plate, nodes, height, title }
}

/**
 * A figure as a drawing of its own, with its numbers as a table.
 *
 * It needs no `document`: the drawing is plain data written as text, so that terminal, worker, server and browser give the
 * same bytes.
 */
export function drawFigure(figure: Figure, settings: FigureSettings): DrawnFigure {
  const { say, theme } = settings
  const ink = inks[theme]
  const width = pageWidth(settings)
  const margin = marginOf(width)
  const plate = drawTitled(figure, { say, ink, width: width - 2 * margin }, null)
  const height = Math.ceil(plate.height + 2 * margin - 6)
  const { title, told } = plate
  const nodes = [movedTo(margin, margin - 3, plate.nodes)]
  return {
    svg: writePage({ width, height, ink, title, told, language: say.language, nodes }),
    width,
    height,
    alt: told,
    table: plate.table,
  }
}
