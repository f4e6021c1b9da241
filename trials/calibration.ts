// How often is what the product says about whole fields right? Coverage, false verdicts and the price of refusing, in many cells.
//
//   npm run trial:calibration -- --cells 800 --sets 10000            goes on with docs/trials/calibration.json
//   npm run trial:calibration -- --cells 800 --sets 10000 --seed S   the same from another seed
//
// Exit 0: every bar holds; 1: not every one; 2: bad usage.

import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { createRng } from '@thrum/model/ground'
import { type CalibrationCell, calibrationCells, keyOf } from './calibration-cells.ts'
import { resultPage } from './calibration-page.ts'
import { runCell } from './calibration-run.ts'
import { barsOf, nearOf, type ScoredCell } from './calibration-score.ts'
import { readState, stateKey, writeState } from './calibration-state.ts'

const { values } = parseArgs({
  options: {
    cells: { type: 'string', default: '800' },
    sets: { type: 'string', default: '10000' },
    seed: { type: 'string', default: 'trial' },
  },
})
const sampled = Number(values.cells)
const sets = Number(values.sets)
for (const [name, value] of [
  ['cells', sampled],
  ['sets', sets],
] as const) {
  if (Number.isInteger(value) && value >= 1) continue
  process.stderr.write(`--${name} is ${values[name]}; expected a whole number, at least 1\n`)
  process.exit(2)
}

/** Many fields take long, and their cells are told by fewer sets; never by fewer than this, unless fewer are asked. */
const fewestSets = 2000
const setsOf = ({ fields }: CalibrationCell): number =>
  Math.min(sets, Math.max(fewestSets, Math.ceil(sets * (fields >= 20 ? 0.2 : fields >= 10 ? 0.4 : 1))))
/** Cells between two savings. */
const savedEvery = 20
const folder = join(import.meta.dirname, '..', 'docs', 'trials')
const statePath = join(folder, 'calibration.json')

const cells = calibrationCells(createRng('calibration/cells'), sampled)
const before = readState(statePath, stateKey(cells), values.seed)
const done = new Map(before.cells)
const save = (): void => writeState(statePath, { ...before, cells: done })
const left = cells.filter((cell) => (done.get(keyOf(cell))?.sets ?? 0) < setsOf(cell))
left.forEach((cell, k) => {
  done.set(keyOf(cell), runCell(cell, setsOf(cell), values.seed))
  if ((k + 1) % savedEvery !== 0) return
  save()
  process.stdout.write(`${cells.length - left.length + k + 1} of ${cells.length} cells\n`)
})
save()

const scoredNow = (): readonly ScoredCell[] =>
  cells.flatMap((cell): readonly ScoredCell[] => {
    const found = done.get(keyOf(cell))
    return found === undefined ? [] : [{ cell, found }]
  })

/** A cell that falls short of a bar by no more than chance may be told by so many times as many sets. */
const closerLook = 5
const near = new Map(
  barsOf(scoredNow()).flatMap((bar) => nearOf(bar).map(({ cell }): readonly [string, CalibrationCell] => [keyOf(cell), cell])),
)
for (const [key, cell] of near) {
  const more = closerLook * setsOf(cell)
  if ((done.get(key)?.sets ?? 0) >= more) continue
  done.set(key, runCell(cell, more, values.seed))
  save()
}
if (near.size > 0) process.stdout.write(`${near.size} cells near a bar were looked at ${closerLook} times as long\n`)

const scored = scoredNow()
writeFileSync(join(folder, 'calibration.md'), resultPage(scored, { seed: values.seed, sampled, sets }))
const bars = barsOf(scored)
for (const { name, side, bar, value, clears } of bars) {
  process.stdout.write(`${clears ? 'holds ' : 'SHORT '} ${name}: ${value.toPrecision(4)}, ${side} ${bar}\n`)
}
process.exitCode = bars.every(({ clears }) => clears) ? 0 : 1
