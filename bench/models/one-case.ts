// One case in a process of its own: node bench/models/one-case.ts NUMBER   Prints what was fitted and how long it took, as JSON.
import { createRng, unwatched } from '@thrum/model/ground'
import { bootstrapCountModel, fitCountModel } from '@thrum/stats'
import { median } from '../median.ts'
import { modelCases, modelOf, rowsOf } from './cases.ts'

const own = modelCases[Number(process.argv[2])]
if (own === undefined) throw new Error('no such case')
const model = modelOf(own, rowsOf(own))
const timed = (): readonly [ReturnType<typeof fitCountModel>, number] => {
  const start = performance.now()
  const fit = fitCountModel(model)
  return [fit, performance.now() - start]
}
const [fit, cold] = timed()
if (fit.kind !== 'fitted') throw new Error(`${own.name}: ${fit.kind}`)
const warmUps = model.counts.length > 1000 ? 10 : 60
for (let k = 0; k < warmUps; k++) timed()
const warm = median(Array.from({ length: model.counts.length > 1000 ? 15 : 101 }, () => timed()[1]))

/** A thousand refits, after a hundred untimed. */
await bootstrapCountModel(model, fit, [], 100, createRng('warm'), unwatched)
const replicates = model.counts.length > 5000 ? 100 : 1000
const start = performance.now()
const { failed } = await bootstrapCountModel(model, fit, [], replicates, createRng('bench'), unwatched)
const bootstrap = ((performance.now() - start) / replicates) * 1000
process.stdout.write(
  JSON.stringify({
    logLikelihood: fit.logLikelihood,
    coefficients: [...fit.coefficients],
    standardErrors: [...fit.standardErrors],
    deviations: fit.deviations,
    evaluations: fit.history.evaluations,
    cold,
    warm,
    bootstrap,
    failed,
  }),
)
