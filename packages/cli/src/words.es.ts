import type { Words } from '@thrum/model/ground'

/** What the terminal says itself, in Spanish. ICU message texts by id, the same as in English. */
export const words: Words = {
  'cli/stopping': 'Se detendrá tras el paso en curso; pulsar Ctrl-C otra vez para terminar de inmediato.',
  'cli/stopped': 'Se detuvo.',
  'cli/stopped/remedy': 'Lo que no se terminó no cuenta. El comando se puede repetir en cualquier momento.',
  'cli/progress': '{done} {unit}',
  'cli/progress/of': '{done} de {total} {unit}',
  'cli/progress/unit/rows': 'filas',
  'cli/progress/unit/fact': 'hechos',
  'cli/progress/unit/replicate': 'ajustes',
  'cli/progress/unit/refit': 'ajustes',
  'cli/mishap': 'Falló el propio Thrum: {what}',
  'cli/mishap/remedy': 'No se perdió nada de lo escrito antes. Intentarlo de nuevo; si se repite, comunicar la línea de arriba.',
  'cli/arguments/flag-with-value': '--{name} no admite valor, pero detrás pone «{found}».',
  'cli/arguments/flag-with-value/remedy': 'Escribir --{name} sin valor, o quitarla.',
  'cli/arguments/named-twice': 'Se nombran dos proyectos: {word}, y {named} con --in.',
  'cli/arguments/named-twice/remedy': 'Nombrar uno solo.',
  'cli/arguments/single-dash': 'Aquí las opciones son palabras, y «{found}» no lo es.',
  'cli/arguments/single-dash/remedy': 'Escribir --nombre valor. La lista se ve con:\n    thrum help',
  'cli/no-such-command': 'No existe el comando «{name}».',
  'cli/no-such-command/remedy': 'Los comandos son: {known}. Qué hace cada uno:\n    thrum help',
  'cli/no-project-here': 'En esta carpeta no hay ningún proyecto.',
  'cli/no-project-here/remedy': 'Nombrar uno con --in ARCHIVO.thrum, o crear uno:\n    thrum new my-project.thrum',
  'cli/which-project': 'En esta carpeta hay más de un proyecto: {found}.',
  'cli/which-project/remedy': 'Indicar cuál con --in.',

  'cli/new/usage': 'Un proyecto nuevo necesita un nombre, y uno solo.',
  'cli/new/usage/remedy': '    thrum new my-project.thrum --title "Mi proyecto"',
  'cli/new/name': 'No todos los ordenadores admiten un archivo llamado «{name}».',
  'cli/new/name/remedy': 'Quitar los signos < > : " | ? * que tenga, y los puntos o espacios del final.',
  'cli/new/made': 'Se creó {file}. A continuación:\n    thrum import counts.csv --in {file}',

  'cli/import/usage': 'Se importa un archivo cada vez.',
  'cli/import/usage/remedy': '    thrum import counts.csv --in my-project.thrum',
  'cli/import/no-file': 'No se puede leer {file}.',
  'cli/import/no-file/remedy': 'Comprobar el nombre y la carpeta.',
  'cli/import/no-mapping': 'No se puede leer el mapeo {file}.',
  'cli/import/no-mapping/remedy': 'Comprobar su nombre, o quitar --mapping para que se proponga uno.',
  'cli/import/mapping-not-json': 'El mapeo {file} no es JSON válido.',
  'cli/import/mapping-not-json/remedy': 'Enmendarlo, o borrarlo para que se proponga uno nuevo.',
  'cli/import/mapping-not-kept': 'El mapeo no se puede guardar como {file}: allí no se puede escribir.',
  'cli/import/mapping-not-kept/remedy':
    'No se escribió nada en el proyecto. Copiar la tabla a una carpeta en la que se permita escribir, o indicar otro lugar con --mapping.',
  'cli/import/assigned-unknown': 'En esta tabla no se compara nada que se llame «{name}».',
  'cli/import/assigned-unknown/remedy':
    'Las columnas que se comparan son: {known}. Nombrar una de ellas, o asignar antes la columna como "factor" en el mapeo.',
  'cli/import/assigned':
    '--assigned debería nombrar un factor y decir cómo llegaron sus niveles a los campos, pero pone «{found}».',
  'cli/import/assigned/remedy': 'Por ejemplo --assigned "strip=at random" (o chosen, o not known).',
  'cli/import/read': '{file}: {rows, plural, one {una fila leída} other {# filas leídas}}.',
  'cli/import/columns': 'Cómo se entienden sus columnas (se guarda en {file}, donde se puede cambiar):',
  'cli/import/column': '{header} → {as} ({because})',
  'cli/import/questions': 'Por decidir (se usará lo propuesto):',
  'cli/import/proposed': '{asks} Propuesto: {proposed}.',
  'cli/import/becomes': 'En qué se convierte:',
  'cli/yes': 'sí',
  'cli/import/accept': '¿Aceptar estos conteos? (sí o no)',
  'cli/import/said-again': '{options}',
  'cli/import/not-yet':
    'Todavía no cuenta nada. Si es correcto:\n    thrum import {file} --in {project}{more} --accept\nSi no, cambiar {mapping} y repetir el comando.',
  'cli/import/done': 'Aceptado: {counts, plural, one {un conteo} other {# conteos}} de {file}, ahora en {project}.',
  'cli/import/known': '{file} ya se importó antes con este mapeo. No se añadió nada.',

  'cli/import/file-not-kept':
    'El propio archivo {file} no se guarda en el proyecto, porque contiene algo que el proyecto olvidó. Sus filas se guardan sin ello.',
  'cli/mended/of': '{file} es otra versión de {mends}, importado el {day}. Sus filas se emparejan por {key}.',
  'cli/mended/equal':
    '{rows, plural, =0 {Ninguna fila está como antes.} one {Una fila está como antes y no añade nada.} other {# filas están como antes y no añaden nada.}}',
  'cli/mended/changed':
    '{cells, plural, one {Una celda cambió y pasa a ser una corrección:} other {# celdas cambiaron y pasan a ser correcciones:}}',
  'cli/mended/cell': 'línea {line}, {column}: {from} → {to}',
  'cli/mended/kept':
    '{cells, plural, one {Cambió una celda que aquí se había corregido a otro valor. Queda} other {Cambiaron # celdas que aquí se habían corregido a otro valor. Quedan}} como se corrigió aquí (para cambiarlo está el comando correct):',
  'cli/mended/more': '{more, plural, one {una más} other {# más}}; --json las muestra todas',
  'cli/mended/added':
    '{rows, plural, one {Una fila es nueva} other {# filas son nuevas}}: {lines, plural, one {línea} other {líneas}} {numbers}.',
  'cli/mended/added-tallies':
    '{tallies, plural, one {Un recuento es nuevo} other {# recuentos son nuevos}} en filas que ya estaban: {kinds}.',
  'cli/mended/gone':
    '{rows, plural, one {Una fila ya no está} other {# filas ya no están}} en el archivo: {names}. {rows, plural, one {Se conserva} other {Se conservan}} como {rows, plural, one {está} other {están}}, salvo que se indique --withdraw-missing.',
  'cli/mended/gone-tallies':
    '{tallies, plural, one {Un recuento ya no está} other {# recuentos ya no están}} en el archivo: {kinds}. {tallies, plural, one {Se conserva} other {Se conservan}}, salvo que se indique --withdraw-missing.',
  'cli/mended/withdrawn':
    '{rows, plural, one {Una fila (línea {numbers}) se retiró aquí y sigue retirada} other {# filas (líneas {numbers}) se retiraron aquí y siguen retiradas}}.',
  'cli/mended/forgotten':
    '{rows, plural, one {Una fila (línea {numbers}) se olvidó aquí y sigue olvidada} other {# filas (líneas {numbers}) se olvidaron aquí y siguen olvidadas}}.',
  'cli/mended/columns-gone': 'Columnas que ya no están en el archivo: {columns}. Lo que decían se conserva.',
  'cli/mended/nothing': 'No cambia nada.',
  'cli/mended/accept': '¿Aceptar estos cambios? (sí o no)',
  'cli/mended/not-yet':
    'Todavía no ha cambiado nada. Si es correcto:\n    thrum import {file} --in {project}{more} --accept\nSi las filas están mal emparejadas, nombrar las columnas que distinguen las observaciones, por ejemplo --key field,plot,date,start. Si es otro archivo, indicar --separate.',
  'cli/mended/done':
    '{file} se aceptó en {project}: {corrections, plural, =0 {ninguna corrección} one {una corrección} other {# correcciones}}, {counts, plural, =0 {ningún conteo nuevo} one {un conteo nuevo} other {# conteos nuevos}}{tallies, plural, =0 {} one {, un recuento nuevo} other {, # recuentos nuevos}}{withdrawn, plural, =0 {} one {, una retirada} other {, # retiradas}}.',

  'cli/ask/usage': 'Se hace una pregunta cada vez.',
  'cli/ask/usage/remedy': 'Por ejemplo:\n    thrum ask who-visits\nLas preguntas se ven con:\n    thrum help',
  'cli/ask/plan-only-audit': 'Un plan no contiene conteos todavía, así que «{id}» no tiene con qué responder.',
  'cli/ask/plan-only-audit/remedy': 'A un plan se le puede preguntar is-design-sound.',
  'cli/ask/figure': 'La figura se escribió en {file}.',
  'cli/ask/figure-name': 'Una figura se dibuja como SVG o PNG, y «{file}» no termina ni en lo uno ni en lo otro.',
  'cli/ask/figure-name/remedy': 'Escribir --figure answer.svg o --figure answer.png.',
  'cli/ask/figure-look': 'Una figura puede ser light (clara) o dark (oscura), y «{found}» no es ninguna de las dos.',
  'cli/ask/figure-look/remedy': 'Escribir --figure-look light (en papel) o --figure-look dark (en una pantalla oscura).',
  'cli/ask/figure-width': 'La anchura de una figura debería ser un número entero de {narrowest} a {widest}, pero pone «{found}».',
  'cli/ask/figure-width/remedy':
    'Por ejemplo --figure-width 390 para un teléfono; sin esta opción la página tiene 1280 de ancho.',
  'cli/ask/figure-missing': '--figure-look y --figure-width dicen cómo se dibuja una figura, pero no se pidió ninguna.',
  'cli/ask/figure-missing/remedy': 'Añadir --figure answer.svg o --figure answer.png.',
  'cli/ask/no-figure': 'Esta respuesta no tiene nada que dibujar, así que {file} no se escribió.',
  'cli/ask/no-figure/remedy':
    'La respuesta misma es válida; preguntar de nuevo sin --figure. what-differs y who-visits dibujan los conteos; is-design-sound dibuja solo lo que se confunde con la comparación.',
  'cli/ask/figure-not-written': 'No se puede escribir {file}.',
  'cli/ask/figure-not-written/remedy': 'Comprobar la carpeta, y preguntar de nuevo. La respuesta de arriba es válida.',
  'cli/ask/receipt':
    'El comprobante se escribió en {folder}: las filas, y receipt.R, que vuelve a calcular la respuesta. En esa carpeta:\n    Rscript receipt.R',
  'cli/ask/receipt-folder-used':
    '{folder} contiene algo que no es un comprobante anterior, o que se cambió desde entonces: {found}.',
  'cli/ask/receipt-folder-used/remedy': 'No se tocó nada. Indicar una carpeta nueva con --receipt.',
  'cli/ask/receipt-not-written': 'El comprobante no se puede escribir en {folder}.',
  'cli/ask/receipt-not-written/remedy':
    'La respuesta figura arriba. Indicar con --receipt una carpeta en la que se permita escribir.',

  'cli/check/usage': 'Se comprueba un proyecto cada vez.',
  'cli/check/usage/remedy': '    thrum check my-project.thrum',
  'cli/check/holds':
    '{counts, plural, one {Un conteo} other {# conteos}} en {fields, plural, one {un campo} other {# campos}}, {kinds, plural, one {un tipo} other {# tipos}}, de {sheets, plural, one {un archivo} other {# archivos}}.',
  'cli/check/lines': 'Líneas del archivo: {lines}{more, plural, =0 {} other { y # más}}.',
  'cli/check/unfinished':
    'Un archivo se empezó a importar y no se aceptó nunca ({sheet}); nada suyo cuenta. Importarlo de nuevo para terminarlo.',
  'cli/check/fine': 'No hay impedimentos.',
  'cli/check/blocked': 'Hay impedimentos; véase arriba.',

  'cli/correct/usage': 'Una corrección nombra una fila, lo que se corrige en ella y el valor nuevo.',
  'cli/correct/usage/remedy': '    thrum correct counts.csv:14 "honey bee" 12 --reason "se releyó la hoja de papel"',
  'cli/correct/done': '{row}, {column}: {from} es ahora {to}. Lo escrito antes se conserva.',
  'cli/correct/decides': 'Con esto queda decidido entre las correcciones que no sabían unas de otras.',
  'cli/correct/new-word': 'Hasta ahora ninguna fila tenía {column} «{to}»; si es un error al teclear, corregirlo de nuevo.',
  'cli/correct/undo': 'Para deshacerlo:\n    thrum withdraw {fact} --reason TEXTO',

  'cli/withdraw/usage': 'Una retirada nombra una sola fila, hecho o archivo.',
  'cli/withdraw/usage/remedy':
    '    thrum withdraw counts.csv:14 --reason "se contó en otro campo"\nCon un tipo detrás de la fila se retira solo su recuento.',
  'cli/withdraw/done':
    '{what, select, count {{row} ({told}) se retiró, con {tallies, plural, one {su recuento} other {sus # recuentos}}.} tally {El recuento de {kind} en {row} se retiró.} file {{row} se retiró con todas sus filas.} correction {La corrección se deshizo: vuelve a valer lo anterior.} withdrawal {La retirada se deshizo.} other {{row} se retiró.}} No se borra nada.',
  'cli/withdraw/undo': 'Para deshacerlo:\n    thrum withdraw {fact} --reason TEXTO',

  'cli/settle/usage': 'Para resolver una celda, nombrar su fila, su columna o tipo, y su valor.',
  'cli/settle/usage/remedy':
    '    thrum settle counts.csv:5 "honey bee" 3\nEn lugar del número vale también missing, o not-looked-for. Lo pendiente se ve con:\n    thrum settle',
  'cli/settle/contested':
    '{cells, plural, one {Una celda se corrigió} other {# celdas se corrigieron}} varias veces sin que una corrección supiera de la otra. Mientras tanto vale la última:',
  'cli/settle/choices': '{row} "{column}" ({told}): {choices}.',
  'cli/settle/choice': '{to}, por {by}, el {at}',
  'cli/settle/cells': '{cells, plural, one {Una celda espera} other {# celdas esperan}} la decisión de una persona:',
  'cli/settle/cell': '{row} "{column}" ({told}): «{written}» queda pendiente.',
  'cli/settle/cell-because': '{row} "{column}" ({told}): «{written}» ({because}).',
  'cli/settle/rows': '{rows, plural, one {Una fila queda pendiente entera} other {# filas quedan pendientes enteras}}:',
  'cli/settle/row':
    '{row}: {because}. Se decide en el mapeo que está junto al archivo ("lines", "duplicates"); después, importar de nuevo el mismo archivo.',
  'cli/settle/more': '{more, plural, one {una más} other {# más}}; --json las muestra todas.',
  'cli/settle/none': 'No queda nada pendiente.',
  'cli/settle/how':
    'Para resolver una:\n    thrum settle {row} "{column}" NÚMERO\nEn lugar de NÚMERO vale también missing (se contó y el número se perdió), o not-looked-for. Hasta entonces no entra en ninguna estimación.',
  'cli/settle/how-contested':
    'Para decidir una:\n    thrum correct {row} "{column}" VALOR --reason TEXTO\nPara ver ambas:\n    thrum history {row}',
  'cli/settle/done': '{row}, {column}: {from} queda resuelto como {to}.',

  'cli/history/usage': 'El historial es de una fila o, si se quiere, de una columna o un tipo suyo.',
  'cli/history/usage/remedy': '    thrum history counts.csv:14',
  'cli/history/row': '{row} ({told})',
  'cli/history/fact': '{row}',
  'cli/history/line': 'Tal como llegó, línea {line} de {file}: {cells}',
  'cli/history/cell': '{column}: {brought} en el archivo',
  'cli/history/corrected': '{to}, por {by}, {at}: «{reason}»{taken, select, yes {; se retiró} other {}} [{fact}]',
  'cli/history/settled': '{to}, resuelto por {by}, {at}{taken, select, yes {; se retiró} other {}} [{fact}]',
  'cli/history/by-file':
    '{to}, por el archivo enmendado {file}, que importó {by}, {at}{taken, select, yes {; se retiró} other {}} [{fact}]',
  'cli/history/contested':
    'No todas estas correcciones sabían unas de otras. Mientras tanto vale {stands}. Para decidir:\n    thrum correct {row} "{column}" VALOR --reason TEXTO',
  'cli/history/stands': 'Vale: {stands}.',
  'cli/history/never': 'Aquí nunca se corrigió nada.',
  'cli/history/withdrawn': 'Lo retiró {by}, {at}: «{reason}»{taken, select, yes {; se deshizo} other {}} [{fact}]',
  'cli/history/gone': 'Está retirado, y no entra en ninguna respuesta.',

  'cli/forget/usage': 'Se puede olvidar a una persona, la ubicación de un campo, o un hecho.',
  'cli/forget/usage/remedy':
    '    thrum forget observer "NOMBRE" --because "a petición suya"\n    thrum forget place CAMPO --because TEXTO\n    thrum forget fact ID --because TEXTO',
  'cli/forget/stands': '«{name}» figura en:',
  'cli/forget/nowhere': '«{name}» no figura en ninguna parte de este proyecto. Otras copias lo olvidarán al fusionar esta.',
  'cli/forget/words': '  {where}, columna {column}: {number, plural, one {una palabra} other {# palabras}}',
  'cli/forget/facts': '  {number, plural, one {un hecho} other {# hechos}} del tipo {where}',
  'cli/forget/stays': 'Las mismas palabras figuran como tipo, cultivo o algo semejante, y ahí se quedan: {words}.',
  'cli/forget/files':
    '{count, plural, one {El archivo original se eliminará} other {Los archivos originales se eliminarán}} del proyecto: {files}. También se eliminará cualquier otro archivo de texto suyo que lo contenga.',
  'cli/forget/for-ever':
    'Esto no se puede deshacer. {what, select, observer {Lo que queda en su lugar es lo mismo en todas las copias, para que un observador siga siendo uno solo. Quien tenga el proyecto y adivine el nombre todavía podrá comprobar si acertó.} place {El campo se queda, sin su punto ni su contorno.} other {Solo queda constancia de que allí había algo.}}',
  'cli/forget/accept': '¿Olvidarlo? (sí o no)',
  'cli/forget/not-yet':
    'Todavía no se ha olvidado nada. Si es correcto:\n    thrum forget {what} "{name}" --because TEXTO --in {project} --accept',
  'cli/forget/done':
    '{what, select, observer {El nombre se olvidó; en su lugar queda {instead}.} place {La ubicación de {name} se olvidó.} other {{name} se olvidó.}}',
  'cli/forget/known': 'Ya se había olvidado antes. No se añadió nada.',
  'cli/forget/dropped': '{files, plural, one {Se eliminó un archivo original} other {Se eliminaron # archivos originales}}.',
  'cli/forget/copies':
    '{copies, plural, one {También lo olvidó una copia de seguridad o un archivo conservado} other {También lo olvidaron # copias de seguridad y archivos conservados}} junto al proyecto.',
  'cli/forget/copy-left': '{file}, junto al proyecto, no pudo olvidarlo ({because}). Borrarlo si hace falta.',
  'cli/forget/elsewhere':
    'Otras copias lo olvidan al fusionar esta (comando merge). Las tablas y copias de seguridad que estén en otro lugar hay que borrarlas a mano.',

  'cli/merge/usage': 'Se fusiona una copia cada vez.',
  'cli/merge/usage/remedy': '    thrum merge other-copy.thrum --in my-project.thrum',
  'cli/merge/done':
    '{project} incorporó de {other}: {facts, plural, =0 {ningún hecho} one {un hecho} other {# hechos}}{files, plural, =0 {} one {, un archivo} other {, # archivos}}. {other} sigue como estaba.',
  'cli/merge/nothing': '{other} no tiene nada que {project} no tenga.',
  'cli/merge/counts': '{counts, plural, one {Un conteo} other {# conteos}} {more, select, yes {más} other {menos}} que antes.',
  'cli/merge/contested':
    '{cells, plural, one {Una celda se corrigió} other {# celdas se corrigieron}} en ambas copias, a valores distintos. Lo que hay que decidir se ve con:\n    thrum settle',
  'cli/merge/forgot':
    '{facts, plural, one {Había algo que olvidar, y aquí también se olvidó} other {Había # cosas que olvidar, y aquí también se olvidaron}}.',
  'cli/merge/held-back':
    '{facts, plural, one {Allí se quedó un hecho} other {Allí se quedaron # hechos}} de archivos que nadie aceptó.',

  'cli/restore/usage': 'Se restaura un proyecto cada vez.',
  'cli/restore/usage/remedy':
    '    thrum restore my-project.thrum\ny después:\n    thrum restore my-project.thrum --day 2031-05-04',
  'cli/restore/backups':
    '{count, plural, =0 {No hay ninguna copia de seguridad de {project}. Se hace una la primera vez que se escribe en un día, a partir del segundo día.} one {Una copia de seguridad de {project}:} other {# copias de seguridad de {project}:}}',
  'cli/restore/backup': '  {day}: {facts, plural, one {un hecho} other {# hechos}}, el último del {latest}; {kilobytes} kB',
  'cli/restore/unreadable': '  {day}: no se puede leer',
  'cli/restore/other': '  {day}: de otro proyecto, que antes tenía este nombre',
  'cli/restore/how': 'Para restaurar una (lo que hay ahora se conserva al lado):\n    thrum restore {project} --day {day}',
  'cli/restore/done':
    '{project} está como antes de la primera escritura del {day}, con {facts, plural, one {un hecho} other {# hechos}}.',
  'cli/restore/kept': 'Lo que había se conserva como {before}.',
  'cli/restore/missing':
    '{missing, plural, one {Uno de sus hechos no está} other {# de sus hechos no están}} en la copia de seguridad. Para {missing, plural, one {recuperarlo} other {recuperarlos}}:\n    thrum merge {before} --in {project}',

  'cli/fit/no-receipt': 'No se escribió ningún recibo: no hay ajuste que recalcular.',
  'cli/fit/usage': 'El ajuste toma una sola tabla.',
  'cli/fit/usage/remedy': '    thrum fit my.csv --response bees --family nb2 --fixed strip --random field',

  'cli/serve/usage': 'Se abre un proyecto cada vez.',
  'cli/serve/usage/remedy': '    thrum serve my-project.thrum\no sin nombre, si en esta carpeta hay un solo proyecto.',
  'cli/serve/port': 'Un puerto es un número entero hasta 65535, no «{found}».',
  'cli/serve/port/remedy': 'Quitar --port, o escribir por ejemplo --port 4800.',
  'cli/serve/address': 'La mesa de trabajo está abierta en este ordenador, y solo en él. Abrir esta dirección en un navegador:',
  'cli/serve/other-port': 'El puerto {wished} está ocupado; este es el {port}.',
  'cli/serve/already': 'Este proyecto ya está abierto en la mesa de trabajo. Abrir esta dirección en un navegador:',
  'cli/serve/end': 'Se termina con Ctrl-C.',
  'cli/serve/ended': 'Terminado. El proyecto está cerrado.',

  'cli/help/usage': 'Se pide ayuda sobre un tema cada vez.',
  'cli/help/usage/remedy': '    thrum help\no con el nombre de un comando o de una pregunta detrás.',
  'cli/help/title':
    'Thrum {version}: de conteos cronometrados de visitantes florales a una respuesta cuyo diseño se ha auditado.',
  'cli/help/line/new': 'thrum new ARCHIVO.thrum: crear un proyecto',
  'cli/help/line/import': 'thrum import TABLA.csv: importar una tabla de conteos; primero se muestra, después se acepta',
  'cli/help/line/check': 'thrum check: qué falta o no puede ser correcto en un proyecto',
  'cli/help/line/settle': 'thrum settle: qué queda pendiente; y resolverlo, celda por celda',
  'cli/help/line/correct': 'thrum correct ARCHIVO:LÍNEA COLUMNA VALOR: corregir una celda, con un motivo',
  'cli/help/line/withdraw': 'thrum withdraw ARCHIVO:LÍNEA: retirar un conteo, un archivo o una corrección',
  'cli/help/line/history': 'thrum history ARCHIVO:LÍNEA: qué se escribió en una fila, y qué fue de ello',
  'cli/help/line/forget': 'thrum forget observer NOMBRE: olvidar a una persona, una ubicación o un hecho, en todas las copias',
  'cli/help/line/merge': 'thrum merge OTRA.thrum: incorporar lo que contiene otra copia del proyecto',
  'cli/help/line/restore': 'thrum restore ARCHIVO.thrum: ver las copias de seguridad de un proyecto, o restaurar una',
  'cli/help/line/ask': 'thrum ask PREGUNTA: hacer una pregunta a un proyecto',
  'cli/help/line/fit': 'thrum fit TABLE.csv: ajustar un modelo a cualquier tabla, con campos y días sorteados',
  'cli/help/line/serve': 'thrum serve: abrir la mesa de trabajo de este proyecto en el navegador de este ordenador',
  'cli/help/line/help': 'thrum help TEMA: más sobre un comando o una pregunta',
  'cli/help/questions': 'Preguntas:',
  'cli/help/more':
    'El proyecto es el único archivo .thrum de esta carpeta, o el que se nombra con --in. Con --json todo se da en una forma para programas. Código de salida 0: hecho; 1: lo que se comprobó no se cumple; 2: uso o datos incorrectos, y no se escribió nada.',
  'cli/help/value/text': 'TEXTO',
  'cli/help/value/texts': 'TEXTO,TEXTO',
  'cli/help/value/date': 'AÑO-MES-DÍA',
  'cli/help/value/number': 'NÚMERO',
  'cli/help/ask-one': 'thrum ask {id} [opciones]',
  'cli/help/conditions':
    'Las condiciones se escriben como crop=cherry, season!=2031, date>=2031-07-20 o stage<=67; a|b significa lo uno o lo otro. Los valores de una lista se separan con comas.',
  'cli/help/option/in': '--in ARCHIVO.thrum: el proyecto, si en esta carpeta hay más de uno',
  'cli/help/option/plan':
    '--plan VISITAS.csv: sobre una tabla de visitas previstas (una línea por observación), antes de contar nada',
  'cli/help/option/figure':
    '--figure ARCHIVO.svg o ARCHIVO.png: dibujar la respuesta; si no tiene nada que dibujar, no se escribe ningún archivo y el comando termina con 2',
  'cli/help/option/figure-look': '--figure-look light|dark: para papel (lo mismo que sin esta opción) o para una pantalla oscura',
  'cli/help/option/figure-width':
    '--figure-width NÚMERO: anchura de la página de un dibujo en píxeles, 1280 sin esta opción; 390 va bien para un teléfono',
  'cli/help/option/receipt': '--receipt CARPETA: escribir las filas y un guion de R que vuelve a calcular la respuesta',
  'cli/help/option/seed': '--seed TEXTO: semilla de todo lo que se sortea; la misma semilla da la misma respuesta',
  'cli/help/option/brief': '--brief: solo el titular, lo que se puede decir y las advertencias',
  'cli/help/option/json': '--json: la forma para programas',
  'cli/help/command/new': 'thrum new ARCHIVO.thrum [--title TEXTO]\nCrea un proyecto vacío en un solo archivo.',
  'cli/help/command/import':
    'thrum import TABLA.csv [--in ARCHIVO.thrum] [--mapping MAPEO.json] [--accept]\nLee una tabla de conteos cronometrados, propone qué son sus columnas y muestra\nen qué se convierte cada fila. Nada cuenta hasta que se acepta. El mapeo se\nguarda junto a la tabla como TABLA.csv.mapping.json; se cambia allí, o aquí con:\n  --minutes 10            cada observación duró diez minutos\n  --area 20               cada parcela observada tenía 20 m2\n  --unit individuals      qué cuenta un número: individuals, visits o snapshot\n  --absent none-seen      en una tabla larga: un tipo sin fila se buscó y no se\n                          vio (o not-looked-for, o not-known)\n  --crop, --season, --observer TEXTO   lo mismo para todas las filas\n  --year 2031             para fechas escritas sin año\n  --assigned "strip=at random"\n                          cómo llegaron los niveles de algo a los campos\n  --effort "not recorded"\n                          nadie anotó cuánto se observó: solo proporciones\nUna tabla del mismo nombre (o --mends NOMBRE) se toma como versión enmendada:\nsus filas se emparejan, las celdas cambiadas pasan a ser correcciones, y solo\nse añaden las filas nuevas.\n  --key field,plot,date   las columnas que juntas nombran una observación\n  --withdraw-missing      las filas que ya no están en ella se retiran\n  --separate              es otra tabla, aunque tenga el nombre de una anterior',
  'cli/help/command/check':
    'thrum check [ARCHIVO.thrum]\nDice qué falta o no puede ser correcto, con las líneas que lo muestran y el\nremedio. Termina con 1 si hay impedimentos.',
  'cli/help/command/settle':
    'thrum settle [--in ARCHIVO.thrum]\nMuestra las celdas que esperan la decisión de una persona (un rango, un guion,\nun límite inferior), las filas que quedan pendientes enteras, y las correcciones\nque se contradicen.\nthrum settle ARCHIVO:LÍNEA COLUMNA VALOR\nResuelve una: un número, missing (se contó, y el número se perdió) o\nnot-looked-for. COLUMNA es un tipo o una columna:\n    thrum settle counts.csv:5 "honey bee" 3',
  'cli/help/command/correct':
    'thrum correct ARCHIVO:LÍNEA COLUMNA VALOR --reason TEXTO [--in ARCHIVO.thrum]\nCorrige una celda de un conteo importado. COLUMNA es un tipo (su recuento), una\ncolumna (minutes, date, stage, flowers, observer ...) o algo que se compara. Lo\nescrito antes se conserva, con quién lo cambió, cuándo y por qué. Si varios\narchivos tienen un mismo nombre, son counts.csv@1, counts.csv@2. En lugar de\nARCHIVO:LÍNEA sirve la dirección de una fila o el identificador de un hecho.\nEntre dos correcciones que no sabían la una de la otra decide una tercera.',
  'cli/help/command/withdraw':
    'thrum withdraw ARCHIVO:LÍNEA [TIPO] --reason TEXTO [--in ARCHIVO.thrum]\nRetira un conteo con sus recuentos, o solo el recuento de un tipo.\nthrum withdraw ARCHIVO --reason TEXTO\nRetira todas las filas de un archivo; después se puede volver a importar.\nthrum withdraw ID --reason TEXTO\nRetira una corrección (vuelve a valer lo anterior), una retirada, o cualquier\nhecho. No se borra nada.',
  'cli/help/command/history':
    'thrum history ARCHIVO:LÍNEA [COLUMNA] [--in ARCHIVO.thrum]\nDice cómo llegó una fila, cada corrección suya con quién, cuándo y por qué, y lo\nque vale. Los identificadores entre corchetes sirven para el comando withdraw.',
  'cli/help/command/forget':
    'thrum forget observer "NOMBRE" --because TEXTO [--accept] [--in ARCHIVO.thrum]\nQuita un nombre de todo el proyecto: tablas, notas, correcciones y los archivos\noriginales. Lo que queda en su lugar es lo mismo en todas las copias. Primero se\nmuestra.\nthrum forget place CAMPO --because TEXTO   punto y contorno de un campo\nthrum forget fact ID --because TEXTO       hecho, ARCHIVO:LÍNEA o archivo\nTambién lo olvidan las copias de seguridad que están junto al proyecto, y toda\ncopia que se fusione.',
  'cli/help/command/merge':
    'thrum merge OTRA.thrum [--in ARCHIVO.thrum]\nIncorpora lo que contiene otra copia del mismo proyecto. La otra copia solo se\nlee; haciéndolo también al revés, ambas contienen lo mismo.',
  'cli/help/command/restore':
    'thrum restore ARCHIVO.thrum\nMuestra sus copias de seguridad. Se hace una la primera vez que se escribe en un\ndía (a partir del segundo día), como backups/NOMBRE.AÑO-MES-DÍA.thrum junto al\nproyecto; se conservan las siete últimas.\nthrum restore ARCHIVO.thrum --day AÑO-MES-DÍA\nRestaura esa copia. Lo que había se conserva como\nARCHIVO.thrum.before-restore-..., y lo que tenga y no esté en la copia se\nrecupera con el comando merge.',
  'cli/help/command/ask':
    'thrum ask PREGUNTA [opciones]\nHace una pregunta a un proyecto. Sus opciones se ven con:\n    thrum help PREGUNTA',
  'cli/help/command/fit':
    'thrum fit TABLE.csv --response COLUMN --family FAMILY [options]\nAjusta un modelo a cualquier tabla. Describe; una comparación de campos enteros\nla decide la pregunta what-differs. Las listas se separan con comas; "A and B"\nune columnas.\n    thrum fit my.csv --response bees --family nb2 --fixed strip --random field\n  --family nb2            nb2, nb1 o poisson: conteos; binomial o beta-binomial:\n                          partes; gaussian: números medidos\n  --fixed "strip,strip and stage"\n                          de qué depende; "strip and stage": lo que hacen\n                          juntas, cada una por sí misma incluida\n  --random "field,field and day"\n                          grupos de filas que se parecen\n  --slope "stage by field"  una pendiente propia para cada campo; con\n                          --slope-apart, sorteada aparte de las ordenadas\n  --effort minutes        se suma su logaritmo: tasas; --offset COLUMN se suma\n                          tal cual; --trials COLUMN: el total de las partes\n  --zeros                 ceros de otro origen, con una sola probabilidad; o\n                          "--zeros-by" y columnas\n  --levels "strip=none>sown"\n                          orden de los niveles, primero la referencia; se repite\n  --as-levels year        números que son nombres\n  --compare strip         medias y pares; si no, de cada columna de niveles\n  --per 60                esfuerzo al que se refieren las medias; si no, 1\n  --by profile            límites por "profile" o "bootstrap" (--refits 1000) en\n                          vez de "wald"\n  --without "field,stage"  lo que pierde la verosimilitud sin estas\n  --nodes 15              cuadratura; --reml: verosimilitud restringida\n  --unchecked             sin las comprobaciones, que tardan como 250 ajustes\n  --receipt FOLDER        filas y un programa de R; --seed TEXT; --brief\nTermina con 1 donde ningún modelo se puede ajustar, y dice por qué.',
  'cli/help/command/serve':
    'thrum serve [ARCHIVO.thrum] [--port NÚMERO]\nAbre la mesa de trabajo solo en este ordenador, y dice su dirección, que se abre\nen un navegador. Si en esta carpeta no hay ningún proyecto, la mesa de trabajo\nofrece crear uno. El puerto es el 4711 si no se indica otro, o el siguiente que\nesté libre. Se termina con Ctrl-C.',
  'cli/help/command/help': 'thrum help [TEMA]\nDice más sobre un comando o una pregunta.',

  'cli/start/welcome':
    'Ostrel Vale, un proyecto de demostración sobre un valle inventado ({file}): cuatro cerezales y cuatro campos de girasol, la mitad de ellos con una franja floral, y 160 conteos de diez minutos en dos temporadas. Nada en él es real. Estas son sus respuestas principales, con los veredictos a los que llevan.',
  'cli/start/next':
    'Para preguntarle más:\n    thrum help what-differs\n    thrum ask what-differs --in {file} --between strip --worth 2\nCon una tabla propia:\n    thrum new my.thrum\n    thrum import counts.csv --in my.thrum',
}
