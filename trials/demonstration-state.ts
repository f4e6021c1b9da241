import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import type { Verdict } from '@thrum/model'
import { canonicalJson, sha256Hex } from '@thrum/model/ground'
import { plantedQuestions } from '../packages/host/src/demonstration/planted-questions.ts'

/** Verdict, and ratio to four digits (null where the design blocks), of one planted question. */
export type PlantedAnswer = readonly [verdict: Verdict, ratio: number | null]

/** What one seed answered, in the order of the planted questions. */
export interface SeedFound {
  readonly seed: string
  readonly answers: readonly PlantedAnswer[]
}

/** What a trial has done so far. It belongs to one set of questions: others begin anew. */
export interface TrialState {
  readonly version: 1
  /** Hash of the planted questions and of the facts of one seed. */
  readonly of: string
  readonly seeds: readonly SeedFound[]
}

/** Tells one generator and set of questions from the next, so that results of two are never mixed. */
export function stateKey(digestOfFirstSeed: string): string {
  return sha256Hex(canonicalJson([digestOfFirstSeed, plantedQuestions])).slice(0, 16)
}

/** The state a file holds, or an empty one where there is none or it is of other questions. */
export function readState(path: string, of: string): TrialState {
  if (existsSync(path)) {
    const found = JSON.parse(readFileSync(path, 'utf8')) as TrialState
    if (found.version === 1 && found.of === of) return found
  }
  return { version: 1, of, seeds: [] }
}

/** Writes beside and renames, a seed a line, so that a trial stopped at any moment can go on. */
export function writeState(path: string, state: TrialState): void {
  mkdirSync(dirname(path), { recursive: true })
  const seeds = state.seeds.map((seed) => `    ${JSON.stringify(seed)}`).join(',\n')
  const text = `{\n  "version": 1,\n  "of": ${JSON.stringify(state.of)},\n  "seeds": [\n${seeds}\n  ]\n}\n`
  writeFileSync(`${path}.part`, text)
  renameSync(`${path}.part`, path)
}
