import type { RowHistory, ToldCell, ToldStep } from '@thrum/host'
import { type Saying, saying } from '@thrum/model/ground'

const dayOf = (at: string): string => at.slice(0, 10)

function stepTold(column: string, { to, by, at, reason, file, takenBack }: ToldStep): Saying {
  const values = { column, to, by, day: dayOf(at), reason: reason ?? '', file: file ?? '', taken: takenBack ? 'yes' : 'no' }
  if (file !== null) return saying('server/history/by-file', values)
  return saying(reason === null ? 'server/history/settled' : 'server/history/corrected', values)
}

function cellTold({ column, brought, steps, stands, contested }: ToldCell): readonly Saying[] {
  const first =
    brought === null ? saying('server/history/unbrought', { column }) : saying('server/history/brought', { column, brought })
  const last = contested
    ? [saying('server/history/contested', { stands: stands ?? '–' })]
    : stands === null
      ? []
      : [saying('server/history/stands', { column, stands })]
  return [first, ...steps.map((step) => stepTold(column, step)), ...last]
}

/** What happened to a row, in sentences: how it came, each correction with who, when and why, and what stands. */
export function historySentences({ line, cells, withdrawals, stands }: RowHistory): readonly Saying[] {
  const written = line?.cells.filter(([, text]) => text.trim() !== '').map(([header, text]) => `${header}: ${text.trim()}`)
  return [
    ...(line === null
      ? []
      : [saying('server/history/line', { file: line.file, line: line.number, cells: (written ?? []).join(' · ') })]),
    ...cells.flatMap(cellTold),
    ...(cells.length === 0 ? [saying('server/history/never')] : []),
    ...withdrawals.map(({ by, at, reason, takenBack }) =>
      saying('server/history/withdrawn', { by, day: dayOf(at), reason, taken: takenBack ? 'yes' : 'no' }),
    ),
    ...(stands ? [] : [saying('server/history/gone')]),
  ]
}
