// Does the audit block designs that cannot carry a claim, and leave sound ones alone?
//
//   node trials/tangle.ts --designs 2000            goes on with docs/trials/tangle.json, or begins with a seed of its own
//   node trials/tangle.ts --designs 2000 --seed S   begins with that seed, or goes on if it is the same
//
// Exit 0: the bounds hold; 1: they do not; 2: the command was not understood.

import { randomBytes } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { parseArgs } from 'node:util'
import { rngAlgorithm } from '@thrum/model/ground'
import { addDesign, bounds, holds, newTally, scoredOf, type Tally, tableOf, totalOf } from './tangle-tally.ts'

const root = join(import.meta.dirname, '..')
const statePath = join(root, 'docs/trials/tangle.json')
const tablePath = join(root, 'docs/trials/tangle.md')
const version = (JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { readonly version: string }).version

interface State extends Tally {
  readonly version: string
}

function writeWhole(path: string, text: string): void {
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(`${path}.part`, text)
  renameSync(`${path}.part`, path)
}

/** The run to go on with: that of the seed given, or one that is not finished; else a new one. */
function begin(designs: number, seed: string | undefined): State {
  const known = existsSync(statePath) ? (JSON.parse(readFileSync(statePath, 'utf8')) as State) : null
  const goesOn =
    known !== null && known.version === version && (seed === undefined ? scoredOf(known) < designs : known.seed === seed)
  return goesOn ? known : { version, ...newTally(seed ?? randomBytes(8).toString('hex')) }
}

function pageOf(state: State): string {
  const { aliased, sound } = totalOf(state)
  return [
    '# The trial of tangles',
    '',
    `Thrum ${state.version}; seed \`${state.seed}\` (${rngAlgorithm}); ${state.next} designs made, ${scoredOf(state)} scored.`,
    `Made again by \`node trials/tangle.ts --designs ${scoredOf(state)} --seed ${state.seed}\`. Families, spreads and scoring were fixed`,
    'before any design was put to the audit: `trials/tangle-designs.ts` and `trials/tangle-score.ts`, which share nothing with it.',
    '',
    `*aliased*: partial R² of at least 0.95 on the planted nuisance or on date with stage, with spreads above the handbook's; or levels`,
    'that do not overlap with fewer than 2 degrees of freedom left. *sound*: at most 0.5 on both. *between* and *even* (tangled, but too',
    'even to mislead) are printed and not scored. Before/after without controls is always aliased with the date, as it should be.',
    '',
    `| must hold | found | |`,
    `| --- | --- | --- |`,
    `| at least ${100 * bounds.aliasedBlocked} % of aliased designs blocked | ${aliased.blocked} of ${aliased.designs} | ${((100 * aliased.blocked) / aliased.designs).toFixed(2)} % |`,
    `| at most ${100 * bounds.soundBlocked} % of sound designs blocked | ${sound.blocked} of ${sound.designs} | ${((100 * sound.blocked) / sound.designs).toFixed(2)} % |`,
    '',
    ...tableOf(state),
    '',
    '## Scored designs on which audit and score differ',
    '',
    ...(state.misses.length === 0 ? ['None.'] : []),
    ...state.misses.map(
      ({ design, family, fields, score, because }) =>
        `- design ${design}, ${family}, ${fields} fields: ${score.verdict} (partial R² ${score.planted.toFixed(3)}; date with stage ${score.dateWithStage.toFixed(3)}); ${because.length === 0 ? 'not blocked' : `blocked by ${because.join('; ')}`}`,
    ),
    '',
  ].join('\n')
}

function run(designs: number, seed: string | undefined): number {
  const state = begin(designs, seed)
  console.log(`seed ${state.seed}, Thrum ${version}${state.next > 0 ? `, going on from design ${state.next}` : ''}`)
  while (scoredOf(state) < designs) {
    addDesign(state)
    if (state.next % 200 === 0) {
      writeWhole(statePath, `${JSON.stringify(state)}\n`)
      console.log(`${scoredOf(state)} of ${designs} scored`)
    }
  }
  writeWhole(statePath, `${JSON.stringify(state)}\n`)
  writeWhole(tablePath, pageOf(state))
  console.log(tableOf(state).join('\n'))
  console.log(holds(state) ? 'holds' : 'does not hold')
  return holds(state) ? 0 : 1
}

try {
  const { values } = parseArgs({ options: { designs: { type: 'string', default: '2000' }, seed: { type: 'string' } } })
  const designs = Number(values.designs)
  if (!Number.isInteger(designs) || designs < 1)
    throw new Error(`--designs should be a whole number above 0, but reads "${values.designs}".`)
  process.exitCode = run(designs, values.seed)
} catch (error) {
  console.error(error instanceof Error ? error.message : error)
  process.exitCode = 2
}
