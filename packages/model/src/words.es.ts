import type { Words } from './ground/index.ts'

/** What `model` says to a person, in Spanish. ICU message texts by id, the same as in English. */
export const words: Words = {
  'model/batch/damaged':
    'Un lote de filas de este proyecto no se puede leer: se esperaban {expected} bytes y se encontraron {found}.',
  'model/batch/damaged/remedy':
    'No se cambió nada. Restaurar el proyecto desde su última copia de seguridad, o fusionarlo con otra copia del mismo proyecto.',
  'model/fact/misshapen': 'Un registro del tipo «{kind}» no tiene la forma debida en «{where}»: {what}.',
  'model/fact/misshapen/remedy': 'No se escribió nada. Corregir el valor e intentarlo de nuevo.',
  'model/options/unknown': 'Aquí no existe la opción --{name}.',
  'model/options/unknown/remedy': 'Opciones válidas aquí: {known}.',
  'model/options/given-twice': '--{name} se dio más de una vez y admite un solo valor.',
  'model/options/given-twice/remedy': 'Darla una sola vez.',
  'model/options/empty': '--{name} no tiene valor.',
  'model/options/empty/remedy':
    'Escribir el valor a continuación, por ejemplo --{name} algo; poner entre comillas un valor con espacios.',
  'model/options/not-a-number': '--{name} debería ser un número mayor que {above}, pero pone «{found}».',
  'model/options/not-a-number/remedy': 'Escribirlo con punto como signo decimal, por ejemplo --{name} 1.5.',
  'model/options/no-such-choice': '--{name} no puede ser «{found}».',
  'model/options/no-such-choice/remedy': 'Elegir entre: {choices}.',
  'model/options/not-a-date': '--{name} debería ser una fecha, pero pone «{found}».',
  'model/options/not-a-date/remedy': 'Escribirla como año-mes-día, por ejemplo 2031-06-12.',
}
