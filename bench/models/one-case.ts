// One case in a process of its own: node bench/models/one-case.ts NUMBER   Prints what was fitted and how long it took, as JSON.
import { createRng, unwatched } from '@thrum/model/ground'
import { bootstrapCountModel, bootstrapLikelihoodRatio, type CountModel, columnOf, fitCountModel, matrixOfColumns } from '@thrum/stats'
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

const secondsOf = async (work: () => Promise<unknown>): Promise<number> => {
  const start = performance.now()
  await work()
  return (performance.now() - start) / 1000
}
const refits = (count: number, seed: string) => bootstrapCountModel(model, fit, [], count, createRng(seed), unwatched)

/** A thousand refits, after some untimed. */
async function bootstrapSeconds(): Promise<number | null> {
  if (own?.bootstrap == null) return null
  await refits(50, 'warm')
  return secondsOf(() => refits(1000, 'bench'))
}

/** A thousand surveys, each fitted with the treatment and without. */
async function powerSeconds(): Promise<number | null> {
  if (own?.power == null) return null
  const { rows: n } = model.design
  const smaller: CountModel = { ...model, design: matrixOfColumns(n, [columnOf(model.design, 0), columnOf(model.design, 2)]) }
  const without = fitCountModel(smaller)
  if (without.kind !== 'fitted' || fit.kind !== 'fitted') throw new Error(`${own.name} without treatment: ${without.kind}`)
  const both = [{ model, fit }, { model: smaller, fit: without }] as const
  return secondsOf(() => bootstrapLikelihoodRatio(...both, 1000, createRng('power'), unwatched))
}

const bootstrap = await bootstrapSeconds()
const power = await powerSeconds()
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
    power,
  }),
)
