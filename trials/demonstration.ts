// How often seeds of the demonstration give its planted verdicts: node trials/demonstration.ts --seeds 200 [--fresh]
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { createLogicalClock, foldFacts, type Snapshot } from '@thrum/model'
import { demonstrationFacts } from '../packages/host/src/demonstration/demonstration-facts.ts'
import { plantedQuestions } from '../packages/host/src/demonstration/planted-questions.ts'
import { answerPlanted } from './demonstration-answers.ts'
import { type PlantedAnswer, readState, type SeedFound, stateKey, writeState } from './demonstration-state.ts'
import { resultPage, sharesOf } from './demonstration-table.ts'

const { values } = parseArgs({
  options: { seeds: { type: 'string', default: '200' }, fresh: { type: 'boolean', default: false } },
})
const wanted = Number(values.seeds)
if (!Number.isInteger(wanted) || wanted < 1) {
  process.stderr.write(`--seeds is ${values.seeds}; expected a whole number, at least 1\n`)
  process.exit(2)
}

/** Least share of seeds that must give the planted verdict. */
const least = 0.95
/** Seeds between two savings. */
const savedEvery = 20
const folder = join(import.meta.dirname, '..', 'docs', 'trials')
const statePath = join(folder, 'demonstration.json')

const seedName = (number: number): string => `trial ${number}`

/** The valley of a seed, written on a clock that stands in the year before the first counts. */
function projectOf(seed: string): Snapshot {
  const stopped = { now: () => Date.UTC(2030, 0, 15), monotonic: () => 0, zone: () => 'UTC' }
  const author = { by: 'trial', device: 'trial', clock: createLogicalClock(stopped, 'trial') }
  return foldFacts(demonstrationFacts({ seed, author }))
}

async function answerSeed(seed: string): Promise<SeedFound> {
  const snapshot = projectOf(seed)
  const answers: PlantedAnswer[] = []
  for (const planted of plantedQuestions) {
    const { verdict, ratio } = await answerPlanted(snapshot, planted)
    answers.push([verdict, ratio === null ? null : Number(ratio.toPrecision(4))])
  }
  return { seed, answers }
}

const of = stateKey(projectOf(seedName(1)).digest)
const before = values.fresh ? { version: 1 as const, of, seeds: [] } : readState(statePath, of)
const seeds = [...before.seeds]
for (let number = seeds.length + 1; number <= wanted; number++) {
  seeds.push(await answerSeed(seedName(number)))
  if (number % savedEvery === 0) writeState(statePath, { version: 1, of, seeds })
}
writeState(statePath, { version: 1, of, seeds })

const shares = sharesOf({ version: 1, of, seeds }, plantedQuestions)
writeFileSync(join(folder, 'demonstration.md'), resultPage(shares, least))
for (const { planted, share, others } of shares) {
  process.stdout.write(`${planted.id}: ${planted.verdict} ${(100 * share).toFixed(1)} %${others === '' ? '' : ` (${others})`}\n`)
}
const short = shares.filter(({ share }) => share < least)
process.stdout.write(
  `${wanted} seeds; ${short.length === 0 ? 'every share is' : 'not every share is'} at least ${100 * least} %\n`,
)
process.exitCode = short.length === 0 ? 0 : 1
