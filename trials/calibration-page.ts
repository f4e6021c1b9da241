import { smallestTotal } from './calibration-cells.ts'
import { type Bar, barsOf, type JudgedCell, medianOf, type ScoredCell, shortOf } from './calibration-score.ts'

const worstShown = 8

const percent = (value: number): string => `${(100 * value).toFixed(1)} %`
const number = (value: number): string => value.toLocaleString('en', { maximumSignificantDigits: 3 })

/** How many cells fall short, and how many of these may do so by chance. */
function shortSaid(bar: Bar): string {
  if (bar.cells.length === 0) return ''
  const { short, near } = shortOf(bar)
  return short.length === 0 ? '0' : `${short.length} (${near} within 2 Monte Carlo SE)`
}

function valueSaid({ name, side, bar, value }: Bar): readonly [asked: string, found: string] {
  const said = name.includes('width') ? number : percent
  return [`${side === 'at-least' ? 'at least' : 'at most'} ${said(bar)}`, said(value)]
}

function cellRow({ cell, found, value, error }: JudgedCell, bar: Bar): string {
  const said = bar.name.includes('width') ? number : percent
  const ratio = cell.ratio < 1 ? '1/3' : number(cell.ratio)
  const theta = Number.isFinite(cell.theta) ? number(cell.theta) : '∞'
  const what = [
    cell.layout,
    `${cell.fields} × ${cell.visits}`,
    number(cell.mean),
    number(smallestTotal(cell)),
    theta,
    `${cell.fieldSd}, ${cell.periodSd}, ${cell.visitSd}`,
    ratio,
    cell.effort,
    cell.zeroChance === 0 ? '–' : String(cell.zeroChance),
    percent(found.answered / found.sets),
    found.bias.toFixed(3),
  ]
  return `| ${said(value)}${error === 0 ? '' : ` ± ${(100 * error).toFixed(1)}`} | ${what.join(' | ')} |`
}

function worstOf(bar: Bar): readonly string[] {
  if (bar.cells.length === 0) return []
  return [
    '',
    `### ${bar.name}`,
    '',
    '| value | layout | fields × visits | mean | total | theta | SD: field, period, visit | ratio | effort | zeros | answered | bias, log |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...bar.cells.slice(0, worstShown).map((cell) => cellRow(cell, bar)),
  ]
}

/** The part of the cells that a condition picks out: whether trouble follows it. */
function groupRow(name: string, cells: readonly ScoredCell[]): string {
  const covered = cells.map(({ found }) => found.covered / found.answered)
  const short = covered.filter((value) => value < 0.93).length
  return `| ${name} | ${cells.length} | ${percent(medianOf(covered))} | ${percent(Math.min(...covered))} | ${short} |`
}

const groups: readonly (readonly [name: string, holds: (cell: ScoredCell['cell']) => boolean])[] = [
  ['all', () => true],
  ['3 or 4 fields an arm', ({ fields }) => fields <= 4],
  ['6 or 10', ({ fields }) => fields === 6 || fields === 10],
  ['20', ({ fields }) => fields === 20],
  ['even effort', ({ effort }) => effort === 'even'],
  ['one level five times as long', ({ effort }) => effort === 'first' || effort === 'second'],
  ['every second field five times as long', ({ effort }) => effort === 'mixed'],
  ['ratio 1', ({ ratio }) => ratio === 1],
  ['theta 0.5', ({ theta }) => theta === 0.5],
  ['theta 2 or more', ({ theta }) => theta >= 2],
  ['zero inflation', ({ zeroChance }) => zeroChance > 0],
  ['total 5 to 10', (cell) => smallestTotal(cell) >= 5 && smallestTotal(cell) < 10],
  ['total 10 to 20', (cell) => smallestTotal(cell) >= 10 && smallestTotal(cell) < 20],
  ['total 20 or more', (cell) => smallestTotal(cell) >= 20],
]

export interface PageHead {
  readonly seed: string
  readonly sampled: number
  readonly sets: number
}

function setsSaid(all: readonly ScoredCell[]): string {
  const sets = all.map(({ found }) => found.sets)
  const [least, most] = [Math.min(...sets), Math.max(...sets)]
  const told = (value: number): string => value.toLocaleString('en')
  return least === most ? told(least) : `${told(least)} to ${told(most)}`
}

function thinnedShare(all: readonly ScoredCell[]): number {
  const sum = (of: (cell: ScoredCell) => number): number => all.reduce((total, cell) => total + of(cell), 0)
  return sum(({ found }) => found.thinned) / sum(({ found }) => found.answered)
}

/** The trial as a page for readers. */
export function resultPage(all: readonly ScoredCell[], { seed, sampled, sets }: PageHead): string {
  const bars = barsOf(all)
  const enough = all.filter(({ cell }) => smallestTotal(cell) >= 5)
  const lines = [
    '# The trial of calibration',
    '',
    `Seed \`${seed}\`; ${all.length.toLocaleString('en')} cells (${sampled} of a sample in which every level of every factor stands beside every level of`,
    `every other, the rest corners suspected to be worst), ${setsSaid(all)} data sets each. Made again, by`,
    `\`npm run trial:calibration -- --cells ${sampled} --sets ${sets} --seed ${seed}\`. A fixed share of it is among the full tests.`,
    '',
    'What is judged is the contrast of whole fields as the product answers it, called on totals: the t on logs of the fields, or the',
    `contrast by thinning where that stands (${percent(thinnedShare(all))} of what was answered), the refusals, and the verdict rule. Counts`,
    'are negative binomial or Poisson, with scatter between fields, fields and periods, and',
    'visits, and with or without visits that count nothing whatever flies (chance 0.3). The truth is the ratio of marginal means.',
    '*Total* is the expected total of a field at the level where it is smallest. *first*, *second*: that level was watched five times',
    'as long (before/after: the treated fields before, or after); *mixed*: every second field was. In before/after every period has',
    'the visits named. `shown` and `leaning` are read with an S just above 1, so that no difference hides as `alike`; `alike` with an',
    'S of exactly the true ratio. All shares are of the answered data sets, where at least a tenth was answered. The plain t is the',
    't on logs for every data set, without refusals. A bar that is not said to hold in every cell is one figure for all of them; where an',
    'issue may be read either way, both are told.',
    '',
    '| must hold | asked | found | cells | short of it |',
    '| --- | --- | --- | --- | --- |',
    ...bars.map((bar) => {
      const [asked, found] = valueSaid(bar)
      return `| ${bar.name} | ${asked} | ${found} | ${bar.over} | ${shortSaid(bar)} |`
    }),
    '',
    '## Coverage of the cells of total 5 or more, by what they share',
    '',
    '| cells | how many | median | least | below 93 % |',
    '| --- | --- | --- | --- | --- |',
    ...groups.flatMap(([name, holds]) => {
      const own = enough.filter(({ cell }) => holds(cell))
      return own.length === 0 ? [] : [groupRow(name, own)]
    }),
    '',
    '## The worst cells of each',
    ...bars.flatMap(worstOf),
  ]
  return `${lines.join('\n')}\n`
}
