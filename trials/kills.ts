// A writer that also imports and backs up, and one that lifts layouts, are killed at random moments; everything that was
// acknowledged must still be there. node trials/kills.ts --kills 20 --seed S   Stop it at any time: the same command goes on.
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { createProject } from '@thrum/host'
import { createRng } from '@thrum/model/ground'
import { roundAuthor } from './kills-facts.ts'
import { killMigration, type MigrationRound } from './kills-migration.ts'
import { killOnce, nothingAcknowledged, type Round } from './kills-round.ts'

interface State {
  readonly seed: string
  readonly rounds: readonly Round[]
  readonly migrations: readonly MigrationRound[]
}

/** Every so many kills of the writer, one of a program that lifts layouts. */
const writersToAMigration = 4

const { values } = parseArgs({
  options: { kills: { type: 'string', default: '20' }, seed: { type: 'string', default: 'kills-2' } },
})
const stateFolder = fileURLToPath(new URL('../docs/trials/', import.meta.url))
const statePath = join(stateFolder, 'kills.json')

function readState(): State {
  const found = existsSync(statePath) ? (JSON.parse(readFileSync(statePath, 'utf8')) as State) : null
  return found?.seed === values.seed ? found : { seed: values.seed, rounds: [], migrations: [] }
}

function keepState(state: State): void {
  mkdirSync(stateFolder, { recursive: true })
  writeFileSync(`${statePath}.new`, `${JSON.stringify(state, null, 2)}\n`)
  renameSync(`${statePath}.new`, statePath)
}

let state = readState()
const folder = mkdtempSync(join(tmpdir(), 'thrum-kills-'))
const project = join(folder, 'kills.thrum')
await (await createProject(project, 'Kills', roundAuthor('beginning'))).close()
const acknowledged = nothingAcknowledged()
process.stdout.write(`seed ${values.seed}: ${state.rounds.length} kills done before\n`)
while (state.rounds.length < Number(values.kills)) {
  const number = state.rounds.length + 1
  const after = createRng(`${values.seed}/kill/${number}`).below(900)
  const round = await killOnce(project, `${values.seed}/${number}`, after, acknowledged)
  state = { ...state, rounds: [...state.rounds, round] }
  keepState(state)
  process.stdout.write(
    `kill ${number} after ${after} ms: ${round.facts} facts, ${round.files} files and ${round.tables} tables acknowledged, ` +
      `${round.lost} lost, ${round.torn} torn, ${round.unsaid} kept without a word, file ${round.check}, ` +
      `${round.backups} backups, ${round.unsoundBackups} unsound\n`,
  )
  if (number % writersToAMigration !== 0) continue
  const later = createRng(`${values.seed}/migration/${number}`).below(1500)
  const migration = await killMigration(project, join(folder, 'lifted'), later)
  state = { ...state, migrations: [...state.migrations, migration] }
  keepState(state)
  process.stdout.write(
    `migration killed after ${later} ms: ${migration.copies} copies, ${migration.lifted} lifted, ${migration.lost} lost, ${migration.torn} torn\n`,
  )
}
rmSync(folder, { recursive: true, force: true })

const sum = (name: 'facts' | 'files' | 'tables' | 'lost' | 'torn' | 'unsaid' | 'unsoundBackups'): number =>
  state.rounds.reduce((total, round) => total + round[name], 0)
const ofMigrations = (name: 'copies' | 'lost' | 'torn'): number =>
  state.migrations.reduce((total, round) => total + round[name], 0)
const unsound = state.rounds.filter(({ check }) => check !== 'sound').length
process.stdout.write(
  `${state.rounds.length} kills (seed ${values.seed}): ${sum('facts')} facts, ${sum('files')} files and ${sum('tables')} tables acknowledged, ` +
    `${sum('lost')} lost, ${sum('torn')} torn, ${unsound} files unsound, ${sum('unsoundBackups')} backups unsound; ` +
    `${state.migrations.length} kills amid migrations: ${ofMigrations('copies')} copies, ${ofMigrations('lost')} lost, ${ofMigrations('torn')} torn\n`,
)
const failures = sum('lost') + sum('torn') + unsound + sum('unsoundBackups') + ofMigrations('lost') + ofMigrations('torn')
process.exitCode = failures === 0 ? 0 : 1
