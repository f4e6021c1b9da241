// Count models where searches are known to fail: node trials/strain.ts --sets 300 [--seed S] [--family NAME]
// Every set must end in a fit that holds or in a verdict by name. What was done is kept in docs/trials/strain.json; the same seed goes on
// where it stopped.
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { strainFamilies } from './strain-families.ts'
import { type StrainTally, type StrainTrial, writeStrainPage } from './strain-page.ts'
import { strainOnce } from './strain-round.ts'

const { values } = parseArgs({
  options: {
    sets: { type: 'string', default: '300' },
    seed: { type: 'string', default: 'strain-1' },
    family: { type: 'string' },
    fresh: { type: 'boolean', default: false },
  },
})
const sets = Number(values.sets)
if (!Number.isInteger(sets) || sets < 1) {
  process.stderr.write('--sets is a whole number, for example --sets 300\n')
  process.exit(2)
}
const asked = strainFamilies.filter(({ name }) => values.family === undefined || name === values.family)
if (asked.length === 0) {
  process.stderr.write(`no family ${values.family}; there are: ${strainFamilies.map(({ name }) => name).join('; ')}\n`)
  process.exit(2)
}

const folder = fileURLToPath(new URL('../docs/trials/', import.meta.url))
const path = join(folder, 'strain.json')

function readTrial(): StrainTrial {
  const kept = existsSync(path) && !values.fresh ? (JSON.parse(readFileSync(path, 'utf8')) as StrainTrial) : null
  return kept?.seed === values.seed ? kept : { seed: values.seed, families: {} }
}

function keepTrial(trial: StrainTrial): void {
  mkdirSync(folder, { recursive: true })
  writeFileSync(`${path}.new`, `${JSON.stringify(trial, null, 2)}\n`)
  renameSync(`${path}.new`, path)
}

const nothing: StrainTally = { sets: 0, verdicts: {}, wrong: [], mostOff: 0, evaluations: 0 }
let trial = readTrial()
for (const family of asked) {
  let tally = trial.families[family.name] ?? nothing
  while (tally.sets < sets) {
    const set = tally.sets + 1
    const end = strainOnce(family, `${values.seed}/${family.name}/${set}`)
    tally = {
      sets: set,
      verdicts: { ...tally.verdicts, [end.verdict]: (tally.verdicts[end.verdict] ?? 0) + 1 },
      wrong: end.wrong.length === 0 ? tally.wrong : [...tally.wrong, { set, faults: end.wrong }],
      mostOff: Math.max(tally.mostOff, end.off),
      evaluations: tally.evaluations + end.evaluations,
    }
    if (set % 50 === 0 || set === sets) keepTrial({ ...trial, families: { ...trial.families, [family.name]: tally } })
  }
  trial = { ...trial, families: { ...trial.families, [family.name]: tally } }
  const verdicts = Object.entries(tally.verdicts).map(([verdict, count]) => `${count} ${verdict}`)
  process.stdout.write(
    `${family.name}: ${tally.sets} sets: ${verdicts.join(', ')}; ${tally.wrong.length} wrong; ` +
      `at most ${tally.mostOff.toExponential(1)} from the careful sum; ${(tally.evaluations / tally.sets).toFixed(1)} evaluations\n`,
  )
}
const wrong = Object.values(trial.families).reduce((sum, tally) => sum + tally.wrong.length, 0)
process.stdout.write(`${wrong} of all ended wrong\n`)
writeStrainPage(join(folder, 'strain.md'), trial)
process.exitCode = wrong === 0 ? 0 : 1
