import { saying } from '@thrum/model/ground'
import { linkOf } from './asked.ts'
import type { FitCase } from './fit-case.ts'
import type { GroupScatter, ModelFit } from './run-model.ts'
import type { ToldScatter } from './told.ts'

const round = (value: number): number => Number.parseFloat(value.toPrecision(3))

function groupTold(
  { name, levels, deviation, slope }: GroupScatter,
  isZero: boolean,
  link: ReturnType<typeof linkOf>,
): readonly ToldScatter[] {
  const own: ToldScatter = {
    label: saying('questions/fit/scatter/group', { of: name, levels }),
    value: isZero ? 0 : deviation,
    explained: isZero
      ? saying('questions/fit/scatter/zero')
      : saying('questions/fit/scatter/deviation', { link, fold: round(Math.exp(deviation)) }),
  }
  if (slope === null) return [own]
  const atZero = saying('questions/fit/scatter/deviation-at-zero', { explained: own.explained, slope: slope.name })
  const between =
    slope.correlation === null
      ? saying('questions/fit/scatter/slope-alone')
      : saying('questions/fit/scatter/slope', { correlation: round(slope.correlation) })
  return [
    { ...own, explained: isZero ? own.explained : atZero },
    {
      label: saying('questions/fit/scatter/slope-of', { slope: slope.name, of: name }),
      value: slope.deviation,
      explained: between,
    },
  ]
}

const isZero = ({ warnings }: ModelFit, { name }: GroupScatter): boolean =>
  warnings.some((warning) => warning.kind === 'zero-variance' && warning.of === name)

/** Dispersion in words: how far single counts scatter beside what the model expects. */
function dispersionTold({ asked }: FitCase, { dispersion, residualSd }: ModelFit): readonly ToldScatter[] {
  if (residualSd !== null)
    return [
      {
        label: saying('questions/fit/scatter/residual'),
        value: residualSd,
        explained: saying('questions/fit/scatter/residual-said'),
      },
    ]
  if (dispersion === null) return []
  const isNone = asked.family === 'nb1' ? dispersion < 1e-4 : dispersion > 1e4
  return [
    {
      label: saying(`questions/fit/scatter/dispersion-${asked.family}`),
      value: Number.isFinite(dispersion) ? dispersion : null,
      explained: isNone
        ? saying('questions/fit/scatter/as-chance')
        : saying(`questions/fit/scatter/said-${asked.family}`, { value: round(dispersion) }),
    },
  ]
}

/** What varies beside the coefficients: between the levels of groupings, and from count to count. */
export function scatterTold(own: FitCase, fit: ModelFit): readonly ToldScatter[] {
  return [
    ...fit.groups.flatMap((group) => groupTold(group, isZero(fit, group), linkOf(own.asked.family))),
    ...dispersionTold(own, fit),
  ]
}
