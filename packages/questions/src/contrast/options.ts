import { measures } from '@thrum/survey'

/** Which counts a question is about; shared by every question over counts. */
export const selectionOptions = {
  field: { type: 'texts', offers: 'fields', explained: 'questions/option/field' },
  crop: { type: 'texts', offers: 'crops', explained: 'questions/option/crop' },
  season: { type: 'texts', offers: 'seasons', explained: 'questions/option/season' },
  where: { type: 'texts', offers: 'conditions', explained: 'questions/option/where' },
  except: { type: 'texts', offers: 'conditions', explained: 'questions/option/except' },
  unit: { type: 'choice', choices: ['snapshot', 'individuals', 'visits'], explained: 'questions/option/unit' },
  window: { type: 'choice', choices: ['in', 'all'], explained: 'questions/option/window' },
  per: { type: 'choice', choices: measures, explained: 'questions/option/per' },
} as const

/** What is compared with what. */
export const contrastOptions = {
  kinds: { type: 'texts', offers: 'kinds', explained: 'questions/option/kinds' },
  between: { type: 'text', offers: 'factors', explained: 'questions/option/between' },
  levels: { type: 'texts', offers: 'levels', explained: 'questions/option/levels' },
  step: { type: 'number', above: 0, explained: 'questions/option/step' },
  since: { type: 'date', explained: 'questions/option/since' },
  against: { type: 'text', offers: 'kinds', explained: 'questions/option/against' },
  ...selectionOptions,
} as const

/** What a contrast is held against. */
export const verdictOptions = {
  worth: { type: 'number', above: 1, explained: 'questions/option/worth' },
  expect: { type: 'choice', choices: ['more', 'fewer'], explained: 'questions/option/expect' },
  /** Whether S stood before the answer was first looked at. Filled in by the host from the log. */
  worthSet: { type: 'choice', choices: ['before-looking', 'after-looking'], explained: 'questions/option/worthSet' },
  /** With how many other states of the data it was looked at before. Filled in by the host from the log. */
  looks: { type: 'number', above: 0, explained: 'questions/option/looks' },
} as const
