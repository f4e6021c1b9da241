import { writeFileSync } from 'node:fs'
import { toPng } from '@thrum/host'
import type { Answer } from '@thrum/model'
import { saying, ThrumError } from '@thrum/model/ground'
import { drawAnswer, hasFigure, narrowest, type Theme, themes, wrap } from '@thrum/report'
import { type Arguments, single } from '../terminal/arguments.ts'
import type { Terminal } from '../terminal/terminal.ts'

/** Options of a figure, as declared (camel case). */
export const figureOptions = ['figure', 'figureLook', 'figureWidth'] as const

/** Width of a figure's page where none was named, and of the widest [px]. */
const usualWidth = 1280
const widest = 4000
/** How much finer the pixels of a picture are. */
const scale = 2

/** A figure as it was asked for. */
export interface FigureAsked {
  readonly file: string
  readonly theme: Theme
  readonly width: number
}

const ending = /\.(?:svg|png)$/iu

function readLook(found: string | undefined): Theme {
  const look = themes.find((own) => own === (found ?? 'light'))
  if (look === undefined) throw new ThrumError('cli/ask/figure-look', { found: found ?? '' })
  return look
}

function readWidth(found: string | undefined): number {
  const width = found === undefined ? usualWidth : /^\d+$/u.test(found) ? Number(found) : 0
  if (width < narrowest || width > widest) throw new ThrumError('cli/ask/figure-width', { found: found ?? '', narrowest, widest })
  return width
}

/**
 * The figure that a command line asks for; null where it asks for none.
 *
 * @throws ThrumError cli/ask/figure-name, figure-look, figure-width or figure-missing, before anything is worked out or written
 */
export function readFigureAsked(given: Arguments): FigureAsked | null {
  const [file, look, width] = figureOptions.map((name) => single(given, name))
  if (file === undefined) {
    if (look !== undefined || width !== undefined) throw new ThrumError('cli/ask/figure-missing')
    return null
  }
  if (!ending.test(file)) throw new ThrumError('cli/ask/figure-name', { file })
  return { file, theme: readLook(look), width: readWidth(width) }
}

/**
 * Draws an answer into a file: SVG or PNG, by its ending.
 *
 * @throws ThrumError cli/ask/no-figure where the answer has nothing to draw; cli/ask/figure-not-written
 */
export async function writeFigure({ file, theme, width }: FigureAsked, answer: Answer, terminal: Terminal): Promise<void> {
  if (!hasFigure(answer)) throw new ThrumError('cli/ask/no-figure', { file })
  const { svg } = drawAnswer(answer, { say: terminal.say, theme, width })
  const content = file.toLowerCase().endsWith('.png') ? await toPng(svg, { scale }) : svg
  try {
    writeFileSync(file, content)
  } catch (cause) {
    throw new ThrumError('cli/ask/figure-not-written', { file }, { cause })
  }
  terminal.print(`\n${wrap(terminal.say(saying('cli/ask/figure', { file }))).join('\n')}`)
}
