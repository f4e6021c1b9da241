import { declarationOf } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { plainName } from '../cell/plain-name.ts'
import type { Sheet } from '../read/sheet.ts'
import { headerWords } from './header-words.ts'
import type { Proposal, ProposalQuestion } from './proposal.ts'
import { proposeDates, proposeEffort } from './propose-file.ts'
import { type ProposedColumn, proposeRoles } from './propose-roles.ts'
import { proposeUnit } from './propose-units.ts'
import type { Role } from './roles.ts'
import type { MappedColumn, Mapping } from './shape.ts'
import { shownUnit } from './shown-unit.ts'

/** Roles that name a watch in a long table. */
const keyRoles: readonly Role[] = ['field', 'plot', 'date', 'start', 'visit', 'observer', 'key', 'season']

/** A plain group name where one column alone counts the group; else the header's own words. */
function kindName(column: ProposedColumn, columns: readonly ProposedColumn[]): string {
  const alone = columns.filter(({ as, insect }) => as === 'tally' && insect?.group === column.insect?.group).length === 1
  return column.insect?.kind != null && alone ? column.insect.kind : plainName(column.header.replaceAll('_', ' '))
}

function mapColumn(column: ProposedColumn, columns: readonly ProposedColumn[], questions: ProposalQuestion[]): MappedColumn {
  const { header, as } = column
  if (column.asks !== null) questions.push({ header, asks: column.asks, proposed: as })
  if (as === 'tally') return { header, as, kind: kindName(column, columns) }
  const unit = proposeUnit(column)
  if (unit?.unit == null)
    return as === 'factor' && declarationOf('count', header) !== undefined
      ? { header, as, factor: `${header} (as written)` }
      : { header, as }
  if (!unit.said)
    questions.push({ header, asks: saying('exchange/ask/unit', { header, unit: shownUnit(unit.unit) }), proposed: unit.unit })
  return { header, as, unit: unit.unit }
}

/** Questions that every sheet raises once: dashes, the counting unit, what a kind without a row means, how levels were assigned. */
function askOfFile(
  sheet: Sheet,
  shape: Mapping['shape'],
  columns: readonly ProposedColumn[],
): { questions: ProposalQuestion[]; rest: Partial<Mapping> } {
  const questions: ProposalQuestion[] = []
  const rest: { absent?: 'none-seen'; key?: string[]; duplicates?: 'keep-one' } = {}
  for (const { header, as, look } of columns) {
    if ((as === 'tally' || as === 'number') && look.dashes)
      questions.push({ header, asks: saying('exchange/ask/dash', { header }), proposed: null })
    if (as === 'tally' && !look.zeros && look.filled > 0 && look.filled < sheet.rows) {
      questions.push({ header, asks: saying('exchange/ask/blank', { header, blanks: sheet.rows - look.filled }), proposed: null })
    }
  }
  if (shape === 'long') {
    rest.absent = 'none-seen'
    questions.push({ header: null, asks: saying('exchange/ask/absent'), proposed: 'none-seen' })
    const key = columns.filter(({ as }) => keyRoles.includes(as)).map(({ as }) => as)
    if (key.length > 0) rest.key = key
  }
  const id = columns.findIndex(({ as }) => as === 'key')
  const ids = sheet.columns[id]
  const repeated = ids === undefined ? 0 : ids.codes.filter((code) => code >= 0).length - ids.dictionary.length
  if (shape === 'wide' && repeated > 0) {
    rest.duplicates = 'keep-one'
    questions.push({
      header: columns[id]?.header ?? null,
      asks: saying('exchange/ask/duplicates', { header: columns[id]?.header ?? '', rows: repeated }),
      proposed: 'keep-one',
    })
  }
  for (const { header, as } of columns) {
    if (as === 'factor') questions.push({ header, asks: saying('exchange/ask/assigned', { header }), proposed: null })
  }
  return { questions, rest }
}

/** Flower visits where a header says visits; individuals otherwise. Asked in any case: the two are never pooled. */
function proposeCountingUnit(columns: readonly ProposedColumn[]): { unit: 'visits' | 'individuals'; question: ProposalQuestion } {
  const visits = columns.some(({ as, header }) => (as === 'tally' || as === 'number') && / visits? /u.test(headerWords(header)))
  const unit = visits ? 'visits' : 'individuals'
  return { unit, question: { header: null, asks: saying('exchange/ask/counting-unit', { unit }), proposed: unit } }
}

/**
 * Proposes how a sheet becomes counts, from its headers and its values, with the reason for each column and a question
 * where a person must decide. The proposed mapping holds the proposed answers.
 *
 * @param fileName may name the year of dates that were written without one
 */
export function proposeMapping(sheet: Sheet, fileName = ''): Proposal {
  const { shape, columns } = proposeRoles(sheet)
  const dates = proposeDates(sheet, columns, fileName)
  const effort = proposeEffort(sheet, columns)
  const questions: ProposalQuestion[] = []
  const mapped = columns.map((column) => mapColumn(column, columns, questions))
  const { questions: ofFile, rest } = askOfFile(sheet, shape, columns)
  const unit = columns.some(({ as }) => as === 'unit') ? null : proposeCountingUnit(columns)
  const constants = { ...effort.constants, ...(unit === null ? {} : { unit: unit.unit }) }
  const mapping: Mapping = {
    version: 1,
    ...(Object.keys(dates.file).length > 0 ? { file: dates.file } : {}),
    shape,
    columns: mapped,
    ...(Object.keys(constants).length > 0 ? { constants } : {}),
    ...rest,
  }
  return {
    mapping,
    reasons: columns.map(({ header, as, because }) => ({ header, as, because })),
    questions: [...effort.questions, ...dates.questions, ...questions, ...(unit === null ? [] : [unit.question]), ...ofFile],
  }
}
