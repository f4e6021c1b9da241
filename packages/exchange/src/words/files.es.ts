import type { Words } from '@thrum/model/ground'

/** Sentences about files, sheets and rows, in Spanish. */
export const fileWords: Words = {
  // A file as a whole
  'exchange/file/empty': 'El archivo está vacío.',
  'exchange/file/empty/remedy': 'Comprobar que se eligió el archivo correcto y que se guardó. No se escribió nada.',
  'exchange/file/too-large': 'El archivo tiene {megabytes} MB; se pueden leer como máximo {limit} MB.',
  'exchange/file/too-large/remedy':
    'Dividirlo, por ejemplo por temporada, e importar las partes una por una. No se escribió nada.',
  'exchange/file/not-text':
    '{what, select, workbook {El archivo es un libro de cálculo, no una tabla de texto.} pdf {El archivo es un PDF, no una tabla de texto.} picture {El archivo es una imagen, no una tabla de texto.} archive {El archivo es un archivo comprimido, no una tabla de texto.} other {El archivo no es texto: demasiados de sus caracteres son caracteres de control.}}',
  'exchange/file/not-text/remedy':
    '{what, select, workbook {Guardar como CSV la hoja con los conteos e importar ese archivo.} other {Importar los conteos como CSV: una línea por observación, valores separados por comas, puntos y coma o tabuladores.}} No se escribió nada.',
  'exchange/sheet/not-a-table': 'El archivo no es una tabla: sus líneas no tienen el mismo número de valores.',
  'exchange/sheet/not-a-table/remedy':
    'Guardarlo como CSV con una línea de encabezado y un solo separador, o indicar el separador en el mapeo. No se escribió nada.',
  'exchange/sheet/no-header':
    'No se encontró encabezado: la línea {line} tiene valores donde deberían estar los nombres de las columnas.',
  'exchange/sheet/no-header/remedy':
    'Poner una línea con los nombres de las columnas encima de la primera fila, o dar su número de línea en el mapeo. No se escribió nada.',
  'exchange/sheet/no-rows': 'El archivo tiene encabezado y ninguna fila.',
  'exchange/sheet/no-rows/remedy': 'Comprobar que se guardó la hoja correcta. No se escribió nada.',
  'exchange/sheet/too-wide': 'El archivo tiene más de {limit} columnas.',
  'exchange/sheet/too-wide/remedy': 'Conservar las columnas de los conteos e importar de nuevo el archivo. No se escribió nada.',
  'exchange/sheet/too-long': 'El archivo tiene más de {limit} filas.',
  'exchange/sheet/too-long/remedy':
    'Dividirlo, por ejemplo por temporada, e importar las partes una por una. No se escribió nada.',
  'exchange/sheet/no-tally-column': 'Ninguna columna dice cuántos insectos se contaron.',
  'exchange/sheet/no-tally-column/remedy':
    'Asignar al menos una columna como recuento con su tipo; en una tabla larga, asignar la columna de los tipos. No se escribió nada.',
  'exchange/sheet/effort-unmapped': 'Nada dice cuánto duró cada observación.',
  'exchange/sheet/effort-unmapped/remedy':
    'Asignar una columna de minutos, o de comienzo y final; o dar los minutos si todas las observaciones duraron lo mismo. Si nadie lo anotó, decirlo ("effort": "not recorded"): entonces se pueden dar proporciones, pero no tasas. No se escribió nada.',
  'exchange/sheet/not-counts':
    'Esto no son conteos: {cells} de {of} números de las columnas de recuento no son enteros, por ejemplo {written} en «{column}». Parecen medias de varias observaciones; los números de insectos y el esfuerzo que hay detrás se han perdido.',
  'exchange/sheet/not-counts/remedy':
    'Importar los conteos y los minutos de cada observación, una línea por observación, como se anotaron en el campo. No se escribió nada.',
  'exchange/sheet/units-mixed': 'La columna «{header}» mezcla unidades de conteo ({units}), que nunca deben juntarse.',
  'exchange/sheet/units-mixed/remedy': 'Importar las filas de cada unidad de conteo como un archivo aparte. No se escribió nada.',
  'exchange/read/stopped': 'La lectura se detuvo.',
  'exchange/read/stopped/remedy': 'No se escribió nada. Se puede empezar de nuevo en cualquier momento.',

  // A row that cannot be one
  'exchange/row/cell-too-long': 'una celda tiene {length} caracteres; se pueden leer como máximo {limit}',
  'exchange/row/stray-quote': 'una comilla se abre y no se cierra nunca, así que sus celdas no se pueden separar',
  'exchange/row/too-many-cells':
    'tiene {cells} celdas bajo {columns} columnas; un separador dentro de un valor puede necesitar comillas',
  'exchange/row/too-few-cells': 'tiene {cells} celdas bajo {columns} columnas',
  'exchange/row/no-kind': 'cuenta insectos y no dice de qué tipo',
  'exchange/row/left-out': 'esta línea se dejó fuera a petición',
  'exchange/row/entered-twice': 'es la línea {first} introducida otra vez; se conserva una sola vez',
  'exchange/row/entered-twice-asked':
    'es igual que la línea {first}: ¿una observación introducida dos veces, o dos observaciones?',
  'exchange/row/in-conflict':
    'tiene el identificador de la línea {first} y la contradice en {headers}; ¿qué línea es la correcta?',
  'exchange/row/cell-in-conflict': 'dos líneas con un mismo identificador dicen números distintos; ¿cuál es el correcto?',
  'exchange/watch/rows-differ': 'filas de una misma observación dicen números distintos; ¿cuál es el correcto?',

  // The same, told again from a project, which keeps no numbers of them
  'exchange/row/cell-too-long/retold': 'una celda tiene más caracteres de los que se pueden leer',
  'exchange/row/too-many-cells/retold':
    'tiene más celdas que columnas hay; un separador dentro de un valor puede necesitar comillas',
  'exchange/row/too-few-cells/retold': 'tiene menos celdas que columnas hay',
  'exchange/row/entered-twice/retold': 'es otra línea introducida otra vez; se conserva una sola vez',
  'exchange/row/entered-twice-asked/retold':
    'es igual que otra línea: ¿una observación introducida dos veces, o dos observaciones?',
  'exchange/row/in-conflict/retold': 'tiene el identificador de otra línea y la contradice; ¿qué línea es la correcta?',

  // What was noticed about the file
  'exchange/note/utf-16': 'El archivo está en UTF-16 y se leyó así.',
  'exchange/note/western-encoding':
    'El archivo no está en UTF-8; se leyó como texto de Europa occidental (windows-1252). Comprobar los nombres con acentos.',
  'exchange/note/mixed-encoding':
    'El archivo mezcla codificaciones: {utf8, plural, one {# línea} other {# líneas}} en UTF-8, {other, plural, one {# línea} other {# líneas}} en texto de Europa occidental. Cada línea se leyó en la suya.',
  'exchange/note/control-characters':
    'El archivo contiene {characters, plural, one {# carácter de control, que no se muestra} other {# caracteres de control, que no se muestran}} en los nombres.',
  'exchange/note/unseen-signs':
    'El archivo contiene {characters, plural, one {# signo que no se ve} other {# signos que no se ven}}: marcas de la dirección de escritura, espacios sin anchura. Quedan fuera de los nombres.',
  'exchange/note/line-ends':
    '{ends, select, CR {Sus líneas terminan como en ordenadores muy antiguos (CR), y se leyeron así.} other {Sus líneas terminan de distintas maneras, y se leyeron todas.}}',
  'exchange/note/delimiter': 'Los valores están separados por {delimiter, select, tab {tabuladores} other {«{delimiter}»}}.',
  'exchange/note/repeated-header':
    'La línea {line} es otra vez un encabezado. A partir de ahí, las columnas se leen por sus nombres.',
  'exchange/note/totals-agree':
    '{totals, plural, one {# línea de totales se dejó fuera de los datos y coincide} other {# líneas de totales se dejaron fuera de los datos y coinciden}} con las filas que tienen encima.',
  'exchange/note/total-differs':
    'La línea {line} («{label}») dice {said} bajo «{header}»; las filas que tiene encima suman {found}. Se tomaron las filas, no el total.',
  'exchange/note/total-left-out': 'La línea {line} («{label}») suma otras líneas; se dejó fuera de los datos.',
  'exchange/note/decimal-comma': 'Los números en {headers} tienen coma decimal.',
  'exchange/note/both-decimals':
    'Los números en {headers} tienen punto decimal en algunas celdas y coma decimal en otras. Las celdas que podrían ser lo uno o lo otro quedan pendientes.',
  'exchange/note/short-years': 'Los años de dos cifras en «{header}» se leen como 1950 a 2049.',
  'exchange/note/names-alike':
    'Hay nombres en «{header}» que difieren solo en mayúsculas o acentos: {names}. Se mantienen separados.',
  'exchange/note/minutes-differ':
    'Los minutos de {watches, plural, one {una observación} other {# observaciones}} difieren de su comienzo y final (línea {lines}). Se tomaron los minutos.',
  'exchange/note/kept-line': 'La línea {line} se conserva como nota: {text}',
  'exchange/note/more-kept-lines':
    '{lines, plural, one {# línea más se conserva como nota} other {# líneas más se conservan como notas}}.',
  'exchange/note/columns-left-out': 'Sin asignar, y dejadas fuera: {headers}.',
  'exchange/note/differs-within-watch':
    '«{header}» difiere entre filas de una misma observación. Para la observación se toma el primer valor; el archivo conserva los demás.',
  'exchange/note/nothing-counted':
    '{watches, plural, one {Una observación no tiene} other {# observaciones no tienen}} ningún número bajo ningún tipo (línea {lines}). Se toma como no contado, nunca como cero.',
  'exchange/note/no-flowers':
    '{watches, plural, one {Una observación no tiene} other {# observaciones no tienen}} flores abiertas (línea {lines}). Es un cero verdadero para el campo; una tasa por flor no puede usarlo.',
  'exchange/note/no-field':
    '{watches, plural, one {Una observación no nombra} other {# observaciones no nombran}} ningún campo (línea {lines}).',
  'exchange/note/several-watches':
    'Un campo se observó más de una vez en un día, y ninguna columna distingue las observaciones (línea {lines}). Se conservan como observaciones separadas.',
  'exchange/note/shared-id':
    'Las líneas {first} y {line} comparten un identificador y son observaciones distintas. Se conservan ambas; una necesita un identificador propio.',
  'exchange/note/short-id': 'El identificador {id} es más corto que los demás. Se dejó como está; ¿se quería decir {proposed}?',
}
