import type { Figure } from '@thrum/model'
import { drawFigure, figureMargin } from '@thrum/report'
import { useEffect, useRef, useState } from 'react'
import { useLook } from '../frame/look.ts'
import { Scroll } from '../frame/scroll.tsx'
import { speaker, useSay } from '../say/speaker.tsx'

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

function Drawn({ figure, width }: { readonly figure: Figure; readonly width: number }) {
  const say = useSay()
  const theme = useLook()
  const place = useRef<HTMLDivElement>(null)
  const { svg, table, alt } = drawFigure(figure, { say: speaker, theme, width })
  useEffect(() => {
    // Read as a document of its own kind: markup in a name stays text.
    const read = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement
    place.current?.replaceChildren(document.importNode(read, true))
  }, [svg])
  return (
    <>
      <div ref={place} className="drawing" role="img" aria-label={alt} />
      <details className="table-view">
        <summary>{say('figure/table')}</summary>
        <Scroll label={say('figure/table')}>
          <table>
            <thead>
              <tr>
                {table.head.map((cell) => (
                  <th scope="col" key={cell}>
                    {cell}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row, line) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a row of a table of numbers has no other name than its place
                <tr key={line}>
                  {row.map((cell, k) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: a cell has no other name than its column
                    <td key={k}>{cell}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      </details>
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
