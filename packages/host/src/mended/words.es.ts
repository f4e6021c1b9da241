import type { Words } from '@thrum/model/ground'

/** What is said of a file that mends another, in Spanish. */
export const mendedWords: Words = {
  'host/mended/no-such-file': 'No se importó ningún archivo {file} en este proyecto, así que nada puede enmendarlo.',
  'host/mended/no-such-file/remedy': 'No se escribió nada. Comprobar el nombre, o quitar --mends.',
  'host/mended/withdrawn': '{file} ya se importó antes con este mapeo, y se retiró.',
  'host/mended/withdrawn/remedy':
    'No se escribió nada. Para recuperar sus filas:\n    thrum withdraw {withdrawal} --reason TEXTO\nPara importarlo leído de otro modo, cambiar antes el mapeo.',
  'host/mended/earlier-withdrawn':
    '{file} ya se importó antes. La versión anterior que enmienda, {earlier}, se retiró, y con ella las filas que ambas tienen.',
  'host/mended/earlier-withdrawn/remedy':
    'No se escribió nada. Para recuperar esas filas:\n    thrum withdraw {withdrawal} --reason TEXTO',
}
