import { surveyWords, surveyWordsEs } from '@thrum/survey'
import { describe } from 'vitest'
import { testSpanish } from '../../model/test/translated.ts'

/** What reads the same in both languages, or holds English on purpose, and why. */
const sameInBoth = {
  'survey/reading/date': 'blanks alone',
  'survey/reading/stage': 'blanks alone',
  'survey/reading/hour': 'a number and its unit',
  'survey/reading/temperature': 'a number and its unit',
  'survey/reading/observer': 'a share',
  'survey/reading/season': 'a share',
  'survey/reading/position': 'a share',
}

describe('Spanish words', () => testSpanish(surveyWords, surveyWordsEs, sameInBoth))
