// Takes mutated files the whole way through the program: offered, accepted, opened anew, checked, asked of, drawn.
//
//   npm run trial:mutated-imports -- --inputs 10000 --seed 1     goes on where the same seed stopped
//
// What was done is kept in docs/trials/mutated-imports.json, and told in docs/trials/mutated-imports.md.
// Exit 0: every input held; 1: some did not.

import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { importBases, mutatedInput } from '../packages/cli/test/mutated/mutated-input.ts'
import { type Outcome, tryImport } from '../packages/cli/test/mutated/try-import.ts'
import { writePage } from './mutated-imports-page.ts'
import { keepTrials, keptTrials, newTrial, type Trial } from './mutated-imports-state.ts'

/** One input in so many is also run as a program of its own; one in so many is drawn. */
const programEvery = 100
const figureEvery = 5

const { values } = parseArgs({
  options: { inputs: { type: 'string', default: '10000' }, seed: { type: 'string', default: '1' } },
})
const asked = Number(values.inputs)
const seed = Number(values.seed)
if (!Number.isInteger(asked) || asked < 1 || !Number.isInteger(seed)) {
  console.error('--inputs and --seed are whole numbers, for example --inputs 500 --seed 1')
  process.exit(2)
}

function note(trial: Trial, outcome: Outcome, isProgram: boolean): void {
  trial.inputs++
  if (isProgram) trial.asProgram++
  if (outcome.kind === 'refused') trial.refused[outcome.code] = (trial.refused[outcome.code] ?? 0) + 1
  if (outcome.kind !== 'brought') return
  trial.brought++
  trial.rows.accepted += outcome.rows.accepted
  trial.rows.waiting += outcome.rows.waiting
  trial.rows.refused += outcome.rows.refused
  if (outcome.countedApart) trial.countedApart++
  trial.cells += outcome.cells
  trial.shown += outcome.shown
  trial.figures += outcome.figures
}

const kept = keptTrials()
const begun = kept.find((own) => own.seed === seed)
const trial = begun ?? newTrial(seed)
if (begun === undefined) kept.push(trial)

/** A promise that nobody waited for fails after its command: it belongs to the input in hand. */
let unhandled: unknown = null
process.on('unhandledRejection', (reason) => {
  unhandled = reason
})

async function outcomeOf(...of: Parameters<typeof tryImport>): Promise<Outcome> {
  try {
    const outcome = await tryImport(...of)
    await new Promise((resolve) => setImmediate(resolve))
    if (unhandled === null) return outcome
    return { kind: 'failed', because: `unhandled: ${String(unhandled)}` }
  } catch (error) {
    return { kind: 'failed', because: `crash: ${error instanceof Error ? error.message : String(error)}` }
  } finally {
    unhandled = null
  }
}

const bases = importBases()
const folder = mkdtempSync(join(tmpdir(), 'thrum-mutated-'))
try {
  while (trial.inputs < asked) {
    const number = trial.inputs
    const input = mutatedInput(bases, seed, number)
    const steps = { program: number % programEvery === 0, figure: number % figureEvery === 0 }
    const outcome = await outcomeOf(input, join(folder, 'in'), steps)
    note(trial, outcome, steps.program)
    if (outcome.kind === 'failed') {
      const { base, how } = input
      const because = outcome.because.replaceAll(folder, '').slice(0, 400)
      trial.failures.push({ input: number, base, how, because })
      console.log(`FAILED input ${number}, ${base}, ${how.join(', ')}: ${because}`)
    }
    if (trial.inputs % 100 === 0) keepTrials(kept)
  }
} finally {
  rmSync(folder, { recursive: true, force: true })
}
keepTrials(kept)
writePage(kept)

const refused = Object.values(trial.refused).reduce((sum, times) => sum + times, 0)
console.log(
  `seed ${seed}: ${trial.inputs} mutated files, ${trial.brought} brought, ${refused} refused as a whole, ${trial.failures.length} failed`,
)
console.log(`rows: ${trial.rows.accepted} accepted, ${trial.rows.waiting} waiting, ${trial.rows.refused} set aside`)
console.log(`cells printed back: ${trial.cells}, of which ${trial.shown} carry a reading that was shown`)
process.exitCode = trial.failures.length === 0 ? 0 : 1
