// How long it takes and how much memory: node bench/run.ts [--quick] [--runs 3]   Writes docs/bench/results.md and .json.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { machine, versions } from './machine.ts'
import { resultsPage } from './page.ts'
import { type Measured, measureCopies } from './processes.ts'
import { rowsOfSize, type SurveySize } from './sheet.ts'
import { measureStart } from './start-up.ts'

const { values } = parseArgs({
  options: {
    quick: { type: 'boolean', default: false },
    runs: { type: 'string', default: '3' },
    to: { type: 'string', default: join(import.meta.dirname, '..', 'docs', 'bench') },
  },
})
const runs = Number(values.runs)
if (!Number.isInteger(runs) || runs < 1) {
  process.stderr.write(`--runs is ${values.runs}; expected a whole number, at least 1\n`)
  process.exit(2)
}

/** Watches of a small project and of the largest one that is answered for; with --quick both are a tenth and less. */
const sizes: readonly SurveySize[] = values.quick
  ? [
      { fields: 40, plots: 4, seasons: 2, days: 4, slots: 1 },
      { fields: 50, plots: 8, seasons: 5, days: 10, slots: 2 },
    ]
  : [
      { fields: 50, plots: 8, seasons: 5, days: 5, slots: 1 },
      { fields: 50, plots: 8, seasons: 5, days: 50, slots: 10 },
    ]

const folder = mkdtempSync(join(tmpdir(), 'thrum-bench-'))
const tell = (text: string): void => void process.stderr.write(`${text}\n`)
try {
  // The device's name and the projects of a bench stay out of the person's own folders.
  process.env.THRUM_HOME = join(folder, 'home')
  const measured: Measured[] = [...measureStart(join(folder, 'start'), runs, tell)]
  for (const size of sizes) {
    tell(`${rowsOfSize(size)} counts in ${size.fields} fields ...`)
    measured.push(...measureCopies(join(folder, String(rowsOfSize(size))), size, runs, tell))
  }
  const results = {
    version: 1,
    date: new Date().toISOString().slice(0, 10),
    quick: values.quick,
    runs,
    machine,
    versions,
    measured,
  }
  mkdirSync(values.to, { recursive: true })
  writeFileSync(join(values.to, 'results.json'), `${JSON.stringify(results, null, 2)}\n`)
  writeFileSync(join(values.to, 'results.md'), resultsPage(results))
  tell(`Written: ${join(values.to, 'results.md')}`)
} finally {
  rmSync(folder, { recursive: true, force: true })
}
