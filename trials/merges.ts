// Random histories of three copies, merged in every order: node trials/merges.ts --histories 100 [--steps 40] [--seed S]
// What was done is kept in docs/trials/merges.json; the same seed and steps go on where they stopped.
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { mergeInEveryOrder, type Outcome } from './merges-round.ts'

interface Trial {
  readonly seed: string
  readonly steps: number
  readonly histories: number
  readonly facts: number
  readonly added: number
  readonly replaced: number
  readonly heldBack: number
  readonly differing: readonly { readonly history: number; readonly in: readonly string[] }[]
}

const { values } = parseArgs({
  options: {
    histories: { type: 'string', default: '100' },
    steps: { type: 'string', default: '40' },
    seed: { type: 'string', default: 'merges-2' },
  },
})
const asked = { histories: Number(values.histories), steps: Number(values.steps) }
if (!Object.values(asked).every((number) => Number.isInteger(number) && number >= 1)) {
  process.stderr.write('--histories and --steps are whole numbers, for example --histories 100 --steps 40\n')
  process.exit(2)
}

const stateFolder = fileURLToPath(new URL('../docs/trials/', import.meta.url))
const statePath = join(stateFolder, 'merges.json')

function readTrial(): Trial {
  const kept = existsSync(statePath) ? (JSON.parse(readFileSync(statePath, 'utf8')) as Trial) : null
  if (kept?.seed === values.seed && kept.steps === asked.steps) return kept
  return { seed: values.seed, steps: asked.steps, histories: 0, facts: 0, added: 0, replaced: 0, heldBack: 0, differing: [] }
}

function keepTrial(trial: Trial): void {
  mkdirSync(stateFolder, { recursive: true })
  writeFileSync(`${statePath}.new`, `${JSON.stringify(trial, null, 2)}\n`)
  renameSync(`${statePath}.new`, statePath)
}

function withOutcome(trial: Trial, history: number, outcome: Outcome): Trial {
  return {
    ...trial,
    histories: history,
    facts: trial.facts + outcome.facts,
    added: trial.added + outcome.added,
    replaced: trial.replaced + outcome.replaced,
    heldBack: trial.heldBack + outcome.heldBack,
    differing: outcome.differences.length === 0 ? trial.differing : [...trial.differing, { history, in: outcome.differences }],
  }
}

let trial = readTrial()
process.stdout.write(`seed ${values.seed}: ${trial.histories} histories done before\n`)
while (trial.histories < asked.histories) {
  const history = trial.histories + 1
  const folder = mkdtempSync(join(tmpdir(), 'thrum-merges-'))
  const outcome = await mergeInEveryOrder(folder, `${values.seed}/${history}`, asked.steps)
  rmSync(folder, { recursive: true, force: true })
  trial = withOutcome(trial, history, outcome)
  if (outcome.differences.length > 0) {
    process.stdout.write(`history ${history}: copies differ in ${outcome.differences.join(', ')}\n`)
  }
  if (history % 10 === 0 || history === asked.histories) keepTrial(trial)
}
process.stdout.write(
  `${trial.histories} histories of ${trial.steps} steps at three copies, each merged in six orders (seed ${trial.seed}): ` +
    `${trial.differing.length} where copies differ; ${trial.facts} shared facts, ${trial.added} taken, ` +
    `${trial.replaced} copies replaced, ${trial.heldBack} held back\n`,
)
process.exitCode = trial.differing.length === 0 ? 0 : 1
