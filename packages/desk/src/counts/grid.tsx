import { plainText } from '@thrum/report'
import type { CountsPage } from '@thrum/server/api'
import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react'
import { Trouble } from '../frame/trouble.tsx'
import { type Say, useSay } from '../say/say.ts'
import type { OpenCell } from './cell-part.tsx'
import { type CountsAsked, pageRows, useCounts } from './counts-data.ts'

/** Height of a row [px]; the same for all, so that a hundred thousand of them need no measuring. */
const rowHeight = 28
/** Room for the line of the file [rem]. */
const lineRoom = 4.5
/** Rows drawn above and below what is seen, so that scrolling shows no gap. */
const spare = 12

interface Place {
  readonly row: number
  readonly column: number
}

/** What stands in a cell: a number as it is, or that it waits, was lost or was never looked for. */
function cellText(page: CountsPage, row: number, column: number, say: Say): string {
  const own = page.columns[column]
  const value = own?.values[row] ?? null
  const mark = own?.marks?.[row] ?? 'asWritten'
  const text = value === null ? '' : plainText(String(value))
  return mark === 'asWritten' ? text : say(`mark/${mark}`, { value: text })
}

const isNumber = (type: string): boolean => type === 'number' || type === 'tally'
const lineOf = (page: CountsPage | undefined, at: number): string => (page === undefined ? '…' : String(page.lines[at] ?? ''))

/** Room for each column [rem], by what stands in the first rows: the same for every row, so that columns stand below each other. */
function layOut(columns: CountsPage['columns'] | undefined, say: Say): { readonly template: string; readonly width: string } {
  const widths = (columns ?? []).map(({ title, unit, values }) => {
    const longest = values.slice(0, 60).reduce<number>((most, value) => Math.max(most, String(value ?? '').length), 0)
    return Math.min(16, 1.4 + 0.5 * Math.max(longest, say.cell(title).length + (unit?.length ?? 0) + 1))
  })
  return {
    template: `${lineRoom}rem ${widths.map((room) => `minmax(${room}rem, ${room}fr)`).join(' ')}`,
    width: `max(100%, ${widths.reduce((sum, room) => sum + room, lineRoom)}rem)`,
  }
}

/** The counts as rows of one height, of which only those in sight are drawn. */
export function Grid({
  asked,
  onColumns,
  onOpen,
}: {
  readonly asked: CountsAsked
  readonly onColumns: (columns: readonly { readonly name: string; readonly title: string }[]) => void
  readonly onOpen: (cell: OpenCell) => void
}) {
  const say = useSay()
  const [sight, setSight] = useState({ top: 0, height: 600 })
  const [place, setPlace] = useState<Place>({ row: 0, column: 0 })
  const scroller = useRef<HTMLDivElement>(null)
  const wantsFocus = useRef(false)
  const holdsFocus = useRef(false)
  const first = Math.max(0, Math.floor(sight.top / rowHeight) - spare)
  const count = Math.ceil(sight.height / rowHeight) + 2 * spare
  const pages = useCounts(asked, first, first + count)
  const found = pages.flatMap(({ data }) => data ?? [])
  // The first stretch is always there: it says how many rows and which columns there are while others are on their way.
  const known = useCounts(asked, 0, 1)[0]?.data
  const total = known?.total ?? 0
  const failed = pages.find(({ isError }) => isError)
  const columns = known?.columns

  useEffect(() => {
    if (columns !== undefined) onColumns(columns.map(({ name, title }) => ({ name, title: say.cell(title) })))
  }, [columns, onColumns, say])
  useEffect(() => {
    const element = scroller.current
    if (element === null) return
    const watch = new ResizeObserver(() => setSight({ top: element.scrollTop, height: element.clientHeight }))
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  useEffect(() => {
    // A cell that was scrolled out of sight took the focus with it: the one that was gone to gets it as soon as it is drawn.
    const isLost = holdsFocus.current && document.activeElement === document.body
    if (!wantsFocus.current && !isLost) return
    const cell = scroller.current?.querySelector<HTMLElement>(`[data-place="${place.row}/${place.column}"]`)
    if (cell === null || cell === undefined) return
    cell.focus({ preventScroll: true })
    wantsFocus.current = document.activeElement !== cell
  })

  const go = (to: Place): void => {
    const row = Math.min(Math.max(0, to.row), total - 1)
    const column = Math.min(Math.max(0, to.column), (columns?.length ?? 1) - 1)
    setPlace({ row, column })
    wantsFocus.current = true
    const element = scroller.current
    if (element === null) return
    // The head takes the room of one row.
    const above = row * rowHeight
    if (above < element.scrollTop) element.scrollTop = above
    if (above + 2 * rowHeight > element.scrollTop + element.clientHeight)
      element.scrollTop = above + 2 * rowHeight - element.clientHeight
  }
  const open = (row: number, column: number): void => {
    const page = found.find(({ offset }) => row >= offset && row < offset + pageRows)
    const own = page?.columns[column]
    if (page === undefined || own === undefined) return
    const at = row - page.offset
    onOpen({
      row: page.rows[at] ?? '',
      line: lineOf(page, at),
      column: own.name,
      title: say.cell(own.title),
      value: cellText(page, at, column, say),
      place: `${row}/${column}`,
    })
  }
  const onKey = (event: KeyboardEvent): void => {
    const { row, column } = place
    const far = Math.max(1, Math.floor(sight.height / rowHeight) - 2)
    const moves: { readonly [key: string]: Place } = {
      ArrowDown: { row: row + 1, column },
      ArrowUp: { row: row - 1, column },
      ArrowRight: { row, column: column + 1 },
      ArrowLeft: { row, column: column - 1 },
      PageDown: { row: row + far, column },
      PageUp: { row: row - far, column },
      Home: event.ctrlKey ? { row: 0, column: 0 } : { row, column: 0 },
      End: event.ctrlKey ? { row: total - 1, column } : { row, column: Number.POSITIVE_INFINITY },
    }
    const to = moves[event.key]
    if (to !== undefined) {
      event.preventDefault()
      go(to)
    } else if (event.key === 'Enter') open(row, column)
  }

  const { template, width } = useMemo(() => layOut(columns, say), [columns, say])
  const rows = Array.from({ length: Math.max(0, Math.min(total, first + count) - first) }, (_, k) => first + k)
  return (
    <>
      <p className="told" role="status">
        {known === undefined
          ? failed === undefined
            ? say('working')
            : ''
          : say('counts/told', { total, filtered: asked.filters.length > 0 ? 'yes' : 'no' })}{' '}
        <span className="note">{say('counts/keys')}</span>
      </p>
      {failed === undefined ? null : <Trouble error={failed.error} again={() => void failed.refetch()} />}
      {known !== undefined && total === 0 ? <p>{say('counts/empty')}</p> : null}
      <div
        className="grid"
        ref={scroller}
        role="grid"
        aria-label={say('counts/grid')}
        aria-rowcount={total + 1}
        aria-colcount={(columns?.length ?? 0) + 1}
        onScroll={({ currentTarget }) => setSight({ top: currentTarget.scrollTop, height: currentTarget.clientHeight })}
        onKeyDown={onKey}
        // The cell that keys go from may be scrolled out of sight: then the grid is gone to, and hands on to what is in sight.
        tabIndex={
          place.row >= first && place.row < Math.min(total, first + count) && place.column < (columns?.length ?? 0) ? -1 : 0
        }
        onFocus={({ target, currentTarget }) => {
          holdsFocus.current = true
          if (target !== currentTarget) return
          wantsFocus.current = true
          setPlace({
            row: Math.max(0, Math.min(total - 1, Math.ceil(sight.top / rowHeight))),
            column: Math.min(place.column, (columns?.length ?? 1) - 1),
          })
        }}
        onBlur={({ relatedTarget }) => {
          if (relatedTarget !== null) holdsFocus.current = false
        }}
      >
        <div className="row head" role="row" aria-rowindex={1} style={{ gridTemplateColumns: template, width }}>
          <span role="columnheader">{say('counts/line')}</span>
          {columns?.map(({ name, title, unit, type }) => (
            <span role="columnheader" key={name} className={isNumber(type) ? 'number' : 'text'}>
              {say.cell(title)}
              {unit === null ? null : <span className="note"> {unit.replaceAll(/[{}]/gu, '')}</span>}
            </span>
          ))}
        </div>
        <div className="rows" style={{ height: total * rowHeight }}>
          {rows.map((row) => {
            const page = found.find(({ offset }) => row >= offset && row < offset + pageRows)
            const at = row - (page?.offset ?? 0)
            return (
              <div
                className="row"
                role="row"
                aria-rowindex={row + 2}
                key={row}
                style={{ transform: `translateY(${row * rowHeight}px)`, gridTemplateColumns: template, width }}
              >
                <span role="rowheader">{lineOf(page, at)}</span>
                {page?.columns.map((own, column) => (
                  // biome-ignore lint/a11y/useKeyWithClickEvents: keys are heard by the grid as a whole
                  <span
                    role="gridcell"
                    key={own.name}
                    className={isNumber(own.type) ? 'number' : 'text'}
                    data-place={`${row}/${column}`}
                    tabIndex={row === place.row && column === place.column ? 0 : -1}
                    onClick={() => {
                      setPlace({ row, column })
                      open(row, column)
                    }}
                    onFocus={() => setPlace({ row, column })}
                  >
                    {cellText(page, at, column, say)}
                  </span>
                ))}
              </div>
            )
          })}
        </div>
      </div>
    </>
  )
}
