import type { Answer, Figure } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { type DrawnFigure, drawTitled, type FigureSettings, marginOf, pageWidth, type TitledPlate } from './draw-figure.ts'
import { type Ink, inks } from './ink.ts'
import { lead, letters, paragraph, sizes, stroke } from './letters.ts'
import { wrapEvenly, wrapText } from './measure.ts'
import { writePage } from './page.ts'
import type { Frame, TableView } from './plate.ts'
import { standingOf } from './standing.ts'
import { element, lineText, movedTo, type SvgNode } from './svg.ts'

/** The figures of an answer that have anything to draw on one page, and the table of each. */
export interface DrawnAnswer extends Omit<DrawnFigure, 'table'> {
  readonly tables: readonly { readonly title: string; readonly table: TableView }[]
}

/** From this room on [px] two figures stand side by side, where both read well in half of it. */
const twoColumnsFrom = 1000
const columnGap = 48
/** Longer lines of a headline are hard to read [px]. */
const widestHead = 1040
const rowGap = 34

function isSlim(figure: Figure): boolean {
  if (figure.kind === 'strips') return true
  if (figure.kind === 'intervals') return figure.rows.length <= 60
  return new Set(figure.points.map(({ kind }) => kind)).size <= 2
}

/** True if there is something to draw. On a page with others an empty figure would only take room. */
function hasMarks(figure: Figure): boolean {
  if (figure.kind === 'intervals') return figure.rows.length > 0
  if (figure.kind === 'rates-by-level') return figure.points.some(({ rate }) => Number.isFinite(rate))
  return figure.strips.some(({ values }) => values.some((value) => Number.isFinite(value)))
}

/** True if an answer has anything to draw. */
export const hasFigure = ({ figures }: Pick<Answer, 'figures'>): boolean => figures.some(hasMarks)

/** Figures by the row of the page they stand in. */
function rowsOf(figures: readonly Figure[], width: number): readonly (readonly Figure[])[] {
  const rows: Figure[][] = []
  for (const figure of figures) {
    const last = rows.at(-1)
    const isBeside = width >= twoColumnsFrom && last?.length === 1 && last.every(isSlim) && isSlim(figure)
    if (isBeside) last?.push(figure)
    else rows.push([figure])
  }
  return rows
}

const letterOf = (index: number, count: number): string | null => (count > 1 ? String.fromCodePoint(97 + (index % 26)) : null)

interface Laid {
  readonly nodes: readonly SvgNode[]
  readonly height: number
  readonly plates: readonly TitledPlate[]
}

function layFigures(figures: readonly Figure[], frame: Frame): Laid {
  const nodes: SvgNode[] = []
  const plates: TitledPlate[] = []
  let y = 0
  for (const row of rowsOf(figures, frame.width)) {
    const width = row.length === 2 ? (frame.width - columnGap) / 2 : frame.width
    const drawn = row.map((figure, k) => drawTitled(figure, { ...frame, width }, letterOf(plates.length + k, figures.length)))
    nodes.push(...drawn.map((plate, k) => movedTo(k * (width + columnGap), y, plate.nodes)))
    plates.push(...drawn)
    y += drawn.reduce((most, { height }) => Math.max(most, height), 0) + rowGap
  }
  return { nodes, height: Math.max(0, y - rowGap), plates }
}

interface Head {
  readonly asked: string
  readonly headline: string
  readonly standing: string
}

/** What was asked, what came out, and how it stands, above the figures. */
function layHead({ asked, headline, standing }: Head, width: number, ink: Ink): Omit<Laid, 'plates'> {
  const room = Math.min(width, widestHead)
  const size = width < 520 ? sizes.title + 1 : sizes.headline
  const askedLines = wrapEvenly(asked, room, 3, sizes.small)
  const lines = wrapEvenly(headline, room, 9, size, 'title')
  const askedY = 22
  const lineY = askedY + (askedLines.length - 1) * sizes.small * lead + size * 1.5
  const lowest = lineY + (lines.length - 1) * size * lead
  const standingLines = standing === '' ? [] : wrapText(standing, room, 3, sizes.small)
  const standingY = lowest + 24
  const bottom = standingLines.length === 0 ? lowest : standingY + (standingLines.length - 1) * sizes.small * lead
  return {
    nodes: [
      element('path', { d: `M0 0H${width}`, fill: 'none', ...stroke(ink, 'text', 2) }),
      ...paragraph(0, askedY, askedLines, { size: sizes.small, fill: ink.quiet }, asked),
      ...paragraph(0, lineY, lines, { size, fill: ink.text, face: 'title' }, headline),
      ...paragraph(0, standingY, standingLines, { size: sizes.small, fill: ink.quiet }),
    ],
    height: bottom + 26,
  }
}

/**
 * The figures of an answer on one page: its headline, each figure with a letter, how to read it, and at the foot the state of
 * the data it was made from.
 */
export function drawAnswer(answer: Answer, settings: FigureSettings): DrawnAnswer {
  const { say, theme } = settings
  const ink = inks[theme]
  const width = pageWidth(settings)
  const margin = marginOf(width)
  const room = width - 2 * margin
  const { digest, rows, thrum } = answer.receipt
  const headline = lineText(say(answer.headline))
  const standing = standingOf(answer).map(say).join(' ')
  const head = layHead({ asked: lineText(say(answer.asked)), headline, standing }, room, ink)
  const body = layFigures(hasFigure(answer) ? answer.figures.filter(hasMarks) : answer.figures, { say, ink, width: room })
  const foot = say(
    saying('report/figure/foot', {
      digest: digest.slice(0, 12),
      selected: rows.selected,
      of: rows.of,
      question: answer.question,
      version: thrum,
    }),
  )
  const footLines = wrapText(foot, room, 3, sizes.foot)
  const none =
    body.plates.length === 0
      ? [letters(0, head.height + 12, say(saying('report/figure/none')), { size: sizes.body, fill: ink.quiet })]
      : []
  const ruleY = head.height + Math.max(20, body.height) + 22
  const footY = ruleY + 16
  const height = Math.ceil(footY + (footLines.length - 1) * sizes.foot * lead + 2 * margin - 8)
  const told = [headline, ...(standing === '' ? [] : [standing]), ...body.plates.map((plate) => plate.told)].join(' ')
  const nodes = [
    movedTo(margin, margin, [
      ...head.nodes,
      ...none,
      movedTo(0, head.height, body.nodes),
      element('path', { d: `M0 ${Math.round(ruleY)}H${room}`, fill: 'none', ...stroke(ink, 'hair', 0.75) }),
      ...paragraph(0, footY, footLines, { size: sizes.foot, fill: ink.quiet }),
    ]),
  ]
  return {
    svg: writePage({ width, height, ink, title: headline, told, language: say.language, nodes }),
    width,
    height,
    alt: told,
    tables: body.plates.map(({ title, table }) => ({ title, table })),
  }
}
