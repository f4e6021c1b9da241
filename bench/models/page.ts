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
const verdict = (holds: boolean, reachesAim: boolean): string => (reachesAim ? 'aim' : holds ? 'gate' : '**missed**')

function row({ case: own, warm, cold, glmmTMB, lme4, bootstrap }: ModelMeasured): string {
  const fastest = Math.min(glmmTMB, lme4 ?? Number.POSITIVE_INFINITY)
  const ratio = fastest / warm
  const ofWarm = verdict(warm <= own.warm.gate, warm <= own.warm.aim)
  const ofCold = own.cold === null ? '' : `, ${verdict(cold <= own.cold.gate, cold <= own.cold.aim)}`
  const ofRatio = verdict(ratio >= own.ratio.gate, ratio >= own.ratio.aim)
  const others = `${told(glmmTMB)} ms${lme4 === null ? '' : ` / ${told(lme4)} ms`}`
  return `| ${own.name} | ${told(warm)} ms, ${ofWarm} | ${told(cold)} ms${ofCold} | ${others} | ${Math.round(ratio)}, ${ofRatio} | ${told(bootstrap)} |`
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
    '| model | warm | cold | glmmTMB / lme4 | times as fast | 1 bootstrap refit, us |',
    '| --- | --- | --- | --- | --- | --- |',
    ...measured.map(row),
    '',
  ].join('\n')
}
