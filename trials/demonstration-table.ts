import { verdicts } from '@thrum/model'
import { wilsonInterval } from '@thrum/stats'
import type { PlantedQuestion } from '../packages/host/src/demonstration/planted-questions.ts'
import type { TrialState } from './demonstration-state.ts'

/** How often one planted question gave its verdict. */
export interface Share {
  readonly planted: PlantedQuestion
  readonly seeds: number
  readonly as: number
  readonly share: number
  readonly low: number
  readonly high: number
  /** Other verdicts and how often. */
  readonly others: string
  /** Geometric mean of the ratios; null where the design blocks. */
  readonly ratio: number | null
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`

export function sharesOf(state: TrialState, questions: readonly PlantedQuestion[]): readonly Share[] {
  return questions.map((planted, place) => {
    const answers = state.seeds.flatMap(({ answers: own }) => own.slice(place, place + 1))
    const found = answers.map(([verdict]) => verdict)
    const as = found.filter((verdict) => verdict === planted.verdict).length
    const { lower, upper } = wilsonInterval(as, found.length)
    const others = verdicts
      .filter((verdict) => verdict !== planted.verdict && found.includes(verdict))
      .map((verdict) => `${verdict} ${found.filter((own) => own === verdict).length}`)
    const logs = answers.flatMap(([, ratio]) => (ratio === null ? [] : [Math.log(ratio)]))
    const ratio = logs.length === 0 ? null : Math.exp(logs.reduce((sum, value) => sum + value, 0) / logs.length)
    return {
      planted,
      seeds: found.length,
      as,
      share: as / found.length,
      low: lower,
      high: upper,
      others: others.join(', '),
      ratio,
    }
  })
}

/** The result as a page: what was asked, how often the planted verdict came, and what came instead. */
export function resultPage(shares: readonly Share[], least: number): string {
  const seeds = shares[0]?.seeds ?? 0
  const rows = shares.map(({ planted, as, share, low, high, others, ratio }) =>
    [
      planted.id,
      `\`${planted.verdict}\``,
      String(planted.options.worth),
      percent(planted.promised),
      `${percent(share)} (${as})`,
      `${percent(low)} to ${percent(high)}`,
      others === '' ? '-' : others,
      ratio === null ? '-' : ratio.toFixed(3),
    ].join(' | '),
  )
  return [
    '# How often the demonstration gives its planted verdicts',
    '',
    `${seeds} seeds (\`trial 1\` to \`trial ${seeds}\`). Each makes the whole valley as facts, folds them, and puts the six planted`,
    'questions to `what-differs`. The verdict counted is that of the kind the question was planted for.',
    `Every share is to be at least ${percent(least)}.`,
    '',
    '| question | planted | S | expected | share | 95 % (Wilson) | instead | mean ratio |',
    '| --- | --- | --- | --- | --- | --- | --- | --- |',
    ...rows.map((row) => `| ${row} |`),
    '',
    `Again: \`node trials/demonstration.ts --seeds ${seeds}\` goes on from \`demonstration.json\`; with \`--fresh\` it begins anew.`,
    '',
  ].join('\n')
}
