import { sha256Hex } from '@thrum/model/ground'
import type { Ink } from './ink.ts'
import { families, hint } from './letters.ts'
import { element, markup, type SvgNode } from './svg.ts'

export interface Page {
  readonly width: number
  readonly height: number
  readonly ink: Ink
  /** Its name and its description, for those who cannot see it. */
  readonly title: string
  readonly told: string
  readonly language: string
  readonly nodes: readonly SvgNode[]
}

const toldAtMost = 4000

/** A drawing as a file of its own. Ids come from the content, so that several may stand on one page. */
export function writePage({ width, height, ink, title, told, language, nodes }: Page): string {
  const drawn = element('g', {}, ...nodes)
  const id = `figure-${sha256Hex(`${title}\n${told}\n${markup(drawn)}`).slice(0, 12)}`
  const page = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width,
      height,
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
      lang: language,
      'font-family': families.sans,
    },
    element('title', { id: `${id}-title` }, hint(title)),
    element('desc', { id: `${id}-desc` }, told.length <= toldAtMost ? told : `${told.slice(0, toldAtMost).toWellFormed()}…`),
    element('rect', { width, height, fill: ink.paper }),
    drawn,
  )
  return `${markup(page)}\n`
}
