import type { Words } from './ground/index.ts'

/** What `model` says to a person, in English. ICU message texts by id. */
export const words: Words = {
  'model/batch/damaged': 'A batch of rows in this project cannot be read: {expected} bytes were expected, found: {found}.',
  'model/batch/damaged/remedy':
    'Nothing was changed. Restore the project from its latest backup, or merge it with another copy of the same project.',
  'model/fact/misshapen': 'A record of kind "{kind}" does not fit its shape at "{where}": {what}.',
  'model/fact/misshapen/remedy': 'Nothing was written. Correct the value and try again.',
  'model/options/unknown': 'There is no option --{name} here.',
  'model/options/unknown/remedy': 'Known here: {known}.',
  'model/options/given-twice': '--{name} was given more than once, and takes one value.',
  'model/options/given-twice/remedy': 'Give it once.',
  'model/options/empty': '--{name} has no value.',
  'model/options/empty/remedy':
    'Write the value behind it, for example --{name} something; put quotes around a value with blanks.',
  'model/options/not-a-number': '--{name} should be a number above {above}, but reads "{found}".',
  'model/options/not-a-number/remedy': 'Write it with a point as decimal mark, for example --{name} 1.5.',
  'model/options/no-such-choice': '--{name} cannot be "{found}".',
  'model/options/no-such-choice/remedy': 'Choose one of: {choices}.',
  'model/options/not-a-date': '--{name} should be a date, but reads "{found}".',
  'model/options/not-a-date/remedy': 'Write it as year-month-day, for example 2031-06-12.',
}
