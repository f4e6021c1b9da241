import { saying } from '@thrum/model/ground'
import { drawBeside } from './axis.ts'
import { guiseOf } from './ink.ts'
import { lead, letters, paragraph, sizes } from './letters.ts'
import { cutLine, textWidth, wrapText } from './measure.ts'
import type { Frame } from './plate.ts'
import { columnsOf, hairStretches, panelWidth, tickRoom } from './rates-columns.ts'
import { byField, headRoom, type Mark, type Marks, type Panel, placeMarks, radius } from './rates-marks.ts'
import { drawNames, type Naming, namingsOf } from './rates-names.ts'
import { drawMark } from './shapes.ts'
import { element, numberText, type SvgNode } from './svg.ts'

/** A panel with its marks and names, before it is known how wide it will be. */
export interface LaidPanel {
  readonly panel: Panel
  readonly marks: Marks
  readonly namings: readonly Naming[]
  /** Least width [px]. */
  readonly least: number
}

export function layPanel(panel: Panel): LaidPanel {
  const marks = placeMarks(panel)
  const namings = namingsOf(panel, marks)
  return { panel, marks, namings, least: panelWidth(panel, marks, namings) }
}

/** Names of levels under their columns, each with its mark. */
function drawLevels(
  { levels, plotHeight }: Panel,
  columns: readonly number[],
  width: number,
  { ink }: Frame,
): { readonly nodes: readonly SvgNode[]; readonly height: number } {
  if (levels.length === 1) return { nodes: [], height: 8 }
  const y = headRoom + plotHeight + 24
  const blocks = levels.map((level, k) => {
    const x = columns[k] ?? 0
    const left = k === 0 ? x : (x - (columns[k - 1] ?? 0)) / 2
    const right = k === levels.length - 1 ? width - x : ((columns[k + 1] ?? 0) - x) / 2
    const room = Math.max(40, 2 * Math.min(left, right) - 36)
    return { x, level, lines: wrapText(level, room, 3, sizes.small, 'strong') }
  })
  const nodes = blocks.flatMap(({ x, level, lines }, k) => [
    drawMark(x - textWidth(lines[0] ?? '', sizes.small, 'strong') / 2 - 8, y - 4, 4, guiseOf(k, levels.length), ink),
    ...paragraph(x, y, lines, { size: sizes.small, fill: ink.text, face: 'strong', anchor: 'middle' }, level),
  ])
  return { nodes, height: 14 + blocks.reduce((most, { lines }) => Math.max(most, lines.length), 1) * sizes.small * lead }
}

/** Lines that join the marks of one field. */
function drawPairs({ marks }: Marks, place: (mark: Mark) => number, { ink }: Frame): readonly SvgNode[] {
  return byField(marks)
    .filter((own) => own.length > 1)
    .map((own) => {
      const d = own.map((mark, k) => `${k === 0 ? 'M' : 'L'}${numberText(place(mark))} ${numberText(mark.y)}`)
      return element('path', { d: d.join(''), fill: 'none', stroke: ink.quiet, 'stroke-width': 0.9 })
    })
}

/** A panel as wide as it is told, at least as it needs. */
export function drawPanel(
  { panel, marks, namings }: LaidPanel,
  frame: Frame,
  width: number,
): { readonly nodes: readonly SvgNode[]; readonly height: number } {
  const { ink, say } = frame
  const columns = columnsOf(panel, marks, namings, width)
  const place = ({ point, aside }: Mark): number => (columns[point.level] ?? 0) + aside
  const unit = say(saying('report/figure/rates/unit', { unit: panel.unit, scale: marks.axis.scale }))
  const levels = drawLevels(panel, columns, width, frame)
  return {
    nodes: [
      ...paragraph(
        0,
        13,
        wrapText(panel.kind, width - 4, 1, sizes.body, 'strong'),
        { size: sizes.body, fill: ink.text, face: 'strong' },
        panel.kind,
      ),
      letters(0, 30, cutLine(unit, width - 4, sizes.small), { size: sizes.small, fill: ink.quiet }, unit),
      ...drawBeside(marks.axis, { x: tickRoom, right: width, hair: hairStretches(marks, namings, columns, width) }, ink),
      ...drawPairs(marks, place, frame),
      ...namings.flatMap((naming) => drawNames(naming, columns[naming.level] ?? 0, panel, ink)),
      ...marks.marks.map((mark) =>
        drawMark(place(mark), mark.y, radius, guiseOf(mark.point.level, panel.levels.length), ink, mark.point.told),
      ),
      ...levels.nodes,
    ],
    height: headRoom + panel.plotHeight + levels.height,
  }
}
