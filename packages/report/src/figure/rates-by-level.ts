import type { RatesFigure } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { threeDigits } from '../print/numbers.ts'
import { guises } from './ink.ts'
import { emptyPlate, type Frame, type Plate, rowsTold, type TableView, tableNumber, tellEach } from './plate.ts'
import { groupRates, type RateGroups } from './rates-data.ts'
import { drawLanes } from './rates-lanes.ts'
import { drawPanel, type LaidPanel, layPanel } from './rates-panel.ts'
import { lineText, movedTo, type SvgNode } from './svg.ts'

/** Up to so many fields have their names beside their marks. */
const namedAtMost = 8
/** Room of their names, the best first [px]; 0: none. */
const nameRooms = [132, 90, 64, 0]
const gutter = 28
/** Height of a plot; of one that stands alone over a wide page, whose lines would lie too flat otherwise [px]. */
const plotHeight = 200
const aloneHeight = 300
const aloneFrom = 800

function tableOf({ points, unit }: RatesFigure, frame: Frame): TableView {
  const { say } = frame
  const none = say(saying('report/figure/no-limit'))
  return {
    head: ['field', 'kind', 'at-level', 'count', 'effort', 'rate'].map((id) =>
      say(saying(`report/figure/column/${id}`, { unit })),
    ),
    rows: points.map(({ field, kind, level, count, effort, rate }) => [
      ...[field, say.nameOf(kind), level].map(lineText),
      ...[count, effort, rate].map((value) => tableNumber(value, none, frame)),
    ]),
  }
}

function toldOf(figure: RatesFigure, { kinds, levels }: RateGroups, { say }: Frame): string {
  const unit = say(figure.unit)
  const groups = kinds.flatMap(({ kind, points }) =>
    levels.flatMap((level, k) => {
      const rates = points.filter((point) => point.level === k).map(({ rate }) => rate)
      if (rates.length === 0) return []
      const low = rates.reduce((least, rate) => Math.min(least, rate), Number.POSITIVE_INFINITY)
      const high = rates.reduce((most, rate) => Math.max(most, rate), 0)
      return [
        saying('report/figure/rates/told', {
          kind: kind.slice(0, 200),
          level: level === '' ? 'none' : level.slice(0, 200),
          fields: rates.length,
          low: threeDigits(low, say.language),
          high: threeDigits(high, say.language),
          unit,
        }),
      ]
    }),
  )
  const each = groups.slice(0, rowsTold)
  return tellEach(figure.title, each, groups.length - each.length, say)
}

const leastOf = (panels: readonly LaidPanel[]): number => panels.reduce((most, { least }) => Math.max(most, least), 0)

/** Panels with the longest names of fields that fit, else without names; null where no panel fits. */
function layPanels({ kinds, levels, fields }: RateGroups, unit: string, { width, say }: Frame): readonly LaidPanel[] | null {
  const height = kinds.length === 1 && width >= aloneFrom ? aloneHeight : plotHeight
  for (const names of fields <= namedAtMost ? nameRooms : [0]) {
    const panels = kinds.map(({ kind, points }) =>
      layPanel({ kind, points, levels, unit, names, plotHeight: height, language: say.language }),
    )
    if (leastOf(panels) <= width) return panels
  }
  return null
}

/** Panels side by side, as many as fit, in rows that fill the width. */
function drawPanels(panels: readonly LaidPanel[], frame: Frame): Pick<Plate, 'nodes' | 'height'> {
  const fitting = Math.max(1, Math.floor((frame.width + gutter) / (leastOf(panels) + gutter)))
  // Rows are filled evenly: four in two rows of two rather than three and one.
  const columns = Math.ceil(panels.length / Math.ceil(panels.length / fitting))
  const width = (frame.width - gutter * (columns - 1)) / columns
  let y = 0
  const nodes: SvgNode[] = []
  for (let start = 0; start < panels.length; start += columns) {
    const row = panels.slice(start, start + columns).map((panel) => drawPanel(panel, frame, width))
    nodes.push(...row.map((panel, k) => movedTo(k * (width + gutter), y, panel.nodes)))
    y += row.reduce((most, { height }) => Math.max(most, height), 0) + 18
  }
  return { nodes, height: y - 18 }
}

/** The raw counts behind a summary: one mark for each field, or for each field at each level. */
export function drawRates(figure: RatesFigure, frame: Frame): Plate {
  const { say } = frame
  const groups = groupRates(figure, frame)
  if (groups.kinds.length === 0) return emptyPlate(figure, tableOf(figure, frame), frame)
  const unit = say(figure.unit)
  const isForLanes = groups.levels.length > guises.length || (groups.levels.length === 1 && groups.fields > namedAtMost)
  const panels = isForLanes ? null : layPanels(groups, unit, frame)
  const caption = say(saying('report/figure/rates/caption', { paired: panels !== null && groups.isPaired ? 'yes' : 'no' }))
  return {
    ...(panels === null ? drawLanes(groups, unit, frame) : drawPanels(panels, frame)),
    caption: panels === null || groups.kinds.length === 1 ? [caption] : [caption, say(saying('report/figure/rates/caption/own'))],
    told: toldOf(figure, groups, frame),
    table: tableOf(figure, frame),
  }
}
