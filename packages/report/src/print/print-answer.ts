import type { Analysis, Answer, Caution, ComparedAnalyses, Estimate } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import type { Speaker } from '../say/say.ts'
import { table, wrap } from './layout.ts'
import { intervalText, valueWords } from './numbers.ts'

const heading = (say: Speaker, id: string): readonly string[] => ['', say(saying(`report/heading/${id}`))]
const bullets = (say: Speaker, sayings: readonly Saying[]): readonly string[] =>
  sayings.flatMap((own) => wrap(say(own), '  - ', '    '))

const hasInterval = ({ interval }: Estimate): boolean => interval.low !== null || interval.high !== null

function estimateRow(say: Speaker, own: Estimate): readonly string[] {
  const { scale } = own
  return [
    say(own.label),
    own.value === null ? say(saying('report/no-limit')) : valueWords(own.value, scale, say.language),
    hasInterval(own) ? intervalText(own.interval.low, own.interval.high, scale, say.language) : '',
    say(saying(`report/units/${own.counts.replaceAll(' ', '-')}`, { n: own.n })),
  ]
}

/** Estimates by their unit, so that each table has one unit in its head. */
function estimateTables(say: Speaker, estimates: readonly Estimate[]): readonly string[] {
  const byUnit = Map.groupBy(estimates, (own) => say(own.unit))
  return [...byUnit].flatMap(([unit, rows]) => [
    `  ${say(saying(rows.some(hasInterval) ? 'report/table-of' : 'report/table-of/values', { unit }))}`,
    ...table(
      rows.map((own) => estimateRow(say, own)),
      '    ',
    ),
  ])
}

function analysisRow(say: Speaker, { label, value, interval, verdict }: Analysis): readonly string[] {
  return [
    say(label),
    value === null ? (interval === null ? '' : say(saying('report/no-limit'))) : valueWords(value, 'ratio', say.language),
    interval === null ? '' : intervalText(interval.low, interval.high, 'ratio', say.language),
    verdict === null ? '' : say(saying(`questions/verdict/${verdict}`)),
  ]
}

/** A comparison by other analyses: whether its verdict hangs on which is made; in full, what each of them gives. */
function analysesLines(say: Speaker, { analyses, told }: ComparedAnalyses, detail: Detail): readonly string[] {
  const rows = analyses.filter(({ verdict }) => verdict !== null).map((own) => analysisRow(say, own))
  return [...wrap(say(told), '  - ', '    '), ...(detail === 'full' ? table(rows, '    ') : [])]
}

/** Rows are told only where they are some of the counts: of a design as a whole all rows are evidence. */
function cautionLines(say: Speaker, { severity, text, cure, evidenceRows }: Caution, selected: number): readonly string[] {
  return [
    ...wrap(`${say(saying(`report/severity/${severity}`))} ${say(text)}`, '  - ', '    '),
    ...(cure === null ? [] : wrap(say(saying('report/cure', { cure })), '    ', '    ')),
    ...(evidenceRows > 0 && evidenceRows < selected && severity !== 'note'
      ? [`    ${say(saying('report/evidence', { rows: evidenceRows }))}`]
      : []),
  ]
}

/** How much of an answer is printed: all of it, or what a first look needs. */
export type Detail = 'short' | 'full'

/** An answer as plain text of 80 columns. The line `verdict: ...` stands alone, for people and for programs. */
export function printAnswer(answer: Answer, say: Speaker, detail: Detail = 'full'): string {
  const { receipt, method } = answer
  const estimates = detail === 'full' ? answer.estimates : answer.estimates.filter(({ role }) => role === 'headline')
  const cautions = detail === 'full' ? answer.cautions : answer.cautions.filter(({ severity }) => severity !== 'note')
  const compared = answer.analyses ?? []
  const lines = [
    ...wrap(say(answer.asked)),
    '',
    ...wrap(say(answer.headline)),
    ...(answer.verdict === null ? [] : [`verdict: ${answer.verdict}`]),
    ...(estimates.length > 0 ? [...heading(say, 'estimates'), ...estimateTables(say, estimates)] : []),
    ...heading(say, 'can-say'),
    ...bullets(say, answer.claims.canSay),
    ...(answer.claims.cannotSay.length > 0 ? [...heading(say, 'cannot-say'), ...bullets(say, answer.claims.cannotSay)] : []),
    ...(cautions.length > 0
      ? [...heading(say, 'cautions'), ...cautions.flatMap((own) => cautionLines(say, own, receipt.rows.selected))]
      : []),
    ...(compared.length > 0 ? [...heading(say, 'analyses'), ...compared.flatMap((own) => analysesLines(say, own, detail))] : []),
    ...(answer.next.length > 0 ? [...heading(say, 'next'), ...bullets(say, answer.next)] : []),
    ...(detail === 'full' ? methodLines(say, answer) : []),
    '',
    ...wrap(
      say(
        saying('report/receipt', {
          digest: receipt.digest.slice(0, 12),
          selected: receipt.rows.selected,
          of: receipt.rows.of,
          version: receipt.thrum,
          method: method.name,
        }),
      ),
    ),
  ]
  return lines.join('\n')
}

function methodLines(say: Speaker, { method }: Answer): readonly string[] {
  return [
    ...heading(say, 'method'),
    ...wrap(`${say(method.name)}:`, '  '),
    ...wrap(method.equation, '    ', '    '),
    ...bullets(say, [...method.choices, ...method.checks]),
    ...method.references.flatMap(({ source, trust }) =>
      wrap(`${source} [${say(saying(`report/trust/${trust.replaceAll(/[, ]+/gu, '-')}`))}]`, '  - ', '    '),
    ),
  ]
}
