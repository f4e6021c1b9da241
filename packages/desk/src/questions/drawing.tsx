import type { Figure } from '@thrum/model'
import { drawFigure, figureMargin } from '@thrum/report'
import { type KeyboardEvent, type PointerEvent, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react'
import { useLook } from '../frame/look.ts'
import { useSay } from '../say/say.ts'
import { type FigureMark, markAt, markByKey, takeMarks } from './figure-marks.ts'
import { TableOfFigure } from './table-of-figure.tsx'

/** Width of an element in steps, so that a drawing is not made anew for every pixel. */
function useWidth(): readonly [(element: HTMLElement | null) => void, number] {
  const [element, place] = useState<HTMLElement | null>(null)
  const [width, setWidth] = useState(0)
  useEffect(() => {
    if (element === null) return
    const watch = new ResizeObserver(([entry]) => setWidth(Math.floor((entry?.contentRect.width ?? 0) / 20) * 20))
    watch.observe(element)
    return () => watch.disconnect()
  }, [element])
  return [place, width]
}

/** Room of what is told of a mark [px]. */
const toldRoom = 260

/** What the mark in hand stands for, beside it. */
function MarkTold({ mark, within }: { readonly mark: FigureMark; readonly within: HTMLElement }) {
  const { left, bottom, width } = mark.element.getBoundingClientRect()
  const own = within.getBoundingClientRect()
  const middle = left + width / 2 - own.left
  const place = Math.max(0, Math.min(own.width - toldRoom, middle - toldRoom / 2))
  return (
    <p className="mark-told" role="status" style={{ left: place, top: bottom - own.top + 6, maxWidth: toldRoom }}>
      {mark.told}
    </p>
  )
}

/** A drawing whose marks tell what they stand for: to the pointer, to a finger, and to the keys. */
function Drawn({ figure, width }: { readonly figure: Figure; readonly width: number }) {
  const say = useSay()
  const theme = useLook()
  const place = useRef<HTMLDivElement>(null)
  const [marks, setMarks] = useState<readonly FigureMark[]>([])
  const [at, setAt] = useState<number | null>(null)
  const { speaker } = say
  const { svg, table, alt } = useMemo(() => drawFigure(figure, { say: speaker, theme, width }), [figure, speaker, theme, width])
  // Before the page is painted, so that no moment shows a figure without its drawing.
  useLayoutEffect(() => {
    // Read as a document of its own kind: markup in a name stays text.
    const read = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement
    const drawing = document.importNode(read, true)
    setMarks(takeMarks(drawing))
    place.current?.replaceChildren(drawing)
  }, [svg])
  // Drawn anew because there is more room or less light, a figure keeps its mark in hand; another figure has none.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the figure is what it waits for
  useEffect(() => setAt(null), [figure])
  useEffect(() => {
    const element = at === null ? undefined : marks[at]?.element
    element?.classList.add('in-hand')
    return () => element?.classList.remove('in-hand')
  }, [at, marks])
  const point = ({ clientX, clientY }: PointerEvent): void => setAt(markAt(marks, figure.kind, clientX, clientY))
  const onKey = (event: KeyboardEvent): void => {
    const to = markByKey(event.key, at, marks.length)
    if (to === undefined || marks.length === 0) return
    event.preventDefault()
    setAt(to)
  }
  const mark = at === null ? undefined : marks[at]
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset holds what is filled in, and this is looked at */}
      <div
        className="marked"
        role="group"
        aria-label={say('figure/marks', { marks: marks.length })}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the marks are gone through by keys
        tabIndex={0}
        onPointerMove={point}
        onPointerDown={point}
        // A finger that is lifted has left, and its mark is still looked at.
        onPointerLeave={({ pointerType }) => {
          if (pointerType === 'mouse') setAt(null)
        }}
        onKeyDown={onKey}
        onBlur={() => setAt(null)}
      >
        <div ref={place} className="drawing" role="img" aria-label={alt} />
        {mark === undefined || place.current === null ? null : <MarkTold mark={mark} within={place.current} />}
      </div>
      <TableOfFigure table={table} />
    </>
  )
}

/** A figure as the report draws it, as wide as there is room, with its table. */
export function Drawing({ figure }: { readonly figure: Figure }) {
  const [place, width] = useWidth()
  return (
    <figure className="figure" ref={place}>
      {width === 0 ? null : <Drawn figure={figure} width={width + 2 * figureMargin(width)} />}
    </figure>
  )
}
