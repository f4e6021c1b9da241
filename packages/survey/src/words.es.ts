import type { Words } from '@thrum/model/ground'

/** What `survey` says to a person, in Spanish. ICU message texts by id, the same as in English. */
export const words: Words = {
  // What stops a question before it starts
  'survey/factor/unknown': 'En este proyecto no se registró nada llamado «{name}».',
  'survey/factor/unknown/remedy': 'Los conteos se pueden distinguir por: {known}.',
  'survey/factor/not-measured': '«{name}» no contiene números en estos conteos, así que no tiene pendiente.',
  'survey/factor/not-measured/remedy': 'Se midieron: {known}. Sin --step se comparan los niveles mismos.',
  'survey/factor/no-such-level': '«{level}» no es un nivel de «{name}».',
  'survey/factor/no-such-level/remedy': 'Sus niveles son: {known}.',
  'survey/condition/unreadable': 'La condición «{found}» no se puede leer.',
  'survey/condition/unreadable/remedy':
    'Escribirla como crop=cherry, season!=2031, date>=2031-07-20 o stage<=67, entre comillas.',
  'survey/condition/no-such-level': 'Ningún conteo tiene {name} «{level}».',
  'survey/condition/no-such-level/remedy': 'Lo registrado es: {known}.',
  'survey/condition/not-ordered': 'La condición sobre {name} compara con «{found}», que no es ni un número ni una fecha.',
  'survey/condition/not-ordered/remedy': 'Escribir un número, o una fecha como año-mes-día.',
  'survey/kind/unknown': 'En este proyecto no se contó ningún tipo «{name}».',
  'survey/kind/unknown/remedy': 'Los tipos y grupos son: {known}.',
  'survey/units-mixed':
    'Los conteos por los que se pregunta están en distintas unidades de conteo ({units}), que nunca deben juntarse.',
  'survey/units-mixed/remedy': 'Preguntar por una de ellas, por ejemplo --unit individuals.',
  'survey/contrast/nothing-asked': 'Una comparación necesita algo que comparar.',
  'survey/contrast/nothing-asked/remedy':
    'Indicar --between con algo registrado (strip, position, daypart, season ...), o --since con una fecha.',

  // Nuisances by name, and how they read at a level
  'survey/nuisance/date': 'fecha',
  'survey/nuisance/flowers': 'flores abiertas',
  'survey/nuisance/stage': 'estadio de floración',
  'survey/nuisance/hour': 'hora del día',
  'survey/nuisance/temperature': 'temperatura del aire',
  'survey/nuisance/observer': 'observador',
  'survey/nuisance/season': 'temporada',
  'survey/nuisance/position': 'posición de la parcela',
  'survey/reading/both': '{name}: {a} frente a {b}',
  'survey/reading/none': 'sin registrar',
  'survey/reading/date': '{value}',
  'survey/reading/stage': '{value, number, ::.0}',
  'survey/reading/hour': '{value, number, ::.0} h',
  'survey/reading/temperature': '{value, number, ::.0} °C',
  'survey/reading/observer': '{value, number, ::scale/100 .}\u00a0%',
  'survey/reading/season': '{value, number, ::scale/100 .}\u00a0%',
  'survey/reading/position': '{value, number, ::scale/100 .}\u00a0%',
  'survey/reading/change/date': '{value, number, ::.0} días más tarde',
  'survey/reading/change/stage': '{value, number, ::.0} códigos más avanzado',
  'survey/reading/change/hour': '{value, number, ::.0} h más tarde',
  'survey/reading/change/temperature': '{value, number, ::.0} °C más cálido',
  'survey/reading/change/observer': 'proporción cambiada en {value, number, ::scale/100 .}\u00a0%',
  'survey/reading/change/season': 'proporción cambiada en {value, number, ::scale/100 .}\u00a0%',
  'survey/reading/change/position': 'proporción cambiada en {value, number, ::scale/100 .}\u00a0%',

  // Findings
  'survey/audit/tangled/block/lost':
    '{levelA} y {levelB} difieren en {nuisance} de la misma manera en todas partes ({readings}). Lo que se ve puede ser lo uno o lo otro, y ningún análisis de estos conteos puede decir cuál.',
  'survey/audit/tangled/block':
    '{levelA} y {levelB} difieren en {nuisance} casi en todas partes ({readings}). Queda demasiado poco para separar lo uno de lo otro.',
  'survey/audit/tangled/warn':
    'Confusión parcial de {nuisance} con {levelA} frente a {levelB} ({readings}): separarlos vuelve la comparación {inflation, number, ::.0} veces menos segura. Se muestra con ajuste y sin él.',
  'survey/audit/tangled/warn/lost':
    '{levelA} y {levelB} difieren en {nuisance} de la misma manera en todas partes ({readings}). Esto solo se cancela si ambos tipos responden a ello por igual.',
  'survey/audit/tangled/note':
    'Ligera confusión de {nuisance} con {levelA} frente a {levelB} ({readings}); el resultado principal se ajusta por ello donde es posible.',
  'survey/audit/tangled/blocks':
    'Cada bloque ({blocks}) tiene un solo nivel, así que la comparación pedida es lo mismo que una comparación de bloques.',
  'survey/audit/no-control':
    'No hay control: {fields, plural, one {el campo se observó} other {los # campos se observaron}} antes y después, y no se observó ningún campo en el que nada cambiara. Cualquier otra cosa que cambiara en ese tiempo se ve igual.',
  'survey/audit/not-checked': 'No se registró en todos los campos, así que no se pudo comprobar: {nuisances}.',
  'survey/audit/everything-differed/season':
    'Una temporada es todo lo que fue distinto en ella: tiempo, floración, vecinos, observadores.',
  'survey/audit/everything-differed/date':
    'Una fecha es todo lo que fue distinto en ella: estadio de floración, tiempo, horas, observadores.',
  'survey/audit/not-replicated/within/block':
    '{fields, plural, =0 {Ningún campo tiene} one {Solo un campo tiene} other {Solo # campos tienen}} ambos niveles. Los conteos de un campo son repeticiones de ese campo, no de lo que se pregunta; hacen falta al menos tres campos.',
  'survey/audit/not-replicated/within/warn':
    'Solo {fields} campos tienen ambos niveles: el intervalo es ancho, y un solo campo atípico puede inclinarlo.',
  'survey/audit/not-replicated/between/block':
    'Campos insuficientes: {arms}. Los conteos de un campo son repeticiones de ese campo, no de lo que se pregunta; hacen falta al menos tres campos en cada nivel.',
  'survey/audit/not-replicated/between/warn':
    'Pocos campos: {arms}. El intervalo es ancho, y un solo campo atípico puede inclinarlo.',
  'survey/audit/not-replicated/arm': '{fields, plural, =0 {ninguno} one {uno} other {#}} con {level}',
  'survey/audit/hives-unknown':
    'Nadie registró dónde había colmenas, así que no se sabe si las mismas abejas trabajaron en ambos lados.',
  'survey/audit/same-bees-hives/moved/block':
    'Las colmenas pasaron de {from, number, ::.} m a {to, number, ::.} m. A esa distancia las abejas melíferas vuelan de todos modos (su radio de vuelo en esta temporada: {range, number, ::.} m): la exposición a las colmenas cambia solo por un factor de {fold, number, ::.0}, menos que el cambio por un factor de {worth, number} por el que se pregunta. Antes y después vinieron en gran parte las mismas abejas.',
  'survey/audit/same-bees-hives/moved/warn':
    'Las colmenas pasaron de {from, number, ::.} m a {to, number, ::.} m; la exposición a ellas cambia por un factor de {fold, number, ::.0} (radio de vuelo en esta temporada: {range, number, ::.} m). Parte de las abejas vino tanto antes como después: el efecto verdadero es al menos este.',
  'survey/audit/same-bees-hives/levels/block':
    'Tanto {levelA} como {levelB} están al alcance de las mismas colmenas: la exposición de un lado es el {percent, number, ::.}\u00a0% de la del otro, más próxima que la diferencia por un factor de {worth, number} por la que se pregunta.',
  'survey/audit/same-bees-hives/levels/warn':
    'Las colmenas alcanzan también al control: su exposición es el {percent, number, ::.}\u00a0% de la del otro lado. El efecto verdadero es al menos este.',
  'survey/audit/hangs-on-range':
    'Esto depende de hasta dónde vuelan las abejas (colmenas más cercanas a {from, number, ::.} m y {to, number, ::.} m): con su radio de vuelo de primavera, {spring}; de verano, {summer}; de otoño, {autumn}.',
  'survey/audit/hangs-on-range/none': 'los lados están separados',
  'survey/audit/hangs-on-range/warn': 'comparten algunas abejas',
  'survey/audit/hangs-on-range/block': 'trabajan en ellos las mismas abejas',
  'survey/audit/places-unknown':
    'No está registrada la ubicación de {fields} de {of} campos, así que no se sabe si campos de distinto nivel comparten sus insectos.',
  'survey/audit/same-bees-fields/block':
    '{one} y {other} están a {metres, number, ::.} m de distancia y difieren en lo que se compara: los insectos cruzan de uno a otro, así que no son campos independientes.',
  'survey/audit/same-bees-fields/warn':
    '{one} y {other} están a {metres, number, ::.} m de distancia, dentro de los {range, number, ::.} m que vuelan estos insectos: una diferencia entre ellos parecerá menor de lo que es.',
  'survey/audit/hives-just-moved':
    '{counts, plural, one {Un conteo se hizo} other {# conteos se hicieron}} menos de {days} días después de colocar colmenas.',
  'survey/audit/effort-unknown/block': 'Nadie registró cuánto duró la observación de los conteos: no se puede dar ninguna tasa.',
  'survey/audit/effort-unknown/warn':
    'En {counts} de {of} conteos no están registrados los minutos de observación; quedan fuera de las tasas.',
  'survey/audit/level-without-effort/time': 'Ningún conteo con {level} tiene registrados sus minutos de observación.',
  'survey/audit/level-without-effort/flower':
    'En ningún conteo con {level} se contaron las flores abiertas: no se puede decir nada por flor.',
  'survey/audit/level-without-effort/area':
    'Ningún conteo con {level} tiene registrada la superficie observada: no se puede decir nada por superficie.',
  'survey/audit/durations-differ':
    'Las observaciones duran de {shortest, number, ::.#} a {longest, number, ::.#} minutos. Los insectos que ya están allí al comenzar hacen que las observaciones cortas parezcan más concurridas.',
  'survey/audit/flower-unknown/block': 'No se contaron las flores abiertas: no se puede dar ninguna tasa por flor.',
  'survey/audit/flower-unknown/warn':
    'En {counts} de {of} conteos no se contaron las flores abiertas; quedan fuera de las tasas por flor.',
  'survey/audit/area-unknown/block': 'No está registrada la superficie observada: no se puede dar ninguna tasa por superficie.',
  'survey/audit/area-unknown/warn':
    'En {counts} de {of} conteos no está registrada la superficie observada; quedan fuera de las tasas por superficie.',
  'survey/audit/no-open-flowers':
    'En {counts, plural, one {un conteo} other {# conteos}} no había ninguna flor abierta: allí una tasa por flor no tiene sentido.',
  'survey/audit/zeros-missing':
    'En {counts} de {of} conteos no se sabe si se buscó un tipo ausente. No se dan tasas, solo proporciones entre los avistamientos.',
  'survey/audit/waiting':
    '{cells, plural, one {Una celda espera} other {# celdas esperan}} la decisión de una persona y {cells, plural, one {queda} other {quedan}} fuera de las estimaciones.',
  'survey/audit/not-looked-for':
    '{kind}: no se buscó, o no se sabe su número, en {counts} de {of} conteos; para este tipo quedan fuera.',
  'survey/audit/saturated-counts':
    '{counts, plural, one {Una observación tiene} other {# observaciones tienen}} más de {limit} insectos de un tipo en 10 minutos: probablemente algunos se pasaron por alto.',
  'survey/audit/two-corrections':
    '{cells, plural, one {Una celda se corrigió} other {# celdas se corrigieron}} dos veces sin que una corrección supiera de la otra; vale la última.',
  'survey/audit/records-unread':
    '{records, plural, one {Un registro} other {# registros}} de este proyecto {records, plural, one {se escribió} other {se escribieron}} con una versión más nueva y aquí no se {records, plural, one {puede} other {pueden}} leer.',
  'survey/audit/outside-window/level':
    'Todos los conteos con {level} se hicieron cuando no cabía esperar que estos insectos volaran.',
  'survey/audit/outside-window/warn':
    '{counts, plural, one {Un conteo se hizo} other {# conteos se hicieron}} cuando no cabía esperar que estos insectos volaran; se dejan fuera, y se muestra con ellos y sin ellos.',
  'survey/audit/stages-apart':
    'El estadio de floración va de {low, number, ::.0} a {high, number, ::.0} entre los niveles, más de {allowed} códigos, y no se pudo ajustar por él.',
  'survey/audit/outside-bloom':
    '{counts, plural, one {Un conteo queda} other {# conteos quedan}} fuera de los estadios {from} a {to}, cuando hay pocas flores abiertas.',
  'survey/audit/one-observer-per-level/block':
    '{levelA} y {levelB} los observó una persona distinta cada uno ({percent, number, ::.}\u00a0% de visitas intercambiadas): lo que se ve pueden ser los ojos y no los campos.',
  'survey/audit/one-observer-per-level/warn':
    '{levelA} y {levelB} los observó sobre todo una persona distinta cada uno; se intercambió el {percent, number, ::.}\u00a0% de las visitas.',

  // Checks of a project, whatever is asked of it
  'survey/check/no-counts': 'Este proyecto no tiene conteos todavía.',
  'survey/check/no-counts/cure': 'Importar una tabla: thrum import counts.csv',
  'survey/check/cells-waiting':
    'En {counts} de {of} conteos un número espera la decisión de una persona; queda fuera de las estimaciones.',
  'survey/check/cells-waiting/cure':
    'Corregir el archivo e importarlo de nuevo, o decir en su mapeo qué significan las palabras escritas.',
  'survey/check/no-field':
    '{counts} de {of} conteos no nombran ningún campo; quedan fuera de toda tasa con los campos como unidad.',
  'survey/check/no-field/cure': 'Asignar la columna que nombra el campo.',
  'survey/check/no-date':
    '{counts} de {of} conteos no tienen fecha: no se puede comprobar para ellos ni la temporada ni la fecha.',
  'survey/check/no-date/cure': 'Asignar la columna de la fecha.',
  'survey/check/outside-bloom': '{counts} de {of} conteos quedan fuera de los estadios de floración 61 a 67.',
  'survey/check/outside-bloom/cure': 'Es correcto si se trataba de las flores de antes y después; si no, corregir el estadio.',
  'survey/check/kinds-mixed': 'Se cuentan juntos tipos de distinta amplitud: {kinds}.',
  'survey/check/kinds-mixed/cure': 'Decir si el más amplio es la suma de los demás o el resto; no sumarlos nunca sin saberlo.',
  'survey/check/no-stage': '{counts} de {of} conteos no tienen estadio de floración; lo sustituye la fecha.',
  'survey/check/no-stage/cure': 'Anotar el código BBCH en cada visita.',
  'survey/check/no-flowers':
    '{counts} de {of} conteos no tienen contadas las flores abiertas: nada se puede decir de ellos por flor.',
  'survey/check/no-flowers/cure': 'Contar las flores abiertas en cada parcela observada.',
  'survey/check/no-weather':
    '{counts} de {of} conteos no tienen ni temperatura ni viento: no se sabe si los insectos podían volar.',
  'survey/check/no-weather/cure': 'Anotar temperatura, viento y nubosidad en cada visita.',
  'survey/check/impossible-times':
    '{counts, plural, one {Un conteo termina} other {# conteos terminan}} antes de {counts, plural, one {su comienzo} other {su comienzo}}.',
  'survey/check/impossible-times/cure': 'Corregir el comienzo o el final.',
  'survey/check/entered-twice':
    '{counts} conteos comparten campo, parcela, observador, fecha y comienzo con otro: quizá se introdujeron dos veces.',
  'survey/check/entered-twice/cure': 'Revisarlos y retirar uno de cada dos.',
  'survey/check/unit-not-said': 'En {counts} de {of} conteos nadie dijo qué cuenta cada unidad del número: individuos o visitas.',
  'survey/check/unit-not-said/cure': 'Decirlo en el mapeo del archivo ("unit": individuals, visits o snapshot).',
  'survey/check/no-place': '{counts} de {of} conteos están en campos cuya ubicación no está registrada.',
  'survey/check/no-place/cure': 'Registrar un punto o un contorno de cada campo.',

  // Cures
  'survey/cure/controls':
    'Observar al menos tres campos en los que nada cambie durante las mismas fechas, o comparar tres campos con ello y tres sin ello los mismos días.',
  'survey/cure/same-days-both-arms': 'Visitar campos con y sin cambio los mismos días, antes y después.',
  'survey/cure/levels-in-each-block': 'Dar a cada bloque al menos un campo de cada nivel.',
  'survey/cure/record-them': 'Registrarlo en cada visita.',
  'survey/cure/between/date': 'Visitar campos de todos los niveles los mismos días.',
  'survey/cure/between/stage':
    'Visitar campos de todos los niveles en los mismos estadios de floración; bastarían dos visitas más a cada campo en días comunes.',
  'survey/cure/between/hour': 'Cambiar el orden de las visitas de un día a otro, para que cada nivel se vea temprano y tarde.',
  'survey/cure/between/temperature': 'Visitar campos de todos los niveles los mismos días, frescos y cálidos.',
  'survey/cure/between/observer': 'Hacer que cada observador observe todos los niveles con la misma frecuencia.',
  'survey/cure/between/season': 'Observar campos de todos los niveles en todas las temporadas.',
  'survey/cure/between/position': 'Poner las parcelas en las mismas posiciones en campos de todos los niveles.',
  'survey/cure/within/date': 'Observar ambos niveles de un campo los mismos días.',
  'survey/cure/within/stage': 'Observar ambos niveles de un campo en el mismo estadio de floración.',
  'survey/cure/within/hour': 'Cambiar el orden de los dos dentro de un campo de un día a otro.',
  'survey/cure/within/temperature': 'Observar ambos niveles de un campo uno tras otro, en orden alterno.',
  'survey/cure/within/observer': 'Hacer que el mismo observador observe ambos niveles de un campo.',
  'survey/cure/within/season': 'Observar ambos niveles en todas las temporadas.',
  'survey/cure/within/position': 'Observar ambos niveles en cada posición de parcela.',
  'survey/cure/more-fields': '{more, plural, one {Un campo más} other {# campos más}} con ambos niveles.',
  'survey/cure/more-fields-in': 'Más campos: {each}.',
  'survey/cure/fields-with': '{more, plural, one {uno} other {#}} con {level}',
  'survey/cure/look-for-hives':
    'Preguntar a todos los propietarios dónde hay colmenas en un radio de 3 km, y desde cuándo hasta cuándo.',
  'survey/cure/hives-far':
    'Comparar épocas con colmenas cerca y épocas sin ninguna en un radio de 3 km, en tres campos o más, con campos que conserven las suyas.',
  'survey/cure/controls-out-of-range': 'Elegir campos de control fuera del alcance de las colmenas (3 km y más).',
  'survey/cure/record-places': 'Registrar un punto o un contorno de cada campo.',
  'survey/cure/fields-further-apart': 'Elegir campos separados al menos {range, number, ::.} m, de borde a borde.',
  'survey/cure/wait-after-move': 'Esperar {days} días después de colocar colmenas.',
  'survey/cure/record-minutes': 'Anotar el comienzo y el final, o los minutos de observación, de cada conteo.',
  'survey/cure/one-duration': 'Mantener una misma duración en todas las observaciones.',
  'survey/cure/count-flowers':
    'Contar las flores abiertas (o las inflorescencias, y las flores de 20 de ellas) en cada parcela observada.',
  'survey/cure/record-area': 'Registrar la superficie observada de cada parcela.',
  'survey/cure/say-what-absent-means':
    'Averiguar si los observadores buscaron todos los tipos en todas las observaciones, e importar el archivo de nuevo con esa respuesta.',
  'survey/cure/settle-cells': 'Revisar las celdas pendientes y resolverlas.',
  'survey/cure/smaller-plots': 'Observar una parcela más pequeña, o menos tipos a la vez.',
  'survey/cure/settle-corrections': 'Revisar ambas correcciones y decidir.',
  'survey/cure/newer-thrum': 'Abrir el proyecto con la versión más nueva.',
  'survey/cure/count-in-window':
    'Contar cuando haga suficiente calor (de 13 a 15 °C y más), sin lluvia, sin demasiado viento, entre las 10 y las 16 h solares.',
  'survey/cure/same-stage': 'Contar los niveles en estadios separados por no más de cuatro códigos.',
  'survey/cure/rotate-observers': 'Hacer que los observadores intercambien los niveles de una visita a otra.',
}
