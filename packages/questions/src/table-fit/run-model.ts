import {
  type Coefficients,
  type CountModel,
  type FittedCountModel,
  type FitWarning,
  fitCountModel,
  fitLinearMixed,
  type LinearMixedModel,
  type LinearMixedWarning,
} from '@thrum/stats'
import type { FitCase } from './fit-case.ts'
import { countRefusal, type FitRefusal, measuredRefusal } from './refusal.ts'

/** How far the levels of a grouping scatter [linear predictor]. */
export interface GroupScatter {
  readonly name: string
  readonly levels: number
  readonly deviation: number
  readonly slope: { readonly name: string; readonly deviation: number; readonly correlation: number | null } | null
}

/** A fit of either sort of model. */
export interface ModelFit {
  readonly kind: 'fitted'
  readonly estimates: Coefficients
  readonly zeros: Coefficients | null
  readonly groups: readonly GroupScatter[]
  readonly dispersion: number | null
  readonly residualSd: number | null
  readonly logLikelihood: number
  readonly parameters: number
  /** Rows that were fitted. */
  readonly predictor: { readonly length: number }
  readonly warnings: readonly (FitWarning | LinearMixedWarning)[]
  /** Of counts: the model and its fit, for all that is worked out further from them; null for measured numbers. */
  readonly counts: { readonly model: CountModel; readonly fit: FittedCountModel } | null
}

export function countModelOf(own: FitCase): CountModel {
  const { asked, response, trials, design, offset, groupings, zeros } = own
  if (asked.family === 'gaussian') throw new TypeError('measured numbers are no counts')
  return {
    ...{ family: asked.family, counts: response, design: design.matrix, groupings },
    ...(trials === null ? {} : { trials }),
    ...(offset === null ? {} : { offset }),
    ...(zeros === null ? {} : { zeros: zeros.matrix }),
    ...(asked.nodes === null ? {} : { nodes: asked.nodes }),
  }
}

function runCounts(own: FitCase): ModelFit | FitRefusal {
  const model = countModelOf(own)
  const fit = fitCountModel(model)
  if (fit.kind !== 'fitted') return countRefusal(fit, own.named)
  const { zeros, dispersion, logLikelihood, parameters, predictor, warnings } = fit
  return {
    ...{ kind: 'fitted', estimates: fit, zeros, dispersion, residualSd: null, logLikelihood, parameters, predictor, warnings },
    groups: fit.groups.map(({ name, deviation, slope }, k) => ({
      ...{ name, deviation, levels: own.groupings[k]?.levels ?? 0 },
      slope: slope === null ? null : { name: slope.name, deviation: slope.deviation, correlation: slope.correlation },
    })),
    counts: { model, fit },
  }
}

/** Without groupings the standard errors are those of least squares, whichever likelihood is told. */
function runMeasured(own: FitCase, likelihood: LinearMixedModel['likelihood']): ModelFit | FitRefusal {
  const { response, design, offset, groupings } = own
  const model: LinearMixedModel = {
    ...{ likelihood, response, design: design.matrix, groupings },
    ...(offset === null ? {} : { offset }),
  }
  const fit = fitLinearMixed(model)
  if (fit.kind !== 'fitted') return measuredRefusal(fit)
  const restricted =
    groupings.length > 0 || likelihood === 'restricted' ? fit : fitLinearMixed({ ...model, likelihood: 'restricted' })
  const estimates = restricted.kind === 'fitted' ? restricted : fit
  const { logLikelihood, parameters, warnings, slope } = fit
  return {
    ...{
      kind: 'fitted',
      estimates,
      zeros: null,
      dispersion: null,
      logLikelihood,
      parameters,
      predictor: response,
      warnings,
      counts: null,
    },
    residualSd: estimates.residualSd,
    groups: groupings.map(({ name, levels, slope: asked }, k) => ({
      ...{ name, levels, deviation: fit.deviations[k] ?? 0 },
      slope:
        asked === undefined || slope === null
          ? null
          : { name: asked.name, deviation: slope.deviation, correlation: slope.correlation },
    })),
  }
}

/** @param likelihood of measured numbers: as it was asked for unless said */
export function runModel(own: FitCase, likelihood?: LinearMixedModel['likelihood']): ModelFit | FitRefusal {
  if (own.asked.family !== 'gaussian') return runCounts(own)
  return runMeasured(own, likelihood ?? (own.asked.reml ? 'restricted' : 'full'))
}
