import { writeFileSync } from 'node:fs'
import { toPng } from '@thrum/host'
import type { Answer } from '@thrum/model'
import { saying, ThrumError } from '@thrum/model/ground'
import { drawAnswer, wrap } from '@thrum/report'
import type { Terminal } from '../terminal/terminal.ts'

/** Width of a figure's page [px], and how much finer its pixels are. */
const width = 1280
const scale = 2

const ending = /\.(?:svg|png)$/iu

/** @throws ThrumError cli/ask/figure-name, before anything is worked out or written down */
export function requireFigureName(file: string | undefined): void {
  if (file !== undefined && !ending.test(file)) throw new ThrumError('cli/ask/figure-name', { file })
}

/** Draws an answer into a file: SVG or PNG, by its ending. @throws ThrumError cli/ask/figure-not-written */
export async function writeFigure(file: string, answer: Answer, terminal: Terminal): Promise<void> {
  const { svg } = drawAnswer(answer, { say: terminal.say, theme: 'light', width })
  const content = file.toLowerCase().endsWith('.png') ? await toPng(svg, { scale }) : svg
  try {
    writeFileSync(file, content)
  } catch (cause) {
    throw new ThrumError('cli/ask/figure-not-written', { file }, { cause })
  }
  terminal.print(`\n${wrap(terminal.say(saying('cli/ask/figure', { file }))).join('\n')}`)
}
