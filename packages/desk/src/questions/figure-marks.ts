import type { Figure } from '@thrum/model'

/** A mark of a drawing that stands for something, with what it stands for. */
export interface FigureMark {
  readonly element: SVGElement
  readonly told: string
}

/** How far from a mark it is still meant [px]. */
const near = 24
/** How far above or below the mark of a row the row is still meant, wherever along it [px]. */
const nearRow = 14

/**
 * The marks of a drawing in the order they stand in it. What each stands for is taken out of the drawing: the page tells it
 * itself, beside the pointer and to the keys.
 */
export function takeMarks(drawing: Element): readonly FigureMark[] {
  return [...drawing.querySelectorAll('title')].flatMap((title) => {
    const element = title.parentElement as SVGElement | null
    if (element === null || element === drawing || element.localName === 'text') return []
    title.remove()
    return [{ element, told: title.textContent }]
  })
}

/** From a point to the nearest place of a mark [px], along and across. */
function distance({ element }: FigureMark, x: number, y: number): { readonly along: number; readonly across: number } {
  const { left, right, top, bottom } = element.getBoundingClientRect()
  return { along: Math.max(left - x, 0, x - right), across: Math.max(top - y, 0, y - bottom) }
}

/** Which mark a point of the window means; null for none. Of a figure of rows the row is meant, wherever along it. */
export function markAt(marks: readonly FigureMark[], kind: Figure['kind'], x: number, y: number): number | null {
  let found: number | null = null
  let least = kind === 'intervals' ? nearRow : near
  for (const [k, mark] of marks.entries()) {
    const { along, across } = distance(mark, x, y)
    const far = kind === 'intervals' ? across : Math.hypot(along, across)
    if (far < least) {
      least = far
      found = k
    }
  }
  return found
}

/** Where a key leads from a mark; undefined for other keys. */
export function markByKey(key: string, at: number | null, count: number): number | null | undefined {
  const to: { readonly [key: string]: number | null } = {
    ArrowRight: at === null ? 0 : Math.min(count - 1, at + 1),
    ArrowDown: at === null ? 0 : Math.min(count - 1, at + 1),
    ArrowLeft: at === null ? count - 1 : Math.max(0, at - 1),
    ArrowUp: at === null ? count - 1 : Math.max(0, at - 1),
    Home: 0,
    End: count - 1,
    Escape: null,
  }
  return to[key]
}
