// Reads mutated sheets and counts what becomes of them: trials/mutated-sheets.ts --inputs 500 --seed 1
// What was done is kept in docs/trials/mutated-sheets.json; the same seed goes on where it stopped.
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { baseSheets, tryInput } from '../packages/exchange/test/mutated/bases.ts'

interface Trial {
  seed: number
  inputs: number
  read: number
  refused: { [code: string]: number }
  rows: { accepted: number; waiting: number; refused: number }
  countCellsPrintedBack: number
  failures: { input: number; base: string; how: readonly string[]; because: string }[]
}

const { values } = parseArgs({ options: { inputs: { type: 'string', default: '500' }, seed: { type: 'string', default: '1' } } })
const asked = Number(values.inputs)
const seed = Number(values.seed)
if (!Number.isInteger(asked) || asked < 1 || !Number.isInteger(seed)) {
  console.error('--inputs and --seed are whole numbers, for example --inputs 500 --seed 1')
  process.exit(2)
}

const folder = new URL('../docs/trials/', import.meta.url)
const file = new URL('mutated-sheets.json', folder)

const kept: Trial[] = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : []
const begun = kept.find((trial) => trial.seed === seed)
const trial: Trial = begun ?? {
  seed,
  inputs: 0,
  read: 0,
  refused: {},
  rows: { accepted: 0, waiting: 0, refused: 0 },
  countCellsPrintedBack: 0,
  failures: [],
}
if (begun === undefined) kept.push(trial)

/** Written beside and renamed, so that a stop leaves whole numbers. */
function keep(): void {
  mkdirSync(folder, { recursive: true })
  const beside = new URL('mutated-sheets.json.part', folder)
  writeFileSync(beside, `${JSON.stringify(kept, null, 2)}\n`)
  renameSync(beside, file)
}

const bases = baseSheets()
for (let number = trial.inputs; number < asked; number++) {
  const { base, how, outcome } = await tryInput(bases, seed, number)
  trial.inputs = number + 1
  if (outcome.kind === 'failed') trial.failures.push({ input: number, base, how, because: outcome.because })
  else if (outcome.kind === 'refused') trial.refused[outcome.code] = (trial.refused[outcome.code] ?? 0) + 1
  else {
    trial.read++
    trial.rows.accepted += outcome.accepted
    trial.rows.waiting += outcome.waiting
    trial.rows.refused += outcome.refused
    trial.countCellsPrintedBack += outcome.cells
  }
  if (trial.inputs % 50 === 0) keep()
}
keep()

const refused = Object.values(trial.refused).reduce((sum, times) => sum + times, 0)
console.log(
  `seed ${seed}: ${trial.inputs} mutated sheets, ${trial.read} read, ${refused} refused as a whole, ${trial.failures.length} failed`,
)
console.log(`rows: ${trial.rows.accepted} accepted, ${trial.rows.waiting} waiting, ${trial.rows.refused} set aside`)
console.log(`count cells printed back: ${trial.countCellsPrintedBack}`)
for (const [code, times] of Object.entries(trial.refused).sort((a, b) => b[1] - a[1])) console.log(`  ${code}: ${times}`)
for (const { input, base, how, because } of trial.failures)
  console.log(`FAILED input ${input}, ${base}, ${how.join(', ')}: ${because}`)
process.exitCode = trial.failures.length === 0 ? 0 : 1
