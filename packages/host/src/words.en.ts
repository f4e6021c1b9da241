import type { Words } from '@thrum/model/ground'
import { backupWords } from './backup/words.en.ts'
import { correctionWords } from './corrections/words.en.ts'
import { mendedWords } from './mended/words.en.ts'

/** What `host` says to a person, in English. ICU message texts by id. */
export const words: Words = {
  ...backupWords,
  ...correctionWords,
  ...mendedWords,
  'host/read-only': '{file} cannot be written: {because}.',
  'host/read-only/remedy': 'Nothing was changed. {remedy}',
  'host/no-such-question': 'There is no question "{id}".',
  'host/no-such-question/remedy': 'Questions are: {known}.',
  'host/no-project-record': '{file} does not say which project it is.',
  'host/no-project-record/remedy': 'Make a new project, and bring your tables again:\n    thrum new my-project.thrum',
  'host/same-file-other-mapping': '{file} was brought before, with another mapping. Its counts would stand twice.',
  'host/same-file-other-mapping/remedy':
    'Use the mapping of then, or make a new project and bring the file there with the new mapping.',
  'host/not-counted': '{file} was brought before, and withdrawn or forgotten; nothing of it counts.',
  'host/not-counted/remedy':
    'What was withdrawn comes back by withdrawing the withdrawal. What was forgotten stays forgotten: bring a table without it.',
  'host/stopped': 'Stopped while bringing {file}. Nothing of it counts.',
  'host/stopped/remedy': 'Bring it again; what was written already is taken up where it stopped.',
}
