import { isoDate } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { dateForm, dayOf, provenOrder } from '../cell/date.ts'
import { dateEvidence } from '../cell/date-order.ts'
import { shortened } from '../cell/shortened.ts'
import type { Sheet } from '../read/sheet.ts'
import type { ProposalQuestion } from './proposal.ts'
import type { ProposedColumn } from './propose-roles.ts'
import type { Mapping } from './shape.ts'

type FileFacts = NonNullable<Mapping['file']>
type Constants = NonNullable<Mapping['constants']>

/** Characters of a title or a foot note in which effort is looked for. */
const longestNote = 500

/** Years that stand in titles and foot notes. */
function yearsIn(texts: readonly string[]): readonly number[] {
  const found = texts.flatMap((text) => text.match(/(?<!\d)(?:19|20)\d\d(?!\d)/gu) ?? [])
  return [...new Set(found.map(Number))]
}

const asideTexts = (sheet: Sheet): readonly string[] =>
  sheet.asides.filter(({ what }) => what === 'title' || what === 'note').map(({ cells }) => cells.join(' '))

/** What has to be settled about the dates of the file: their year, and the order of day and month. */
export function proposeDates(
  sheet: Sheet,
  columns: readonly ProposedColumn[],
  fileName: string,
): { readonly file: Pick<FileFacts, 'year' | 'dateOrder'>; readonly questions: readonly ProposalQuestion[] } {
  const place = columns.findIndex(({ as }) => as === 'date')
  const header = columns[place]?.header
  const cells = sheet.columns[place]
  if (header === undefined || cells === undefined) return { file: {}, questions: [] }
  const file: { year?: number; dateOrder?: 'day first' | 'month first' } = {}
  const questions: ProposalQuestion[] = []
  const unknownYear = dateEvidence(cells.dictionary, null)
  const yearColumn = columns.some(({ as }) => as === 'year')
  if (unknownYear.withoutYear > 0 && !yearColumn) {
    const written = unknownYear.sure.map((day) => Number(isoDate(day).slice(0, 4)))
    const years = [...new Set([...written, ...yearsIn([...asideTexts(sheet), fileName])])]
    const year = years.length === 1 ? years[0] : undefined
    if (year !== undefined) file.year = year
    questions.push({
      header,
      asks: saying('exchange/ask/year', { header, dates: unknownYear.withoutYear }),
      proposed: year === undefined ? null : String(year),
    })
  }
  const { all, open, sure } = dateEvidence(cells.dictionary, file.year ?? null)
  const points = cells.dictionary.filter((text) => {
    const form = dateForm(text)
    return form.kind === 'pair' && form.sign !== '.'
  })
  if (all === 'both' || (all === null && open > 0 && points.length > 0)) {
    const order = likelyOrder(points, sure, file.year ?? null)
    file.dateOrder = order
    const example = points.find((text) => provenOrder(dateForm(text)) === null) ?? points[0] ?? ''
    questions.push({
      header,
      asks: saying(all === 'both' ? 'exchange/ask/date-orders-mixed' : 'exchange/ask/date-order', {
        header,
        example: example.trim(),
      }),
      proposed: order,
    })
  }
  return { file, questions }
}

/** The order under which the open dates lie closer to the sure ones; without any, the order in which they span fewer days. */
function likelyOrder(texts: readonly string[], sure: readonly number[], year: number | null): 'day first' | 'month first' {
  const days = (dayFirst: boolean): number[] =>
    texts.flatMap((text) => {
      const parts = /^\s*(\d{1,2})[/-](\d{1,2})(?:[/-](\d{2,4}))?/u.exec(text)
      if (parts === null) return []
      const short = Number(parts[3] ?? year ?? 2000)
      const of = short < 100 ? 2000 + short : short
      const month = Number(dayFirst ? parts[2] : parts[1])
      const day = Number(dayFirst ? parts[1] : parts[2])
      return dayOf(of, month, day) ?? []
    })
  const span = (list: readonly number[]): number => {
    const all = [...list, ...sure]
    return all.length === 0 ? 0 : all.reduce((a, b) => Math.max(a, b)) - all.reduce((a, b) => Math.min(a, b))
  }
  return span(days(false)) < span(days(true)) ? 'month first' : 'day first'
}

/** Effort that stands in no column: minutes and area that a title or a foot note names, offered and asked. */
export function proposeEffort(
  sheet: Sheet,
  columns: readonly ProposedColumn[],
): { readonly constants: Pick<Constants, 'minutes' | 'area'>; readonly questions: readonly ProposalQuestion[] } {
  const has = (role: string): boolean => columns.some(({ as }) => as === role)
  const constants: { minutes?: number; area?: number } = {}
  const questions: ProposalQuestion[] = []
  const texts = asideTexts(sheet).map((text) => shortened(text, longestNote))
  const quoted = (pattern: RegExp): { readonly match: RegExpExecArray; readonly text: string } | null => {
    for (const text of texts) {
      const match = pattern.exec(text)
      if (match !== null) return { match, text: text.trim() }
    }
    return null
  }
  if (!has('minutes') && !(has('start') && has('end'))) {
    const found = quoted(/(\d{1,3})\s*-?\s*(?:min\b|minutes?|minuten|minuter|minutter|minutos)/iu)
    const minutes = Number(found?.match[1] ?? 0)
    if (minutes > 0) constants.minutes = minutes
    questions.push({
      header: null,
      asks: found === null ? saying('exchange/ask/effort') : saying('exchange/ask/effort-noted', { minutes, text: found.text }),
      proposed: minutes > 0 ? String(minutes) : null,
    })
  }
  if (!has('area')) {
    const found = quoted(/(\d{1,6}(?:[.,]\d{1,6})?)\s*m?\s*[x×]\s*(\d{1,6}(?:[.,]\d{1,6})?)\s*m\b/iu)
    const side = (text: string | undefined): number => Number((text ?? '0').replace(',', '.'))
    const area = side(found?.match[1]) * side(found?.match[2])
    if (found !== null && area > 0) {
      constants.area = area
      questions.push({
        header: null,
        asks: saying('exchange/ask/area-noted', { area, text: found.text }),
        proposed: String(area),
      })
    }
  }
  return { constants, questions }
}
