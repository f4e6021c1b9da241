import type { Machine, versions } from './machine.ts'
import type { Measured } from './processes.ts'

export interface Results {
  readonly date: string
  readonly quick: boolean
  readonly runs: number
  readonly machine: Machine
  readonly versions: typeof versions
  readonly measured: readonly Measured[]
}

/** What must hold of a project of a million counts. */
const limits = { importRows: 100_000, firstAnswer: 2, peak: 1024 } as const
const million = 1_000_000

const seconds = (value: number): string => (value < 10 ? value.toFixed(2) : value.toFixed(1))
const whole = (value: number): string => Math.round(value).toLocaleString('en')

function workRow({ work, counts, seconds: by, peak, runs }: Measured): string {
  const times = Object.entries(by).map(([name, value]) => {
    const all = runs.map((run) => run.seconds[name] ?? Number.NaN)
    return `${name} ${seconds(value)} s (${seconds(Math.min(...all))} to ${seconds(Math.max(...all))})`
  })
  return `| ${work} | ${counts === null ? '-' : whole(counts)} | ${times.join('; ')} | ${peak === null ? '-' : `${whole(peak)} MiB`} |`
}

/** What must hold, and what was found; nothing is said of it where a million counts were not measured. */
function gates(measured: readonly Measured[]): readonly string[] {
  const of = (work: string): Measured | undefined => measured.find((own) => own.work === work && own.counts === million)
  const brought = of('import')
  const asked = of('what-differs')
  if (brought === undefined || asked === undefined) return []
  const rows = million / (brought.seconds.import ?? Number.NaN)
  const first = asked.seconds.first ?? Number.NaN
  const peaks = measured
    .filter(({ counts }) => counts === million)
    .flatMap(({ work, peak }) => (peak === null ? [] : [{ work, peak }]))
  const worst = peaks.reduce((most, own) => (own.peak > most.peak ? own : most), { work: '', peak: 0 })
  const verdict = (holds: boolean): string => (holds ? 'holds' : 'does not hold')
  return [
    '',
    '## What must hold of a million counts',
    '',
    '| must hold | found | |',
    '| --- | --- | --- |',
    `| import of at least ${whole(limits.importRows)} rows a second | ${whole(rows)} rows a second | ${verdict(rows >= limits.importRows)} |`,
    `| first answer of \`what-differs\` at most ${limits.firstAnswer} s after open | ${seconds(first)} s | ${verdict(first <= limits.firstAnswer)} |`,
    `| peak of memory at most ${whole(limits.peak)} MiB | ${whole(worst.peak)} MiB (${worst.work}) | ${verdict(worst.peak <= limits.peak)} |`,
  ]
}

export function resultsPage(results: Results): string {
  const { date, quick, runs, machine, versions, measured } = results
  return [
    '# Benchmarks',
    '',
    `Measured on ${date} with Thrum ${versions.thrum}, Node ${versions.node} (V8 ${versions.v8}, SQLite ${versions.sqlite}) on ${machine.cpu},`,
    `${machine.cores} cores, ${machine.memory} GiB, ${machine.system}. Medians of ${runs} runs, with the least and the greatest; each run in a process of its own.`,
    ...(quick ? ['', '**With `--quick`: small sizes, good for a look and not for a claim.**'] : []),
    '',
    'Every run checks its answer against the totals that were written into the sheet (number of counts, totals of each kind,',
    'rates, and the field-level ratio to nine digits); a wrong one ends the bench. Memory is the greatest resident size of the process,',
    'the program itself and Node (about 90 MiB) among it. Made again by `npm run bench` (`node bench/run.ts`; `--quick`, `--runs 5`).',
    '',
    '| work | counts | time | peak of memory |',
    '| --- | --- | --- | --- |',
    ...measured.map(workRow),
    ...gates(measured),
    '',
    '## What is measured',
    '',
    '- *import*: `thrum import sheet.csv --accept` into a new project: proposal of the mapping, reading, preview, batches, the original kept.',
    '  The sheet has 15 columns: field, plot, date, start, minutes, observer, crop, strip, stage, flowers, temperature, four kinds.',
    '- *fold*: facts read from the file, and from facts to the snapshot.',
    '- *what-differs*: `open` is the file opened and folded; `first` the answer to `--between strip` for one kind after that, its look written',
    '  down; `second` the same for another kind with the project still open.',
    '- *who-visits*: the same, for all kinds; `second` with `--window all`.',
    '- *merge*: a copy that holds a sheet more (one season, a watch a plot and day) is taken in; then *what-differs* over both.',
    "- *thrum help*, *npm start*: from the command to its end. Cold: without Node's cache of compiled code, and without the demonstration, which",
    "  `npm start` then makes; warm: with both. Node and the files are in the system's cache either way.",
    '- Projects began on the day of the bench, so that no daily backup is part of it.',
    '',
  ].join('\n')
}
