import { spawnSync } from 'node:child_process'
import { mkdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { median } from './median.ts'
import { type Planted, type SurveySize, writeSheet } from './sheet.ts'
import type { Timed, WorkGiven, WorkName } from './works.ts'

/** What was measured of one work: every run, and the median of them. */
export interface Measured {
  readonly work: string
  /** Counts in the project; null where none is meant. */
  readonly counts: number | null
  /** Medians, in seconds, by what was timed. */
  readonly seconds: Timed
  /** Median of the peaks of memory [MiB]; null where it was not measured. */
  readonly peak: number | null
  readonly runs: readonly { readonly seconds: Timed; readonly peak: number | null }[]
}

export function measuredOf(work: string, counts: number | null, runs: Measured['runs']): Measured {
  const peaks = runs.flatMap(({ peak }) => peak ?? [])
  const names = Object.keys(runs[0]?.seconds ?? {})
  return {
    work,
    counts,
    seconds: Object.fromEntries(names.map((name) => [name, median(runs.map(({ seconds }) => seconds[name] ?? Number.NaN))])),
    peak: peaks.length === 0 ? null : median(peaks),
    runs,
  }
}

/** One work in a process of its own, with nothing of an earlier one in its memory. */
function runOnce(name: WorkName, given: string): Measured['runs'][number] {
  const program = join(import.meta.dirname, 'one-work.ts')
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, name, given], { encoding: 'utf8' })
  if (status !== 0) throw new Error(`${name} did not end well, so nothing is written:\n${stderr}`)
  return JSON.parse(stdout) as Measured['runs'][number]
}

/** A sheet and a project of one size: import, fold, both questions, and a merge with a copy that holds one sheet more. */
export function measureCopies(folder: string, size: SurveySize, runs: number, tell: (text: string) => void): readonly Measured[] {
  mkdirSync(folder, { recursive: true })
  const at = (name: string): string => join(folder, name)
  const prepare = (name: string, planted: Planted, other?: WorkGiven['other']): WorkGiven => {
    const given = { sheet: at(`${name}.csv`), project: at(`${name}.thrum`), planted, ...(other === undefined ? {} : { other }) }
    writeFileSync(at(`${name}.json`), JSON.stringify(given))
    return given
  }
  const several = (work: WorkName, counts: number, given: string): Measured => {
    const found = measuredOf(
      work,
      counts,
      Array.from({ length: runs }, () => runOnce(work, given)),
    )
    tell(
      `  ${work}: ${Object.entries(found.seconds)
        .map(([name, value]) => `${name} ${value.toFixed(2)} s`)
        .join(', ')}`,
    )
    return found
  }
  const planted = writeSheet(at('survey.csv'), size, 'bench/survey')
  const { project } = prepare('survey', planted)
  const found = (['import', 'fold', 'what-differs', 'who-visits'] as const).map((work) =>
    several(work, planted.rows, at('survey.json')),
  )
  // The other copy holds what a season more brings: as many fields, a watch a plot and day.
  const more = writeSheet(at('more.csv'), { ...size, seasons: 1, slots: 1 }, 'bench/more', 2040)
  const other = { project: at('more.thrum'), planted: more }
  writeFileSync(at('copy.json'), JSON.stringify({ sheet: at('more.csv'), project, planted: more, other }))
  runOnce('other-copy', at('copy.json'))
  prepare('survey', planted, other)
  const merged = several('merge', planted.rows, at('survey.json'))
  tell(`  project file: ${Math.round(statSync(project).size / 2 ** 20)} MiB, sheet: ${Math.round(planted.bytes / 2 ** 20)} MiB`)
  rmSync(folder, { recursive: true, force: true })
  return [...found, merged]
}
