// A writer is killed at random moments; every fact that was acknowledged must still be there.
// node trials/kills.ts --kills 20 --seed S   Stop it at any time: the same command goes on where it was.
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { createRng } from '@thrum/model/ground'
import { createProjectFile } from '@thrum/store/sqlite'
import { killOnce, type Round } from './kills-round.ts'

interface State {
  readonly seed: string
  readonly rounds: readonly Round[]
}

const { values } = parseArgs({
  options: { kills: { type: 'string', default: '20' }, seed: { type: 'string', default: 'kills-1' } },
})
const stateFolder = fileURLToPath(new URL('../docs/trials/', import.meta.url))
const statePath = join(stateFolder, 'kills.json')

function readState(): State {
  const found = existsSync(statePath) ? (JSON.parse(readFileSync(statePath, 'utf8')) as State) : null
  return found?.seed === values.seed ? found : { seed: values.seed, rounds: [] }
}

function keepState(state: State): void {
  mkdirSync(stateFolder, { recursive: true })
  writeFileSync(`${statePath}.new`, `${JSON.stringify(state, null, 2)}\n`)
  renameSync(`${statePath}.new`, statePath)
}

let state = readState()
const folder = mkdtempSync(join(tmpdir(), 'thrum-kills-'))
const project = join(folder, 'kills.thrum')
await (await createProjectFile(project)).close()
const acknowledged = { facts: new Set<string>(), files: new Set<string>() }
process.stdout.write(`seed ${values.seed}: ${state.rounds.length} kills done before\n`)
while (state.rounds.length < Number(values.kills)) {
  const number = state.rounds.length + 1
  const after = createRng(`${values.seed}/kill/${number}`).below(600)
  const round = await killOnce(project, `${values.seed}/${number}`, after, acknowledged)
  state = { ...state, rounds: [...state.rounds, round] }
  keepState(state)
  process.stdout.write(
    `kill ${number} after ${after} ms: ${round.facts} facts and ${round.files} files acknowledged, ${round.lost} lost, ` +
      `${round.torn} torn, ${round.unsaid} kept without a word, file ${round.check}\n`,
  )
}
rmSync(folder, { recursive: true, force: true })

const sum = (name: 'facts' | 'files' | 'lost' | 'torn' | 'unsaid'): number =>
  state.rounds.reduce((total, round) => total + round[name], 0)
const unsound = state.rounds.filter(({ check }) => check !== 'sound').length
process.stdout.write(
  `${state.rounds.length} kills (seed ${values.seed}): ${sum('facts')} facts and ${sum('files')} files acknowledged, ` +
    `${sum('lost')} lost, ${sum('torn')} torn, ${unsound} files unsound\n`,
)
process.exitCode = sum('lost') + sum('torn') + unsound === 0 ? 0 : 1
