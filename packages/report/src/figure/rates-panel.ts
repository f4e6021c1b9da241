import { saying } from '@thrum/model/ground'
import { type Axis, drawBeside, layAxis, scaleOfRates, upright } from './axis.ts'
import { guiseOf } from './ink.ts'
import { lead, letters, paragraph, sizes } from './letters.ts'
import { cutLine, textWidth, wrapText } from './measure.ts'
import type { Frame } from './plate.ts'
import type { RatePoint } from './rates-data.ts'
import { drawMark } from './shapes.ts'
import { spreadApart, stepAside } from './spread.ts'
import { element, numberText, type SvgNode } from './svg.ts'

/** One kind: a column for each level, the rate upwards. */
export interface Panel {
  readonly kind: string
  readonly points: readonly RatePoint[]
  readonly levels: readonly string[]
  readonly unit: string
  /** Most room of the name of a field beside its mark [px]; 0: fields are not named. */
  readonly names: number
}

const radius = 4
const plotHeight = 200
/** Unnamed marks may step so far aside of their column [px]. */
const crowdRoom = 36
const tickRoom = 42
const nameSize = sizes.small
const nameGap = 14
const headRoom = 44

type Places = ReadonlyMap<RatePoint, { readonly x: number; readonly y: number }>

/** Points of one field in the order of their levels. */
function byField(points: readonly RatePoint[]): readonly (readonly RatePoint[])[] {
  return [...Map.groupBy(points, ({ field }) => field).values()].map((own) => own.toSorted((a, b) => a.level - b.level))
}

/** Room that the longest of some names takes [px]. */
const widest = (points: readonly RatePoint[], { names }: Panel): number =>
  points.reduce((most, { field }) => Math.max(most, Math.min(names, textWidth(field.slice(0, 200), nameSize))), 0)

/** Where the name of a field stands: beside which of its marks, and on which side of it. */
interface Naming {
  readonly level: number
  readonly side: 'left' | 'right'
  readonly marks: readonly RatePoint[]
}

/**
 * A field is named right of its last mark; if lines of other fields go on from that column, left of its first mark where that
 * stands in the first column, so that no line runs through a name.
 */
function namingsOf({ points, levels, names }: Panel): readonly Naming[] {
  if (names === 0) return []
  const fields = byField(points)
  const goesOn = (level: number): boolean =>
    fields.some((own) => own.some((point) => point.level <= level) && own.some((point) => point.level > level))
  const isLeft = (own: readonly RatePoint[]): boolean => own.length > 1 && own[0]?.level === 0 && goesOn(own.at(-1)?.level ?? 0)
  const left = fields.filter(isLeft).flatMap((own) => own[0] ?? [])
  const right = fields.filter((own) => !isLeft(own)).flatMap((own) => own.at(-1) ?? [])
  return [
    ...(left.length > 0 ? [{ level: 0, side: 'left' as const, marks: left }] : []),
    ...levels.flatMap((_, level) => {
      const marks = right.filter((point) => point.level === level)
      return marks.length > 0 ? [{ level, side: 'right' as const, marks }] : []
    }),
  ]
}

/** Room right of each column [px]: for the names that stand there, or for lines to the next column. */
function roomsOf(panel: Panel): readonly number[] {
  const { levels, names } = panel
  const keys = levels.reduce((most, level) => Math.max(most, textWidth(level.slice(0, 40), sizes.small, 'strong')), 0)
  const namings = namingsOf(panel).filter(({ side }) => side === 'right')
  return levels.map((_, level) => {
    const forNames = widest(namings.find((naming) => naming.level === level)?.marks ?? [], panel)
    const isLast = level === levels.length - 1
    if (forNames > 0) return forNames + 26 + (isLast ? 0 : 18)
    return (isLast ? 22 : Math.max(56, Math.min(100, keys + 30))) + (names > 0 ? 0 : crowdRoom * 0.8)
  })
}

/** Where the first column stands at least [px]. */
function firstColumn(panel: Panel): number {
  if (panel.names === 0) return tickRoom + crowdRoom + 10
  const left = namingsOf(panel).find(({ side }) => side === 'left')
  return tickRoom + 26 + (left === undefined ? 0 : widest(left.marks, panel))
}

/** Least width of a panel [px]. */
export function panelWidth(panel: Panel): number {
  return firstColumn(panel) + roomsOf(panel).reduce((sum, room) => sum + room, 0)
}

/** Columns from left to right; room to spare goes between them, up to a limit. */
function columnsOf(panel: Panel, width: number): readonly number[] {
  const rooms = roomsOf(panel)
  const spare = Math.max(0, width - panelWidth(panel))
  const each = Math.min(70, spare / (panel.levels.length + 1))
  let x = firstColumn(panel) + each * 0.5
  return rooms.map((room) => {
    const here = x
    x += room + each
    return here
  })
}

function drawNames(panel: Panel, places: Places, columns: readonly number[], { ink }: Frame): readonly SvgNode[] {
  return namingsOf(panel).flatMap(({ level, side, marks }) => {
    const way = side === 'left' ? -1 : 1
    const wanted = marks.map((mark) => places.get(mark)?.y ?? 0)
    const spread = spreadApart(wanted, nameGap, headRoom + 4, headRoom + plotHeight - 4)
    const x = (columns[level] ?? 0) + 22 * way
    const style = { size: nameSize, fill: ink.text, halo: ink.paper, anchor: side === 'left' ? 'end' : 'start' } as const
    return marks.flatMap((mark, k) => {
      const from = places.get(mark) ?? { x: 0, y: 0 }
      const y = spread[k] ?? from.y
      const start = from.x + (radius + 2) * way
      const leader = `M${numberText(start)} ${numberText(from.y)}L${numberText(x - 3 * way)} ${numberText(y)}`
      return [
        element('path', { d: leader, fill: 'none', stroke: ink.quiet, 'stroke-width': 0.6 }),
        letters(x, y + 4, cutLine(mark.field, panel.names, nameSize), style, mark.field),
      ]
    })
  })
}

/** Names of levels under their columns, each with its mark. */
function drawLevels(
  { levels }: Panel,
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

function placePoints({ points, levels, names }: Panel, axis: Axis, columns: readonly number[]): Places {
  return new Map(
    levels.flatMap((_, level) => {
      const own = points.filter((point) => point.level === level)
      const ys = own.map(({ rate }) => axis.at(rate))
      // Named marks stay in line, so that no two of the lines to their names cross.
      const aside = names > 0 ? [] : stepAside(ys, radius * 2, crowdRoom)
      return own.map((point, k) => [point, { x: (columns[level] ?? 0) + (aside[k] ?? 0), y: ys[k] ?? 0 }] as const)
    }),
  )
}

/** Lines that join the marks of one field. */
function drawPairs(panel: Panel, places: Places, { ink }: Frame): readonly SvgNode[] {
  return byField(panel.points)
    .filter((own) => own.length > 1)
    .map((own) => {
      const d = own.map(
        (point, k) => `${k === 0 ? 'M' : 'L'}${numberText(places.get(point)?.x ?? 0)} ${numberText(places.get(point)?.y ?? 0)}`,
      )
      return element('path', { d: d.join(''), fill: 'none', stroke: ink.quiet, 'stroke-width': 0.9 })
    })
}

export function drawPanel(
  panel: Panel,
  frame: Frame,
  width: number,
): { readonly nodes: readonly SvgNode[]; readonly height: number } {
  const { ink, say } = frame
  const ends = scaleOfRates(panel.points.map(({ rate }) => rate))
  const axis = layAxis({ ...ends, from: headRoom + plotHeight, to: headRoom }, { room: upright })
  const columns = columnsOf(panel, width)
  const right = Math.min(width, (columns.at(-1) ?? 0) + (panel.names > 0 ? 20 : crowdRoom + 8))
  const places = placePoints(panel, axis, columns)
  const unit = say(saying('report/figure/rates/unit', { unit: panel.unit, scale: axis.scale }))
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
      ...drawBeside(axis, tickRoom, right, ink),
      ...drawPairs(panel, places, frame),
      ...(panel.names > 0 ? drawNames(panel, places, columns, frame) : []),
      ...[...places].map(([point, { x, y }]) =>
        drawMark(x, y, radius, guiseOf(point.level, panel.levels.length), ink, point.told),
      ),
      ...levels.nodes,
    ],
    height: headRoom + plotHeight + levels.height,
  }
}
