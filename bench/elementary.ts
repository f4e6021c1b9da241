// Own exp, log and log1p beside those of the engine: node bench/elementary.ts [--runs 15]   Prints errors, nanoseconds and ratios.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { createRng } from '@thrum/model/ground'
import { exp, log, log1p } from '../packages/stats/src/elementary.ts'
import { machine, versions } from './machine.ts'
import { median } from './median.ts'

type Elementary = (x: number) => number
/** Sum of the values of the function. */
type Loop = (xs: Float64Array) => number
interface Pair {
  readonly name: 'exp' | 'log' | 'log1p'
  readonly own: Elementary
  readonly engine: Elementary
  /** Arguments of the kind that kernels meet. */
  readonly low: number
  readonly high: number
}

const pairs: readonly Pair[] = [
  { name: 'exp', own: exp, engine: Math.exp, low: -6, high: 6 },
  { name: 'log', own: log, engine: Math.log, low: 1e-3, high: 60 },
  { name: 'log1p', own: log1p, engine: Math.log1p, low: -0.5, high: 20 },
]
const length = 1 << 16
const passes = 20

const { values } = parseArgs({ options: { runs: { type: 'string', default: '15' } } })
const runs = Number(values.runs)
if (!Number.isInteger(runs) || runs < 1) {
  process.stderr.write(`--runs is ${values.runs}; expected a whole number, at least 1\n`)
  process.exit(2)
}

const double = new Float64Array(1)
const bits = new BigUint64Array(double.buffer)
/** From a positive double to the next. */
function lastPlace(x: number): number {
  double[0] = Math.abs(x)
  bits[0] = (bits[0] as bigint) + 1n
  return (double[0] as number) - Math.abs(x)
}

/** Largest error over the oracle of the tests, in units of the last place. */
function worstOf(name: string, f: Elementary): number {
  const table = join(import.meta.dirname, '..', 'packages', 'stats', 'test', 'reference', 'elementary', `${name}.csv`)
  let worst = 0
  for (const line of readFileSync(table, 'utf8').trim().split('\n').slice(1)) {
    const [x = 0, nearest = 0, short = 0] = line.split(',').map(Number)
    const off = Math.abs((f(x) - nearest) / lastPlace(nearest) - short)
    worst = off <= worst ? worst : off
  }
  return worst
}

// A loop of its own for each: one that is handed the function would call it, and in a kernel it is inlined.
const loops: { readonly [name in Pair['name']]: { readonly own: Loop; readonly engine: Loop } } = {
  exp: {
    own: (xs) => {
      let sum = 0
      for (let i = 0; i < xs.length; i++) sum += exp(xs[i] as number)
      return sum
    },
    engine: (xs) => {
      let sum = 0
      for (let i = 0; i < xs.length; i++) sum += Math.exp(xs[i] as number)
      return sum
    },
  },
  log: {
    own: (xs) => {
      let sum = 0
      for (let i = 0; i < xs.length; i++) sum += log(xs[i] as number)
      return sum
    },
    engine: (xs) => {
      let sum = 0
      for (let i = 0; i < xs.length; i++) sum += Math.log(xs[i] as number)
      return sum
    },
  },
  log1p: {
    own: (xs) => {
      let sum = 0
      for (let i = 0; i < xs.length; i++) sum += log1p(xs[i] as number)
      return sum
    },
    engine: (xs) => {
      let sum = 0
      for (let i = 0; i < xs.length; i++) sum += Math.log1p(xs[i] as number)
      return sum
    },
  },
}

/** Nanoseconds a value, and the sum, so that no engine leaves the work undone. */
function timed(loop: Loop, xs: Float64Array): { readonly nanoseconds: number; readonly sum: number } {
  let sum = 0
  const start = performance.now()
  for (let pass = 0; pass < passes; pass++) sum += loop(xs)
  return { nanoseconds: ((performance.now() - start) * 1e6) / (passes * xs.length), sum }
}

/** On a machine that others use too, the least time is the truest. */
const least = (times: readonly number[]): number => times.reduce((most, time) => Math.min(most, time), Number.POSITIVE_INFINITY)

process.stdout.write(`Thrum ${versions.thrum}, Node ${versions.node} (V8 ${versions.v8}) on ${machine.cpu}; medians of ${runs} runs, side by side\n`)
for (const { name, own, engine, low, high } of pairs) {
  const worst = worstOf(name, own)
  if (!(worst < 1)) throw new Error(`${name} errs by ${worst} units of the last place: its time means nothing`)
  const rng = createRng(`bench ${name}`)
  const xs = Float64Array.from({ length }, () => low + (high - low) * rng.uniform())
  const ours: number[] = []
  const theirs: number[] = []
  // The first round is for the compiler.
  for (let run = -1; run < runs; run++) {
    const one = timed(loops[name].own, xs)
    const other = timed(loops[name].engine, xs)
    if (!(Math.abs(one.sum / other.sum - 1) < 1e-12)) throw new Error(`sums of ${name} differ: ${one.sum} and ${other.sum}`)
    if (run < 0) continue
    ours.push(one.nanoseconds)
    theirs.push(other.nanoseconds)
  }
  const ratio = median(ours.map((time, run) => time / (theirs[run] as number)))
  process.stdout.write(
    `${name.padEnd(6)} error ${worst.toFixed(3)} (engine ${worstOf(name, engine).toFixed(3)}) of the last place; ` +
      `${median(ours).toFixed(2)} ns, engine ${median(theirs).toFixed(2)} ns, ratio ${ratio.toFixed(2)}; ` +
      `least ${least(ours).toFixed(2)} and ${least(theirs).toFixed(2)} ns, ratio ${(least(ours) / least(theirs)).toFixed(2)}\n`,
  )
}
