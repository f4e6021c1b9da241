import { type LongWork, type Rng, saying } from '@thrum/model/ground'
import { type Check, type Covariate, checkCountModel, laplaceError } from '@thrum/stats'
import { checkSaying } from '../count-model-checks/check-sayings.ts'
import type { FitCase } from './fit-case.ts'
import type { ModelFit } from './run-model.ts'
import type { ToldCheck } from './told.ts'

/** Sets that are drawn and fitted anew: as many as a p below 0.01 on two sides asks for, so that nobody waits long. */
const refits = 249

/** The columns that the model hangs on, along which its residuals are looked at. */
const covariatesOf = ({ design }: FitCase): readonly Covariate[] =>
  Object.entries(design.of).map(
    ([name, column]): Covariate =>
      column.kind === 'number'
        ? { kind: 'numbers', name, values: column.values }
        : { kind: 'levels', name, of: column.of, levels: column.levels },
  )

function checkTold(check: Check): ToldCheck {
  const { check: subject } = check
  return {
    id: subject.kind === 'covariate' ? `covariate/${subject.name}` : subject.kind,
    verdict: check.kind === 'checked' ? check.verdict : 'not-checked',
    p: check.kind === 'checked' ? check.p : null,
    text: checkSaying(check),
  }
}

function laplaceTold({ model, fit }: NonNullable<ModelFit['counts']>): readonly ToldCheck[] {
  const error = model.nodes === undefined ? laplaceError(model, fit) : null
  if (error === null) return []
  const verdict = error.matters ? 'suspect' : 'fine'
  const [coefficients = 0, deviation = 0] = [error.coefficients, error.deviation].map((value) =>
    Number.parseFloat(value.toPrecision(2)),
  )
  return [{ id: 'laplace', verdict, p: null, text: saying('questions/fit/check/laplace', { verdict, coefficients, deviation }) }]
}

/** What the fit was held against; nothing where that was not wished. Measured numbers have no checks yet. */
export async function checksTold(own: FitCase, { counts }: ModelFit, rng: Rng, work: LongWork): Promise<readonly ToldCheck[]> {
  if (counts === null || !own.asked.isChecked) return []
  const asked = { rng: rng.fork('checks'), covariates: covariatesOf(own), refits }
  const { checks } = await checkCountModel(counts.model, counts.fit, asked, work)
  return [...checks.map(checkTold), ...laplaceTold(counts)]
}
