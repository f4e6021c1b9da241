import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'

/** What one seed came to. */
export interface Trial {
  readonly seed: number
  inputs: number
  brought: number
  readonly refused: { [code: string]: number }
  readonly rows: { accepted: number; waiting: number; refused: number }
  /** Files brought whose rows were counted without the reader. */
  countedApart: number
  cells: number
  shown: number
  figures: number
  asProgram: number
  readonly failures: {
    readonly input: number
    readonly base: string
    readonly how: readonly string[]
    readonly because: string
  }[]
}

export const newTrial = (seed: number): Trial => ({
  seed,
  inputs: 0,
  brought: 0,
  refused: {},
  rows: { accepted: 0, waiting: 0, refused: 0 },
  countedApart: 0,
  cells: 0,
  shown: 0,
  figures: 0,
  asProgram: 0,
  failures: [],
})

const folder = new URL('../docs/trials/', import.meta.url)
const file = new URL('mutated-imports.json', folder)

export const keptTrials = (): Trial[] => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : [])

/** Written beside and renamed, so that a stop leaves whole numbers. */
export function keepTrials(trials: readonly Trial[]): void {
  mkdirSync(folder, { recursive: true })
  const beside = new URL('mutated-imports.json.part', folder)
  writeFileSync(beside, `${JSON.stringify(trials, null, 2)}\n`)
  renameSync(beside, file)
}
