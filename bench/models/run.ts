// Count models side by side with R: node bench/models/run.ts [--rounds 5]   Needs R with glmmTMB and lme4.
// Writes docs/bench/models.json and models.md. Agreement is checked before a time is written down.
import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { machine, versions } from '../machine.ts'
import { median } from '../median.ts'
import { type ModelCase, modelCases, rowsOf } from './cases.ts'
import { modelsPage } from './page.ts'

const { values } = parseArgs({
  options: {
    rounds: { type: 'string', default: '5' },
    to: { type: 'string', default: join(import.meta.dirname, '..', '..', 'docs', 'bench') },
  },
})
const rounds = Number(values.rounds)
if (!Number.isInteger(rounds) || rounds < 1) {
  process.stderr.write(`--rounds is ${values.rounds}; expected a whole number, at least 1\n`)
  process.exit(2)
}

interface Ours {
  readonly logLikelihood: number
  readonly coefficients: readonly number[]
  readonly standardErrors: readonly number[]
  readonly deviations: readonly number[]
  readonly cold: number
  readonly warm: number
  readonly bootstrap: number | null
  readonly power: number | null
}
interface Theirs {
  readonly logLikelihood: readonly [number]
  readonly coefficients: readonly number[]
  readonly standardErrors: readonly number[]
  readonly deviations: readonly number[]
  readonly glmmTMB: readonly number[]
  readonly lme4?: readonly number[]
}

/** Medians over the rounds (fits [ms], bootstrap and power [s]), and how far the two agree. */
export interface ModelMeasured {
  readonly case: ModelCase
  readonly rows: number
  readonly warm: number
  readonly cold: number
  readonly bootstrap: number | null
  readonly power: number | null
  readonly glmmTMB: number
  readonly lme4: number | null
  readonly apart: { readonly logLikelihood: number; readonly coefficient: number; readonly standardError: number }
}

function run<T>(command: string, args: readonly string[]): T {
  const { status, stdout, stderr } = spawnSync(command, args, { encoding: 'utf8' })
  if (status !== 0) throw new Error(`${command} did not end well, so nothing is written:\n${stderr}`)
  return JSON.parse(stdout) as T
}

const medianOf = (values: readonly (number | null)[]): number | null => {
  const own = values.filter((value) => value !== null)
  return own.length === 0 ? null : median(own)
}
const largest = (values: readonly number[]): number => values.reduce((most, value) => Math.max(most, value), 0)

/** @throws Error where the two do not say the same */
function agreement(name: string, ours: Ours, theirs: Theirs): ModelMeasured['apart'] {
  const apart = {
    logLikelihood: Math.abs(ours.logLikelihood - theirs.logLikelihood[0]),
    coefficient: largest(ours.coefficients.map((value, j) => Math.abs(value - (theirs.coefficients[j] ?? Number.NaN)))),
    standardError: largest(ours.standardErrors.map((value, j) => Math.abs(value / (theirs.standardErrors[j] ?? Number.NaN) - 1))),
  }
  if (!(apart.logLikelihood < 1e-5 && apart.coefficient < 1e-4 && apart.standardError < 5e-3))
    throw new Error(`${name}: R says otherwise, so nothing is written: ${JSON.stringify(apart)}`)
  return apart
}

function measure(own: ModelCase, place: number, folder: string): ModelMeasured {
  const rows = rowsOf(own)
  const table = join(folder, `case-${place}.csv`)
  const lines = rows.map(({ count, effort, treated, day, field, date }) => [count, effort, treated, day, field, date].join(','))
  writeFileSync(table, `count,effort,treated,day,field,date\n${lines.join('\n')}\n`)
  const ours: Ours[] = []
  const theirs: Theirs[] = []
  for (let round = 0; round < rounds; round++) {
    ours.push(run<Ours>(process.execPath, [join(import.meta.dirname, 'one-case.ts'), String(place)]))
    const crossed = own.isCrossed ? 'crossed' : 'single'
    theirs.push(run<Theirs>('Rscript', ['--vanilla', join(import.meta.dirname, 'reference.R'), table, own.family, crossed, '1']))
  }
  const apart = agreement(own.name, ours[0] as Ours, theirs[0] as Theirs)
  const lme4 = theirs.flatMap(({ lme4: seconds }) => seconds ?? [])
  return {
    case: own,
    rows: rows.length,
    warm: median(ours.map(({ warm }) => warm)),
    cold: median(ours.map(({ cold }) => cold)),
    bootstrap: medianOf(ours.map(({ bootstrap }) => bootstrap)),
    power: medianOf(ours.map(({ power }) => power)),
    glmmTMB: 1000 * median(theirs.flatMap(({ glmmTMB }) => glmmTMB)),
    lme4: lme4.length === 0 ? null : 1000 * median(lme4),
    apart,
  }
}

const folder = mkdtempSync(join(tmpdir(), 'thrum-models-'))
try {
  const measured: ModelMeasured[] = []
  for (const [place, own] of modelCases.entries()) {
    const found = measure(own, place, folder)
    measured.push(found)
    process.stderr.write(
      `${own.name}: warm ${found.warm.toFixed(2)} ms, cold ${found.cold.toFixed(1)} ms; glmmTMB ${found.glmmTMB.toFixed(0)} ms` +
        `${found.lme4 === null ? '' : `, lme4 ${found.lme4.toFixed(0)} ms`}\n`,
    )
  }
  const results = { version: 1, date: new Date().toISOString().slice(0, 10), rounds, machine, versions, measured }
  mkdirSync(values.to, { recursive: true })
  writeFileSync(join(values.to, 'models.json'), `${JSON.stringify(results, null, 2)}\n`)
  writeFileSync(join(values.to, 'models.md'), modelsPage(results))
} finally {
  rmSync(folder, { recursive: true, force: true })
}
