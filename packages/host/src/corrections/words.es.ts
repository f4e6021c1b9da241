import type { Words } from '@thrum/model/ground'

/** What is said while rows are found, corrected, withdrawn and settled, in Spanish. */
export const correctionWords: Words = {
  'host/row/unknown': 'En este proyecto no hay ninguna fila, hecho o archivo «{found}».',
  'host/row/unknown/remedy':
    'Nombrar una fila como ARCHIVO:LÍNEA, por ejemplo counts.csv:14. {count, plural, =0 {Hasta ahora no se importó ningún archivo.} one {El archivo es {files}.} other {Los archivos son {files}.}}',
  'host/row/no-such-line': '{file} no tiene ningún conteo en la línea {line}.',
  'host/row/no-such-line/remedy':
    'Las líneas más próximas que tienen uno: {near}. Las líneas se cuentan desde 1, incluido el encabezado.',
  'host/row/forgotten': 'La línea {line} de {file} se olvidó aquí, y sigue olvidada.',
  'host/row/forgotten/remedy': 'No se cambió nada. Las demás líneas están como estaban.',
  'host/row/set-aside':
    'La línea {line} de {file} no está en ninguna tabla: {state, select, refused {se apartó} other {queda pendiente entera}} ({because}).',
  'host/row/set-aside/remedy': `Sobre filas enteras se decide en el mapeo que está junto al archivo: escribir "lines": '{' "{line}": "keep" '}' (o "leave-out") e importar de nuevo el mismo archivo; solo se propone lo que cambia.`,
  'host/row/no-row': '{found} no es una fila.',
  'host/row/no-row/remedy': 'Nombrar una fila como ARCHIVO:LÍNEA, por ejemplo counts.csv:14.',
  'host/row/withdrawn': '{row} se retiró, así que nada suyo se puede cambiar.',
  'host/row/withdrawn/remedy': 'Quién la retiró se ve con:\n    thrum history {row}\nRetirar esa retirada para recuperarla.',
  'host/file/which': 'Varios archivos se importaron con el nombre {file}.',
  'host/file/which/remedy': 'Indicar cuál, con su número detrás: {found}.',
  'host/file/no-version':
    'Solo {versions, plural, one {un archivo se importó} other {# archivos se importaron}} con el nombre {file}.',
  'host/file/no-version/remedy': 'Quitar el número para referirse al último.',
  'host/cell/unknown': '{row} no tiene nada que se llame «{name}».',
  'host/cell/unknown/remedy': 'Tipos contados allí: {kinds}. Columnas: {columns}.',
  'host/cell/which': '{row} tiene más de un recuento de «{name}».',
  'host/cell/which/remedy': 'Indicar cuál: {kinds}.',
  'host/correct/no-reason': 'Una corrección necesita un motivo.',
  'host/correct/no-reason/remedy': 'No se escribió nada. Decir por qué, por ejemplo --reason "se releyó la hoja de papel".',
  'host/correct/no-change': '{column} de {row} ya es {value}.',
  'host/correct/no-change/remedy': 'No se escribió nada.',
  'host/correct/not-this-fact': 'Un hecho del tipo {kind} no se corrige columna por columna.',
  'host/correct/not-this-fact/remedy':
    'Corregir sus filas como ARCHIVO:LÍNEA, o retirar el hecho:\n    thrum withdraw {fact} --reason TEXTO',
  'host/correct/does-not-fit': '«{value}» no es válido para {column} de un hecho del tipo {kind}.',
  'host/correct/does-not-fit/remedy': 'No se escribió nada. El hecho tiene: {columns}.',
  'host/withdraw/already': '{row} ya está retirada.',
  'host/withdraw/already/remedy': 'No se escribió nada. Quién lo hizo y por qué:\n    thrum history {row}',
  'host/correct/names-it': '{column} dice de qué trata un hecho del tipo {kind}, y no se puede corregir.',
  'host/correct/names-it/remedy': 'No se escribió nada. Registrar lo correcto como un hecho aparte.',
  'host/withdraw/mended': '{row} está enmendada por {by}, que sigue en vigor: con ella se irían las filas que ambas tienen.',
  'host/withdraw/mended/remedy':
    'No se escribió nada. Retirar antes la versión posterior:\n    thrum withdraw {by} --reason TEXTO',
  'host/withdraw/never': 'Un hecho del tipo {kind} no se puede retirar.',
  'host/withdraw/never/remedy':
    'Para retirar un archivo entero, nombrar el archivo:\n    thrum withdraw counts.csv --reason TEXTO',
  'host/withdraw/no-kind': '«{name}» es una columna, y una columna no se puede retirar.',
  'host/withdraw/no-kind/remedy': 'Corregirla, o nombrar un tipo para retirar solo su recuento.',
  'host/settle/not-waiting': '{column} de {row} no está pendiente: es {value}.',
  'host/settle/not-waiting/remedy': 'Para cambiarlo:\n    thrum correct {row} "{column}" VALOR --reason TEXTO',
  'host/settle/no-number': '«{written}» deja la celda pendiente.',
  'host/settle/no-number/remedy': 'Escribir un número, o una de estas palabras: {words}.',
  'host/forget/no-reason': 'Olvidar necesita un motivo, sin el nombre dentro.',
  'host/forget/no-reason/remedy': 'No se cambió nada. Decir por qué, por ejemplo --because "a petición suya".',
  'host/forget/no-name': '«{name}» no es un nombre: no tiene ni letras ni cifras, o tiene más de veinte palabras.',
  'host/forget/no-name/remedy': 'No se cambió nada. Escribir el nombre como figura en las tablas.',
  'host/forget/no-field': 'En este proyecto no hay ningún campo «{name}».',
  'host/forget/no-field/remedy': 'No se cambió nada. Los campos son: {known}.',
  'host/forget/never': 'Un hecho del tipo {kind} no se puede olvidar.',
  'host/forget/never/remedy':
    'No se cambió nada. Un nombre, o la ubicación de un campo, se olvida así:\n    thrum forget observer "NOMBRE" --because TEXTO\n    thrum forget place CAMPO --because TEXTO',
  'host/merge/other-project': '{other} es un proyecto («{otherTitle}») distinto de {file} («{title}»), no una copia suya.',
  'host/merge/other-project/remedy':
    'No se cambió nada. Solo se pueden fusionar copias de un mismo proyecto. Para traer conteos de otro proyecto, importar sus tablas.',
}
