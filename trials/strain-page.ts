import { writeFileSync } from 'node:fs'
import { version } from '@thrum/host'

/** What was found of one family. */
export interface StrainTally {
  readonly sets: number
  readonly verdicts: { readonly [verdict: string]: number }
  readonly wrong: readonly { readonly set: number; readonly faults: readonly string[] }[]
  /** Farthest from the careful sum. */
  readonly mostOff: number
  readonly evaluations: number
}
export interface StrainTrial {
  readonly seed: string
  readonly families: { readonly [family: string]: StrainTally }
}

const verdictsTold = (verdicts: StrainTally['verdicts']): string =>
  Object.entries(verdicts)
    .map(([verdict, count]) => `${count} ${verdict}`)
    .join(', ')

/** The trial as a page for readers. */
export function writeStrainPage(path: string, { seed, families }: StrainTrial): void {
  const all = Object.entries(families)
  const wrong = all.reduce((sum, [, { wrong: own }]) => sum + own.length, 0)
  const sets = all.reduce((sum, [, own]) => sum + own.sets, 0)
  const lines = [
    '# The trial of strained count models',
    '',
    `Thrum ${version}. Made again, and gone on with, by \`npm run trial:strain -- --sets N --seed S\`. A fixed share of it is among the full`,
    'tests.',
    '',
    'Counts of fields on dates are drawn where searches of this kind are known to fail, and fitted. Each set must end in a fit that holds,',
    'or in a verdict by name. A fit holds when its numbers are finite, when a sum worked out apart from the package (densities from their',
    'definitions, dense matrices, sums that carry their rounding) gives the same log likelihood at the same parameters, and when',
    'searches from three other places reach nothing better by more than 1e-4.',
    '',
    `${wrong} of ${sets} sets ended wrong (seed ${seed}).`,
    '',
    '| family | sets | ended in | wrong | farthest from the careful sum | evaluations |',
    '| --- | --- | --- | --- | --- | --- |',
    ...all.map(
      ([name, { sets: own, verdicts, wrong: faults, mostOff, evaluations }]) =>
        `| ${name} | ${own} | ${verdictsTold(verdicts)} | ${faults.length} | ${mostOff.toExponential(1)} | ${(evaluations / own).toFixed(1)} |`,
    ),
    '',
  ]
  writeFileSync(path, lines.join('\n'))
}
