import { toPng } from '@thrum/host'
import type { Answer } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { drawAnswer, drawFigure } from '@thrum/report'
import type { FigureBody } from '../api/question.ts'
import type { Reply } from '../thread/protocol.ts'
import { speakers } from '../words/speakers.ts'

/** Width of a figure's page [px], and how much finer its pixels are: as the terminal draws it. */
const usualWidth = 1280
const scale = 2

/** An answer drawn: all of its figures on one page, or one of them. @throws ThrumError server/figure/none */
export async function drawnReply(
  answer: Answer,
  { question, index, look, language, format, width = usualWidth }: FigureBody,
): Promise<Reply> {
  const settings = { say: speakers[language], theme: look, width }
  const one = index === undefined ? undefined : answer.figures[index]
  if (index !== undefined && one === undefined)
    throw new ThrumError('server/figure/none', { index, count: answer.figures.length })
  const { svg } = one === undefined ? drawAnswer(answer, settings) : drawFigure(one, settings)
  const file = `${question}${index === undefined ? '' : `-${index}`}.${format}`
  return format === 'svg'
    ? { media: 'image/svg+xml; charset=utf-8', body: svg, file }
    : { media: 'image/png', body: await toPng(svg, { scale }), file }
}
