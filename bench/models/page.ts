import type { Machine, versions } from '../machine.ts'
import type { ModelMeasured } from './run.ts'

export interface ModelResults {
  readonly date: string
  readonly rounds: number
  readonly machine: Machine
  readonly versions: typeof versions
  readonly measured: readonly ModelMeasured[]
}

const told = (value: number): string => value.toPrecision(3)
const reached = (value: number, { gate, aim }: { readonly gate: number; readonly aim: number }): string =>
  value <= aim ? 'aim' : value <= gate ? 'gate' : '**missed**'
const reachedRatio = (value: number, { gate, aim }: ModelMeasured['case']['ratio']): string =>
  value >= aim ? 'aim' : gate === null ? 'below aim' : value >= gate ? 'gate' : '**missed**'

function row({ case: own, warm, cold, glmmTMB, lme4, bootstrap, power }: ModelMeasured): string {
  const ratio = Math.min(glmmTMB, lme4 ?? Number.POSITIVE_INFINITY) / warm
  const cells = [
    own.name,
    `${told(warm)} ms, ${reached(warm, own.warm)}`,
    `${told(cold)} ms${own.cold === null ? '' : `, ${reached(cold, own.cold)}`}`,
    `${told(glmmTMB)} ms${lme4 === null ? '' : ` / ${told(lme4)} ms`}`,
    `${Math.round(ratio)}, ${reachedRatio(ratio, own.ratio)}`,
    bootstrap === null || own.bootstrap === null ? '-' : `${told(bootstrap)} s, ${reached(bootstrap, own.bootstrap)}`,
    power === null || own.power === null ? '-' : `${told(power)} s, ${reached(power, own.power)}`,
  ]
  return `| ${cells.join(' | ')} |`
}

export function modelsPage({ date, rounds, machine, versions, measured }: ModelResults): string {
  const worst = (of: (apart: ModelMeasured['apart']) => number): string =>
    measured.reduce((most, { apart }) => Math.max(most, of(apart)), 0).toExponential(1)
  return [
    '# Count models side by side with R',
    '',
    `Made by \`npm run bench:models\` on ${date}: ${machine.cpu}, ${machine.cores} cores, ${machine.system}; Thrum ${versions.thrum}, Node ${versions.node}, R with glmmTMB and lme4 of Debian.`,
    `Medians of ${rounds} rounds, ours and R's in turn, each round in a process of its own. *Cold* is the first fit of a process, *warm* the`,
    'median of later ones; R is timed after a first fit. The ratio is to the faster of the two ways in R.',
    '',
    `Both say the same before a time is taken: log likelihoods at most ${worst(({ logLikelihood }) => logLikelihood)} apart, coefficients ${worst(({ coefficient }) => coefficient)}, standard`,
    `errors ${worst(({ standardError }) => standardError)} of themselves.`,
    '',
    '| model | warm | cold | glmmTMB / lme4 | times as fast | 1,000 refits | 1,000 surveys, 2 fits each |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...measured.map(row),
    '',
  ].join('\n')
}
