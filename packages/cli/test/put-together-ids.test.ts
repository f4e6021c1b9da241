import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { verdicts } from '@thrum/model'
import { questions } from '@thrum/questions'
import { measures } from '@thrum/survey'
import { describe, expect, it } from 'vitest'
import { figureOptions } from '../src/commands/write-figure.ts'
import { commands } from '../src/run-command.ts'
import { typedName } from '../src/terminal/arguments.ts'
import { allWords } from '../src/terminal/terminal.ts'
import { allFiles, repository } from './repository.ts'

const read = (path: string): string => readFileSync(join(repository, 'packages', path), 'utf8')
const quoted = (text: string): readonly string[] => [...text.matchAll(/'([a-z][a-z ,-]*)'/gu)].map((match) => match[1] as string)

/** The words of a union that is declared in a file: those in quotes from the start of its declaration to its end. */
function union(path: string, start: string, end = '\n\n'): readonly string[] {
  const declared = read(path).split(start)[1]?.split(end)[0] ?? ''
  expect(quoted(declared).length, `${start} in ${path}`).toBeGreaterThan(1)
  return quoted(declared)
}

/** Codes of findings in some files of source; those that only ever warn or note are left out where only those that block are asked. */
function codesIn(folder: RegExp, which: 'all' | 'may block'): readonly string[] {
  const text = allFiles()
    .filter((name) => folder.test(name))
    .map((name) => readFileSync(join(repository, name), 'utf8'))
    .join('\n')
  const found = [...text.matchAll(/\bcode: ([^\n]+?),\s+severity(?:: '(warn|note|block)')?/gu)]
  return found.flatMap(([, code = '', severity]) => {
    const mayBlock = severity === undefined || severity === 'block'
    // What stands before the question mark decides; the codes are what follows it.
    return which === 'all' || mayBlock ? quoted(code.split(' ? ').at(-1) ?? '') : []
  })
}

/** Ids of one family: the same start, and one of some words behind it. */
const family = (start: string, words: readonly string[]): readonly string[] => words.map((word) => `${start}/${word}`)
const unsaid = (ids: readonly string[]): readonly string[] => ids.filter((id) => allWords[id] === undefined)

describe('ids that are put together have a text for every part there can be', () => {
  const blocking = [
    ...codesIn(/^packages\/survey\/src\/audit\/[^/]+\.ts$/u, 'may block'),
    ...codesIn(/^packages\/questions\/src\/.+\.ts$/u, 'may block'),
  ]

  it('each finding that can block has its reason', () => {
    expect(unsaid(family('questions/reason', blocking))).toEqual([])
    expect(blocking).toEqual(
      expect.arrayContaining(['tangled', 'flowers-not-counted', 'area-unknown', 'stages-apart', 'refused']),
    )
    expect(blocking).not.toContain('waiting')
  })

  it('each check says what it found, and the cure', () => {
    const text = read('survey/src/check/check-counts.ts')
    const codes = [...text.matchAll(/\bfound\(\s*'([a-z-]+)'/gu)].map((match) => match[1] as string)
    expect(codes.length).toBeGreaterThan(8)
    expect(unsaid(codes.flatMap((code) => [`survey/check/${code}`, `survey/check/${code}/cure`]))).toEqual([])
  })

  const refusals = union('survey/src/contrast/refusal.ts', 'export type Refusal =').filter((word) => word !== 'because')
  const structures = union('survey/src/design/design.ts', 'export type Structure =')
  const sizes = union('questions/src/verdict/read-verdict.ts', 'readonly size:', '| null')
  const judged = verdicts.filter((verdict) => verdict !== 'shown' && verdict !== 'alike')
  const severities = union('model/src/answer/answer.ts', 'export type Severity =', '\n')
  const trust = union('model/src/answer/answer.ts', 'readonly trust:', '\n').map((word) => word.replaceAll(/[, ]+/gu, '-'))
  const axes = union('model/src/answer/figure.ts', 'readonly axis:', '\n')
  const graver = ['warn', 'block'] as const

  const families: readonly (readonly [start: string, words: readonly string[]])[] = [
    ['questions/refusal', refusals],
    // Of too few fields the finding says what to do.
    ['questions/next/refused', refusals.filter((because) => because !== 'few-fields' && because !== 'few-pairs')],
    ['questions/left-out', union('survey/src/design/design.ts', 'readonly because:', 'readonly rows')],
    ['questions/choice/structure', structures],
    ['questions/choice/not-adjusted', union('survey/src/contrast/field-contrast.ts', 'readonly because: ', ' }[]')],
    ['questions/choice/measured', union('survey/src/factor/measured-factor.ts', 'export type MeasuredScale =', '\n')],
    ['questions/check/permutation', union('stats/src/permutation/permutation-test.ts', 'readonly method:', '\n')],
    ['questions/verdict', verdicts],
    ['questions/what-differs/headline', judged],
    ['questions/what-differs/headline/shown', union('questions/src/contrast/phrases.ts', 'export type Strength =', '\n')],
    ['questions/what-differs/headline/alike', sizes.filter((size) => size.includes('difference'))],
    ['questions/what-differs/size', sizes.filter((size) => !size.includes('difference'))],
    ['questions/kinds/headline', verdicts],
    ['questions/kinds/cannot-say', verdicts],
    ['questions/caution/kinds-not-replicated', graver],
    ['questions/can-say/no-gain', ['more', 'fewer']],
    ['questions/can-say', ['shares-fields', 'shares-watches']],
    ['questions/who-visits/rate', ['fields', 'watches', 'none']],
    ['questions/is-design-sound/headline', ['blocked', 'warned', 'sound']],
    // Days of a season stand under the title of the date.
    ['questions/figure/strips', axes.filter((axis) => axis !== 'season-day')],
    ['report/figure/strips/axis', axes],
    ...['unit/rate', 'unit/scan', 'noun/watch', 'noun/scan', 'measure'].map((of) => [`questions/${of}`, measures] as const),
    ['survey/audit/level-without-effort', measures],
    ['survey/audit/everything-differed', ['season', 'date']],
    ['survey/audit/hangs-on-range', ['none', ...graver]],
    ['survey/audit/tangled', [...severities, 'warn/lost', 'block/lost', 'blocks']],
    ...[
      'effort-unknown',
      'flower-unknown',
      'area-unknown',
      'not-replicated/within',
      'not-replicated/between',
      'same-bees-fields',
      'same-bees-hives/moved',
      'same-bees-hives/levels',
      'one-observer-per-level',
    ].map((finding) => [`survey/audit/${finding}`, graver] as const),
    ['report/severity', severities],
    ['report/trust', trust],
    ['report/units', union('model/src/answer/answer.ts', 'readonly counts:', '\n').map((word) => word.replaceAll(' ', '-'))],
    ['report/heading', ['estimates', 'can-say', 'cannot-say', 'cautions', 'next', 'method']],
    ...['line', 'command'].map((of) => [`cli/help/${of}`, commands.map(({ name }) => name)] as const),
    ['cli/help/option', ['in', 'plan', 'receipt', ...figureOptions.map(typedName), 'seed', 'brief', 'json']],
    [
      'cli/help/value',
      questions.flatMap(({ options }) => Object.values(options).flatMap(({ type }) => (type === 'choice' ? [] : [type]))),
    ],
    ['questions', questions.flatMap(({ id }) => [`${id}/title`])],
  ]

  it.each(families)('%s/…', (start, words) => {
    expect(unsaid(family(start, words))).toEqual([])
  })
})
