import type { Words } from '@thrum/model/ground'

/** What is said, in Spanish, of values that a person types for one cell, and of files that were mended. */
export const mendedWords: Words = {
  'exchange/typed/refused': '«{written}» no puede estar en {column} ({because}).',
  'exchange/typed/refused/remedy':
    'Escribir el número mismo, con punto como signo decimal; una fecha como 2031-05-04, una hora como 09:30. Si el número se perdió, escribir missing; si nadie buscó, escribir not-looked-for.',
  'exchange/typed/out-of-range': '«{written}» no puede estar en {column}, que va de {least} a {most}.',
  'exchange/typed/out-of-range/remedy': 'Escribir el valor en la unidad de la columna; thrum history la muestra.',
  'exchange/typed/not-positive': '«{written}» no puede estar en {column}, que siempre es mayor que cero.',
  'exchange/typed/not-positive/remedy':
    'Si el número se perdió, escribir missing; para retirar el conteo entero: thrum withdraw.',
  'exchange/typed/not-one-of': '«{written}» no es una palabra válida para {column}.',
  'exchange/typed/not-one-of/remedy': 'Es una de estas: {choices}.',
  'exchange/typed/nothing': 'no hay nada escrito',
  'exchange/mended/waits': '«{written}» (pendiente)',
  'exchange/mended/missing': 'perdido',
  'exchange/mended/not-looked-for': 'no se buscó',
  'exchange/mended/no-key':
    'No se encontraron columnas que nombren una sola vez cada observación de este archivo, así que sus filas no se pueden distinguir de las de su versión anterior.',
  'exchange/mended/no-key/remedy':
    'No se escribió nada. Nombrar las columnas que lo hacen, por ejemplo --key field,plot,date,start. Si ninguna fila de este archivo está todavía en el proyecto, indicar --separate. O crear un proyecto nuevo e importar allí el archivo.',
  'exchange/mended/key-unknown': 'La clave nombra «{name}», que no es ninguna columna de los conteos de este archivo.',
  'exchange/mended/key-unknown/remedy': 'No se escribió nada. Las columnas son: {columns}.',
  'exchange/mended/key-not-unique': '{key} no nombran una sola vez cada observación: véanse las líneas {lines}.',
  'exchange/mended/key-not-unique/remedy':
    'No se escribió nada. Añadir una columna que las distinga, por ejemplo --key field,plot,date,start.',
  'exchange/mended/key-doubtful':
    'Al emparejar por {key}, más de la mitad de las filas serían observaciones de otro campo o de otro día: difícilmente es el mismo archivo enmendado.',
  'exchange/mended/key-doubtful/remedy':
    'No se escribió nada. Si ninguna fila de este archivo está todavía en el proyecto, indicar --separate. Si es el mismo archivo, nombrar otras columnas con --key.',
}
