import type { Words } from '@thrum/model/ground'
import { backupWords } from './backup/words.es.ts'
import { correctionWords } from './corrections/words.es.ts'
import { mendedWords } from './mended/words.es.ts'

/** What `host` says to a person, in Spanish. ICU message texts by id, the same as in English. */
export const words: Words = {
  ...backupWords,
  ...correctionWords,
  ...mendedWords,
  'host/read-only': 'No se puede escribir en {file}: {because}.',
  'host/read-only/remedy': 'No se cambió nada. {remedy}',
  'host/no-such-question': 'No existe la pregunta «{id}».',
  'host/no-such-question/remedy': 'Las preguntas son: {known}.',
  'host/no-project-record': '{file} no dice qué proyecto es.',
  'host/no-project-record/remedy': 'Crear un proyecto nuevo e importar de nuevo las tablas:\n    thrum new my-project.thrum',
  'host/same-file-other-mapping': '{file} ya se importó antes, con otro mapeo. Sus conteos figurarían dos veces.',
  'host/same-file-other-mapping/remedy':
    'Usar el mapeo de entonces, o crear un proyecto nuevo e importar allí el archivo con el mapeo nuevo.',
  'host/not-counted': '{file} ya se importó antes, y se retiró o se olvidó; nada suyo cuenta.',
  'host/not-counted/remedy':
    'Lo retirado vuelve al retirar la retirada. Lo olvidado sigue olvidado: importar una tabla sin ello.',
  'host/stopped': 'Se detuvo mientras se importaba {file}. Nada suyo cuenta.',
  'host/stopped/remedy': 'Importarlo de nuevo; lo que ya se escribió se retoma donde se detuvo.',
}
