import { columnsOf } from '@thrum/report'
import { describe, expect, it } from 'vitest'
import { testSpanish } from '../../model/test/translated.ts'
import { words } from '../src/words.en.ts'
import { words as wordsEs } from '../src/words.es.ts'

/** What reads the same in both languages, or holds English on purpose, and why. */
const sameInBoth = {
  'cli/progress': 'blanks alone',
  'cli/import/usage/remedy': 'a command',
  'cli/import/assigned/remedy': 'words that are typed',
  'cli/import/column': 'blanks alone',
  'cli/import/said-again': 'blanks alone',
  'cli/ask/plan-only-audit/remedy': 'the name of a question',
  'cli/ask/no-figure/remedy': 'the name of a question',
  'cli/check/usage/remedy': 'a command',
  'cli/settle/usage/remedy': 'words that are typed',
  'cli/settle/choices': 'blanks alone',
  'cli/settle/how': 'words that are typed',
  'cli/history/usage/remedy': 'a command',
  'cli/history/row': 'blanks alone',
  'cli/history/fact': 'blanks alone',
  'cli/fit/usage/remedy': 'a command',
  'cli/help/command/fit': 'words that are typed',
  'cli/merge/usage/remedy': 'a command',
  'cli/help/command/import': 'words that are typed',
  'cli/help/command/settle': 'words that are typed',
}

/** Columns of the usual page. */
const usualPage = 80

describe('Spanish words', () => {
  testSpanish(words, wordsEs, sameInBoth)

  it('the help of a command is laid out for the usual page', () => {
    const helps = Object.entries(wordsEs).filter(([id]) => id.startsWith('cli/help/command/'))
    expect(
      helps
        .flatMap(([, text]) => text.replace(/^( {4})?thrum /gmu, '$1./thrum ').split('\n'))
        .filter((line) => columnsOf(line) > usualPage),
    ).toEqual([])
  })
})
