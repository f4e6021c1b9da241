import { type Saying, saying } from '@thrum/model/ground'
import type {
  Limits,
  TableFit,
  TableFitted,
  ToldCaution,
  ToldCoefficient,
  ToldComparison,
  ToldMean,
  ToldPair,
  ToldScatter,
  ToldWithout,
} from '@thrum/questions'
import type { Speaker } from '../say/say.ts'
import { table, wrap } from './layout.ts'
import { intervalText, valueWords } from './numbers.ts'
import type { Detail } from './print-answer.ts'

/** Below this a p is only said to be below it. */
const smallP = 0.001

function pWords(p: number, { say }: Telling): string {
  const written = (value: number): string =>
    new Intl.NumberFormat(say.language, { minimumFractionDigits: 3, maximumFractionDigits: 3 }).format(value)
  return p < smallP ? say(saying('report/fit/small-p', { limit: written(smallP) })) : written(p)
}

/** A speaker, and how it writes a number. */
interface Telling {
  readonly say: Speaker
  readonly number: (value: number) => string
}

const column = ({ say }: Telling, id: string): string => say(saying(`report/fit/column/${id}`))
const heading = ({ say }: Telling, id: string, values: Saying['values'] = {}): readonly string[] => [
  '',
  ...wrap(say(saying(`report/fit/heading/${id}`, values))),
]
const limits = ({ say }: Telling, { low, high }: Limits): string => intervalText(low, high, 'plain', say.language)
const bullet = (text: string): readonly string[] => wrap(text, '  - ', '    ')

function coefficientRow(telling: Telling, own: ToldCoefficient): readonly string[] {
  const { say, number } = telling
  const label = say(own.label)
  if (own.kind !== 'told') return [label, own.kind === 'no-scatter' ? number(own.estimate) : '–']
  const { estimate, se, ratio, df, p } = own
  const shown = ratio === null ? [] : [ratio.value === null ? '…' : number(ratio.value)]
  return [
    label,
    number(estimate),
    number(se),
    ...shown,
    limits(telling, ratio?.limits ?? own.limits),
    String(df),
    pWords(p, telling),
  ]
}

function coefficientLines(telling: Telling, own: readonly ToldCoefficient[], link: TableFitted['link']): readonly string[] {
  const { say } = telling
  const head = ['term', 'estimate', 'se', ...(link === 'identity' ? [] : [link]), 'limits', 'df', 'p']
  const asides = own.flatMap((one) => {
    if (one.kind === 'told') return []
    const because =
      one.kind === 'no-scatter'
        ? saying('report/fit/no-scatter')
        : saying('report/fit/set-aside', { count: one.equals.length, equals: one.equals })
    return wrap(`${say(one.label)}: ${say(because)}.`, '  ', '    ')
  })
  return [...table([head.map((id) => column(telling, id)), ...own.map((one) => coefficientRow(telling, one))]), ...asides]
}

function scatterLines(telling: Telling, scatter: readonly ToldScatter[]): readonly string[] {
  const { say, number } = telling
  return scatter.flatMap(({ label, value, explained }) =>
    bullet(
      say(
        value === null
          ? saying('report/fit/row-scatter/none', { label, explained })
          : saying('report/fit/row-scatter', { label, value: number(value), explained }),
      ),
    ),
  )
}

function likelihoodLines({ say }: Telling, { likelihood }: TableFitted): readonly string[] {
  const { logLikelihood, aic, aicc, parameters, isRestricted } = likelihood
  const written = (value: number): string =>
    new Intl.NumberFormat(say.language, { maximumFractionDigits: 2, useGrouping: false }).format(value)
  return bullet(
    say(
      saying('report/fit/likelihood', {
        restricted: isRestricted ? 'yes' : 'no',
        logLikelihood: written(logLikelihood),
        parameters,
        aic: written(aic),
        hasAicc: aicc === null || isRestricted ? 'no' : 'yes',
        aicc: written(aicc ?? 0),
      }),
    ),
  )
}

function withoutLine(telling: Telling, own: ToldWithout): readonly string[] {
  const { say, number } = telling
  if (own.kind === 'refused') return bullet(say(saying('report/fit/without/refused', { label: own.label, because: own.because })))
  const { label, statistic, df, p, note } = own
  return bullet(
    say(
      saying('report/fit/without', {
        ...{ label, statistic: number(statistic), df, p: pWords(p, telling) },
        ...{ noted: note === null ? 'no' : 'yes', note: note ?? '' },
      }),
    ),
  )
}

function meanRow(telling: Telling, mean: ToldMean): readonly string[] {
  const { say, number } = telling
  if (mean.kind === 'not-told') return [say(mean.label), '–']
  return [say(mean.label), number(mean.value), mean.kind === 'mean' ? limits(telling, mean.limits) : '–']
}

function pairRow(telling: Telling, pair: ToldPair): readonly string[] {
  const { say, number } = telling
  if (pair.kind === 'not-told') return [say(pair.label), '–']
  const { label, value, simultaneous, p, holm } = pair
  return [
    say(label),
    number(value),
    limits(telling, pair.limits),
    limits(telling, simultaneous),
    pWords(p, telling),
    pWords(holm, telling),
  ]
}

function comparisonLines(
  telling: Telling,
  { of, means, meansDf, pairs, pairsDf, held }: ToldComparison,
  fit: TableFitted,
): readonly string[] {
  const { say } = telling
  const about = saying('report/fit/means', {
    link: fit.link,
    ...{ hasPer: fit.per === null ? 'no' : 'yes', per: fit.per ?? '' },
    grouped: fit.isGrouped ? 'yes' : 'no',
    ...{ held: held.length, numbers: held, df: meansDf },
  })
  const meansHead = ['term', 'mean', 'limits'].map((id) => column(telling, id))
  const pairsHead = ['term', `pair-${fit.link}`, 'limits', 'all-at-once', 'p', 'holm'].map((id) => column(telling, id))
  const isLost = [...means, ...pairs].some(({ kind }) => kind === 'not-told')
  return [
    ...heading(telling, 'comparison', { of }),
    ...wrap(say(about), '  '),
    ...table([meansHead, ...means.map((mean) => meanRow(telling, mean))], '    '),
    ...(pairs.length === 0
      ? []
      : [
          ...wrap(say(saying('report/fit/pairs', { df: pairsDf, pairs: pairs.length })), '  '),
          ...table([pairsHead, ...pairs.map((pair) => pairRow(telling, pair))], '    '),
        ]),
    ...(isLost ? wrap(`–: ${say(saying('report/fit/not-told'))}.`, '  ', '    ') : []),
  ]
}

function checkLines(telling: Telling, { checks, family }: TableFitted): readonly string[] {
  const { say } = telling
  if (family === 'gaussian') return [...heading(telling, 'checks'), ...bullet(say(saying('report/fit/no-checks')))]
  if (checks.length === 0) return []
  return [
    ...heading(telling, 'checks'),
    ...checks.flatMap(({ verdict, text }) => bullet(`${say(saying(`report/fit/verdict/${verdict}`))} ${say(text)}`)),
  ]
}

function cautionLines(telling: Telling, cautions: readonly ToldCaution[]): readonly string[] {
  const { say } = telling
  if (cautions.length === 0) return []
  return [
    ...heading(telling, 'cautions'),
    ...cautions.flatMap(({ severity, text, cure }) => [
      ...bullet(`${say(saying(`report/severity/${severity}`))} ${say(text)}`),
      ...(cure === null ? [] : wrap(say(saying('report/cure', { cure })), '    ', '    ')),
    ]),
  ]
}

function rowLines(telling: Telling, { rows }: TableFit): readonly string[] {
  const { say } = telling
  if (rows.leftOut.length === 0) return []
  return [
    ...heading(telling, 'rows'),
    ...bullet(say(saying('report/fit/rows', { used: rows.used, of: rows.of }))),
    ...rows.leftOut.flatMap((own) =>
      bullet(
        say(
          saying('report/fit/left-out', {
            ...{ column: own.column, rows: own.rows, lines: own.lines.join(', ') },
            more: own.rows > own.lines.length ? 'yes' : 'no',
          }),
        ),
      ),
    ),
  ]
}

function fittedLines(telling: Telling, fit: TableFitted, detail: Detail): readonly string[] {
  const isFull = detail === 'full'
  const cautions = isFull ? fit.cautions : fit.cautions.filter(({ severity }) => severity !== 'note')
  return [
    ...heading(telling, 'coefficients'),
    ...coefficientLines(telling, fit.coefficients, fit.link),
    ...(fit.zeros === null ? [] : [...heading(telling, 'zeros'), ...coefficientLines(telling, fit.zeros, 'logit')]),
    ...heading(telling, 'scatter'),
    ...scatterLines(telling, fit.scatter),
    ...likelihoodLines(telling, fit),
    ...(fit.without.length === 0
      ? []
      : [...heading(telling, 'without'), ...fit.without.flatMap((own) => withoutLine(telling, own))]),
    ...(isFull ? fit.comparisons.flatMap((own) => comparisonLines(telling, own, fit)) : []),
    ...checkLines(telling, fit),
    ...cautionLines(telling, cautions),
  ]
}

/**
 * A fit as plain text of the page's width: what was fitted, the table, what varies, means, checks, cautions, how.
 *
 * @param version of this program
 */
export function printTableFit(fit: TableFit, say: Speaker, version: string, detail: Detail = 'full'): string {
  const telling: Telling = { say, number: (value) => valueWords(value, 'plain', say.language) }
  const lines = [
    ...wrap(say(fit.about)),
    ...(fit.kind === 'fitted'
      ? fittedLines(telling, fit, detail)
      : [
          ...heading(telling, 'refused'),
          ...bullet(say(fit.text)),
          ...wrap(say(saying('report/cure', { cure: fit.cure })), '    ', '    '),
        ]),
    ...rowLines(telling, fit),
    ...(detail === 'full' && fit.choices.length > 0
      ? [...heading(telling, 'choices'), ...fit.choices.flatMap((own) => bullet(say(own)))]
      : []),
    ...(fit.kind === 'fitted' ? ['', ...wrap(say(saying('report/fit/receipt', { version, seed: fit.random.seed })))] : []),
  ]
  return lines.join('\n')
}
