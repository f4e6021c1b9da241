import { writeFileSync } from 'node:fs'
import { version } from '@thrum/host'
import { hostileMutations } from '../packages/cli/test/mutated/hostile-mutations.ts'
import { mutations } from '../packages/exchange/test/mutated/mutations.ts'
import type { Trial } from './mutated-imports-state.ts'

const number = (value: number): string => value.toLocaleString('en')
const sum = (trials: readonly Trial[], of: (trial: Trial) => number): number => trials.reduce((all, own) => all + of(own), 0)
const times = (counts: { readonly [code: string]: number }): number => Object.values(counts).reduce((all, one) => all + one, 0)
const names = (of: object): string => Object.keys(of).join(', ')

function refusals(trials: readonly Trial[]): readonly string[] {
  const codes = [...new Set(trials.flatMap(({ refused }) => Object.keys(refused)))]
  const all = codes.map((code): [string, number] => [code, sum(trials, ({ refused }) => refused[code] ?? 0)])
  return all.sort((a, b) => b[1] - a[1]).map(([code, files]) => `| \`${code}\` | ${number(files)} |`)
}

/** The trials as a page for readers: what was done, what must hold, what was found. */
export function writePage(trials: readonly Trial[]): void {
  const failures = sum(trials, (own) => own.failures.length)
  const files = sum(trials, ({ inputs }) => inputs)
  const rows = (of: keyof Trial['rows']): string => number(sum(trials, (own) => own.rows[of]))
  const lines = [
    '# The trial of mutated imports',
    '',
    `Thrum ${version}. Made again, and gone on with, by \`npm run trial:mutated-imports -- --inputs N --seed S\`: an input is the`,
    'same file whenever it is made. A fixed share of it is among the full tests.',
    '',
    'Each input is a table of counts, tidy or untidy, invented or an extract of open data, that was spoiled in one or several ways',
    `(${names(mutations)}; and ${names(hostileMutations)}).`,
    'It is brought into a new project by the command line as a person brings it: offered, accepted, the project opened again, checked',
    'and asked of. One in five is drawn, one in a hundred is also run as a program of its own, which must end in the same way.',
    '',
    '| must hold | found |',
    '| --- | --- |',
    `| no crash, no failure of the program itself, no promise left to fail, no stack printed, a documented exit code | ${failures} of ${number(files)} inputs failed in any way |`,
    `| a file is brought, or refused with a code, a sentence and what to do, and then nothing is written | ${number(sum(trials, ({ brought }) => brought))} brought, ${number(sum(trials, ({ refused }) => times(refused)))} refused |`,
    `| accepted + waiting + set aside = rows in, as the project holds them and as the person was told | ${rows('accepted')} + ${rows('waiting')} + ${rows('refused')}; in ${number(sum(trials, ({ countedApart }) => countedApart))} files the rows were also counted without the reader |`,
    `| each accepted cell, read from the project and written again as its column is declared, equals the written text or carries a shown reading | ${number(sum(trials, ({ cells }) => cells))} cells, ${number(sum(trials, ({ shown }) => shown))} of them with a reading |`,
    '| the file is kept in the project byte by byte | in each file that was brought |',
    '| nothing printed holds a control code, a mark of direction or half a character; no line is wider than 120 columns, no cell is printed without end | in each command |',
    `| a drawing is well-formed XML of shapes and text alone, and as harmless | ${number(sum(trials, ({ figures }) => figures))} drawings |`,
    `| the program itself ends as its commands do | ${number(sum(trials, ({ asProgram }) => asProgram))} inputs |`,
    '',
    `Seeds: ${trials.map(({ seed, inputs }) => `${seed} (${number(inputs)} inputs)`).join(', ')}.`,
    '',
    '| refused as a whole with | files |',
    '| --- | --- |',
    ...refusals(trials),
    '',
    '## What is left out of the writing back',
    '',
    'Constants of a mapping, products of columns, sums of several columns or lines, a date whose year stands in a column of its own,',
    'wind in Beaufort from a speed (no way leads back), and blanks that another line of the same watch fills. A name equals what was',
    'written when blanks are run together, letters composed, and signs that are not seen left out; where there were such signs, the',
    'import must have said so.',
    ...(failures === 0
      ? []
      : [
          '',
          '## Failed',
          '',
          ...trials.flatMap(({ seed, failures: own }) =>
            own.map(({ input, base, how, because }) => `- seed ${seed}, input ${input} (${base}; ${how.join(', ')}): ${because}`),
          ),
        ]),
  ]
  writeFileSync(new URL('../docs/trials/mutated-imports.md', import.meta.url), `${lines.join('\n')}\n`)
}
