// The checks of this repository, in order; the first that fails ends the run and says how to repeat it alone.
//
//   npm test              quick: types, lint, import map, notice, docs, tests
//   npm run test:full     the same with the costly tests
//   npm run types         types alone

import { spawn } from 'node:child_process'
import { existsSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { mustFail, readSkippedReceipts, skippedSaying } from './run-checks/skipped-receipts.ts'

interface Step {
  readonly name: string
  /** of our Node, from the repository's root */
  readonly args: readonly string[]
  readonly alone: string
  /** Tests tell how far they are; other steps speak only when they fail. */
  readonly aloud?: boolean
  readonly env?: { readonly [name: string]: string }
}

const root = dirname(import.meta.dirname)
const receiptsSkipped = join(root, '.cache', 'receipts-skipped')
const modes = ['quick', 'full', 'types'] as const
type Mode = (typeof modes)[number]

const tool = (name: string, file: string): Step => ({ name, args: [file], alone: `node tools/boot.mjs ${file}` })

const types: Step = { name: 'types', args: ['node_modules/typescript/bin/tsc', '-b'], alone: 'npm run types' }
const lint: Step = {
  name: 'lint',
  args: ['node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.'],
  alone: 'npm run lint',
}

/** Steps that stand together run side by side. */
function stepsOf(mode: Mode): readonly (readonly Step[])[] {
  if (mode === 'types') return [[types]]
  const docs = existsSync(join(root, 'tools/docs-check.ts')) ? [tool('docs', 'tools/docs-check.ts')] : []
  const tests: Step = {
    name: mode === 'full' ? 'tests, the costly ones with them' : 'tests',
    args: ['node_modules/vitest/vitest.mjs', 'run'],
    alone: `${mode === 'full' ? 'THRUM_TESTS=full ' : ''}node tools/boot.mjs node_modules/vitest/vitest.mjs run`,
    aloud: true,
    env: { THRUM_TESTS: mode },
  }
  return [[types, lint], [tool('import map', 'tools/import-map.ts'), tool('notice', 'tools/notice.ts'), ...docs], [tests]]
}

interface Outcome {
  readonly step: Step
  readonly ok: boolean
  readonly output: string
  readonly seconds: number
}

/** Runs one step; ends it when we are told to end. */
function run(step: Step): Promise<Outcome> {
  const start = performance.now()
  return new Promise((done) => {
    const child = spawn(process.execPath, step.args, {
      cwd: root,
      env: { ...process.env, ...step.env },
      stdio: step.aloud ? 'inherit' : ['ignore', 'pipe', 'pipe'],
    })
    const stop = (signal: NodeJS.Signals): void => void child.kill(signal)
    process.on('SIGTERM', stop).on('SIGHUP', stop).on('SIGINT', stop)
    let output = ''
    const take = (part: Buffer): void => {
      output += part.toString()
    }
    child.stdout?.on('data', take)
    child.stderr?.on('data', take)
    child.on('close', (code) => {
      process.off('SIGTERM', stop).off('SIGHUP', stop).off('SIGINT', stop)
      done({ step, ok: code === 0, output, seconds: (performance.now() - start) / 1000 })
    })
  })
}

/** Tells how a step went; the whole of what it said only if it failed. */
function tell({ step, ok, output, seconds }: Outcome): void {
  if (!ok && output.trim() !== '') console.log(output.trimEnd())
  console.log(`${ok ? 'ok    ' : 'FAILED'}  ${step.name} (${seconds.toFixed(1)} s)`)
}

async function main(mode: Mode): Promise<number> {
  rmSync(receiptsSkipped, { force: true })
  for (const together of stepsOf(mode)) {
    const outcomes = await Promise.all(together.map(run))
    for (const outcome of [...outcomes.filter((one) => one.ok), ...outcomes.filter((one) => !one.ok)]) tell(outcome)
    const failed = outcomes.filter((one) => !one.ok)
    if (failed.length > 0) {
      console.log(`\nFAILED: ${failed.map(({ step }) => `${step.name}. Alone: ${step.alone}`).join('; ')}`)
      return 1
    }
  }
  if (mode === 'types') return 0
  const skipped = readSkippedReceipts(receiptsSkipped)
  const fails = skipped.length > 0 && mustFail(process.env)
  console.log(fails ? '\nEvery check that ran has passed, but not every check ran.' : '\nAll checks passed.')
  if (skipped.length > 0) console.log(skippedSaying(skipped, fails))
  return fails ? 1 : 0
}

const mode = modes.find((name) => name === process.argv[2])
if (mode === undefined) {
  console.error(`Say which checks: node tools/boot.mjs tools/run-checks.ts ${modes.join('|')}`)
  process.exitCode = 2
} else {
  process.exitCode = await main(mode)
}
