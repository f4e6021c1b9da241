import type { Words } from '@thrum/model/ground'

/** What all questions share, in Spanish. ICU message texts by id, the same as in English. */
export const words: Words = {
  text: '{text}',
  'questions/headline/with-notes': '{main} {notes}',

  // What stops a question
  'questions/no-counts-yet': 'Este proyecto no tiene conteos todavía.',
  'questions/no-counts-yet/remedy': 'Importar primero una tabla: thrum import counts.csv',
  'questions/no-counts-selected': 'Ningún conteo cumple estas condiciones; el proyecto tiene {of}.',
  'questions/no-counts-selected/remedy': 'Relajar --where, --field, --crop o --season.',
  'questions/slope-relative': 'La pendiente de un conteo relativo no se calcula todavía.',
  'questions/slope-relative/remedy': 'Quitar --against, o comparar niveles sin --step.',
  'questions/slope-since': 'Una pendiente y una comparación de antes y después no se pueden pedir a la vez.',
  'questions/slope-since/remedy': 'Quitar --since o --step.',
  'questions/against-itself': '«{kind}» no se puede comparar consigo mismo.',
  'questions/against-itself/remedy': 'Nombrar otro tipo con --against.',
  'questions/one-level': 'No hay nada que comparar: «{factor}» tiene un solo nivel («{level}») en estos conteos.',
  'questions/one-level/remedy': 'Relajar las condiciones, o comparar otra cosa.',
  'questions/no-levels': 'En estos conteos no hay nada registrado de «{factor}».',
  'questions/no-levels/remedy': 'Relajar las condiciones, o distinguir los conteos por otra cosa.',
  'questions/worth-needed': 'Hay que decir primero con qué diferencia valdría la pena actuar. No hay un valor predeterminado.',
  'questions/worth-needed/remedy':
    'Añadir --worth y una razón; aquí se sugiere: --worth {suggested, number} (una diferencia menor contaría entonces como demasiado pequeña para actuar).',
  'questions/two-kinds-needed': 'Para comparar tipos hay que nombrar dos o más.',
  'questions/two-kinds-needed/remedy':
    'Por ejemplo --levels "honey bee,bumble bee", con la referencia en primer lugar. Tipos: {known}.',

  'questions/not-of-kinds': 'Los tipos de las mismas observaciones no se comparan con {options}.',
  'questions/not-of-kinds/remedy':
    'Quitar {options}; o comparar algo que no sean tipos, y nombrar un tipo con --kinds y el otro con --against.',

  // Options
  'questions/option/field': 'solo estos campos',
  'questions/option/crop': 'solo estos cultivos',
  'questions/option/season': 'solo estas temporadas',
  'questions/option/where': 'solo los conteos que cumplen todo esto, p. ej. "stage<=67"',
  'questions/option/except': 'dejar fuera los conteos que cumplen todo esto',
  'questions/option/unit': 'solo los conteos en esta unidad de conteo',
  'questions/option/window': 'dejar fuera los conteos hechos cuando los insectos no podían volar (in), o conservarlos (all)',
  'questions/option/per': 'tasa por tiempo observado, por flor abierta o por superficie',
  'questions/option/kinds': 'tipos que comparar, cada uno por sí; sin esto, todos los tipos juntos',
  'questions/option/kinds-each': 'tipos que mostrar; sin esto, todos los tipos',
  'questions/option/by': 'distinguirlos por algo registrado (field, stage, season ...)',
  'questions/option/between': 'qué comparar: strip, position, daypart, season, kind, o cualquier cosa registrada',
  'questions/option/levels': 'los niveles que comparar, la referencia en primer lugar',
  'questions/option/step':
    'una sola pendiente de un nivel medido por cada paso de este tamaño (distancias y colmenas: tantas veces más)',
  'questions/option/since': 'antes y después de esta fecha; con --between, también frente a campos sin el cambio',
  'questions/option/against': 'conteo relativo a este tipo en las mismas observaciones',
  'questions/option/worth': 'la razón más pequeña con la que vale la pena actuar',
  'questions/option/expect': 'la dirección que se esperaba de antemano',
  'questions/option/looks': 'con cuántos otros estados de los datos se había mirado antes la respuesta',
  'questions/option/worthSet': 'si esa razón se fijó antes de mirar la respuesta por primera vez',

  // Verdicts and directions
  'questions/verdict/shown': 'mostrado',
  'questions/verdict/alike': 'similar',
  'questions/verdict/leaning': 'inclinado',
  'questions/verdict/unsettled': 'sin resolver',
  'questions/verdict/design-blocks': 'impedido por el diseño',
  'questions/direction/more': 'más',
  'questions/direction/fewer': 'menos',
  'questions/headline/worth-after-look':
    'La razón más pequeña con la que vale la pena actuar ({worth, number}) se fijó después de haber mirado la respuesta.',

  // Nouns
  'questions/noun/visitors': 'visitantes',
  'questions/noun/visits': 'visitas',
  'questions/noun/watch/time': '{thing} por minuto',
  'questions/noun/watch/flower': '{thing} por flor y minuto',
  'questions/noun/watch/area': '{thing} por superficie y minuto',
  'questions/noun/scan/time': '{thing} por barrido',
  'questions/noun/scan/flower': '{thing} por flor',
  'questions/noun/scan/area': '{thing} por superficie',
  'questions/noun/relative': 'visitantes por cada {other}',
  'questions/measure/time': 'por tiempo observado',
  'questions/measure/flower': 'por flor',
  'questions/measure/area': 'por superficie',
  'questions/unit/ratio': 'veces',
  'questions/unit/times': 'veces',
  'questions/unit/share': 'de todos los visitantes',
  'questions/unit/share-sightings': 'entre los avistamientos',
  'questions/unit/rate/time': 'por hora',
  'questions/unit/rate/flower': 'por 100 flores y hora',
  'questions/unit/rate/area': 'por 100 m² y hora',
  'questions/unit/scan/time': 'por barrido',
  'questions/unit/scan/flower': 'por 100 flores',
  'questions/unit/scan/area': 'por 100 m²',
  'questions/contrast/levels': '{factor}',
  'questions/contrast/before-after': 'antes y después',
  'questions/cause/level': '{level}',
  'questions/slope/base': '{name} sin cambio',
  'questions/slope/step': '{step, number} más de {name}',
  'questions/slope/fold': '{step, number} veces {name}',
  'questions/cause/change': 'el cambio del {date}',
  'questions/contrast/before-after-control': 'antes y después, según {factor}',

  // Why an answer is blocked, shortly
  'questions/reason/tangled': 'no se puede separar de {nuisances}',
  'questions/reason/tangled-blocks': 'cada bloque tiene un solo nivel',
  'questions/reason/no-control': 'no hay control',
  'questions/reason/not-replicated': 'campos insuficientes',
  'questions/reason/same-bees-hives': 'la distancia de las colmenas cambia demasiado poco: vinieron las mismas abejas',
  'questions/reason/same-bees-fields': 'hay campos demasiado cercanos entre sí',
  'questions/reason/effort-unknown': 'no están registrados los minutos de observación',
  'questions/reason/flowers-not-counted': 'no se contaron las flores',
  'questions/reason/area-unknown': 'no está registrada la superficie observada',
  'questions/reason/zeros-missing': 'no se sabe si se buscaron los tipos ausentes',
  'questions/reason/outside-window': 'todos los conteos de un nivel quedan fuera de la ventana meteorológica',
  'questions/reason/stages-apart': 'los estadios de floración están demasiado separados',
  'questions/reason/one-observer-per-level': 'cada nivel tuvo su propio observador',
  'questions/reason/refused': 'insectos o campos insuficientes',
  'questions/refusal/few-fields': 'hay {fields, plural, =0 {cero campos} one {un solo campo} other {solo # campos}} con {level}',
  'questions/refusal/few-pairs':
    '{fields, plural, =0 {ningún campo tiene} one {solo un campo tiene} other {solo # campos tienen}} ambos niveles',
  'questions/refusal/no-freedom': 'no hay campos suficientes para lo que se debe ajustar',
  'questions/refusal/lost': 'los niveles no se pueden separar de los bloques',
  'questions/refusal/no-scatter': 'todos los campos dicen exactamente lo mismo, así que se desconoce su dispersión',
  'questions/refusal/level-without-insects': 'no se contó ninguno con {level}',
  'questions/refusal/mostly-zero': 'más de la mitad de los totales por campo y nivel son cero ({zeros} de {totals})',
  'questions/refusal/beyond-range':
    'los campos (o conteos) difieren en {name} mucho menos que el paso pedido; una pendiente no se puede llevar tan lejos de lo que se midió',
  'questions/refusal/few-in-level':
    'insectos insuficientes: {insects, plural, one {uno} other {#}} con {level} en todos los campos juntos, el mínimo es {least, number}',
  'questions/refusal/few-insects':
    'insectos insuficientes: {mean, number, ::.0} por campo y nivel en promedio (antes y después con controles: en el más pobre de los cuatro grupos), el mínimo es {least, number}',

  // Estimates
  'questions/estimate/ratio': '{kind}: {levelB} / {levelA}',
  'questions/estimate/ratio-together': '{kind}: {levelB} / {levelA}, nivel para todas las comparaciones en conjunto',
  'questions/estimate/ratio-90': '{kind}: {levelB} / {levelA}, 90\u00a0%',
  'questions/estimate/ratio-without': '{kind}: {levelB} / {levelA}, sin ajustar por {nuisances}',
  'questions/estimate/ratio-described': '{kind}: {levelB} / {levelA}, como se contó en estos campos, sin atribuirlo a nada',
  'questions/estimate/ratio-unadjusted': '{kind}: {levelB} / {levelA}, sin ajustar',
  'questions/estimate/ratio-watches': '{kind}: {levelB} / {levelA}, solo estas observaciones',
  'questions/estimate/variant/window-all': '{kind}: {levelB} / {levelA}, con los conteos fuera de la ventana meteorológica',
  'questions/estimate/variant/per-time': '{kind}: {levelB} / {levelA}, por tiempo observado',
  'questions/estimate/variant/per-area': '{kind}: {levelB} / {levelA}, por superficie',
  'questions/estimate/variant/per-flower': '{kind}: {levelB} / {levelA}, por flor',
  'questions/estimate/rate-at': '{kind}, {level}: {total} contados, solo estas observaciones',
  'questions/estimate/rate': '{kind}{named, select, yes {, {group}} other {}}',
  'questions/estimate/rate-watches': '{kind}{named, select, yes {, {group}} other {}}, solo estas observaciones',
  'questions/estimate/rate-mean': '{kind}{named, select, yes {, {group}} other {}}, media simple de los campos',
  'questions/estimate/share': '{kind}{named, select, yes {, {group}} other {}}, proporción',
  'questions/estimate/share-at': '{kind}, {level}: {part} de {whole}',
  'questions/estimate/relative': '{kind} por cada otro visitante: {levelB} / {levelA}',
  'questions/estimate/relative-unadjusted': '{kind} por cada otro visitante: {levelB} / {levelA}, sin ajustar',
  'questions/estimate/kinds': '{kindB} por cada {kindA}',
  'questions/estimate/inflation': '{nuisances} con {levelB} frente a {levelA}',

  // Methods by name
  'questions/method/field-t': 't a nivel de campo sobre logaritmos de tasas',
  'questions/method/field-t-adjusted': 't a nivel de campo sobre logaritmos de tasas, con ajuste',
  'questions/method/thinned': 'contraste a nivel de campo de conteos raleados a igual exposición',
  'questions/method/thinned-adjusted': 'contraste a nivel de campo de conteos raleados a igual exposición, con ajuste',
  'questions/method/relative-t': 't a nivel de campo sobre logaritmos de conteos relativos',
  'questions/method/relative-t-adjusted': 't a nivel de campo sobre logaritmos de conteos relativos, con ajuste',
  'questions/method/poisson-watches': 'intervalo exacto de Poisson de estas observaciones',
  'questions/method/exact-ratio': 'razón condicional exacta de estas observaciones',
  'questions/method/odds-exact': 'razón de momios (odds ratio) condicional exacta de estas observaciones',
  'questions/method/odds-t': 'momios (odds) a partir de la proporción con los campos como unidad (logit-t)',
  'questions/method/odds-watches': 'momios (odds) binomiales exactos de estas observaciones',
  'questions/method/goodman': 'intervalos simultáneos de Goodman de estas observaciones',
  'questions/method/share-t': 'proporción con los campos como unidad (logit-t)',
  'questions/method/ratio-of-sums': 'tasa con los campos como unidad (razón de sumas, log-t)',
  'questions/method/mean-of-rates': 'media simple de las tasas de los campos, t',
  'questions/method/inflation': 'inflación de la varianza del contraste',

  // Choices
  'questions/choice/structure/between-fields': 'Se comparan campos: {fields} campos, un número por cada uno.',
  'questions/choice/structure/within-fields': 'Se comparan con cero las diferencias dentro de los campos: {fields} campos.',
  'questions/choice/structure/before-after':
    'Antes y después dentro de {fields, plural, one {un campo} other {# campos}}, sin control.',
  'questions/choice/structure/before-after-control': 'Se comparan los cambios de antes a después entre {fields} campos.',
  'questions/choice/blocks': 'Bloques: {blocks}.',
  'questions/choice/thinned':
    '{kinds}: pocos insectos o exposiciones desiguales desvían la t sobre logaritmos; en su lugar los totales se ralean a igual exposición, lo que está libre de ello. La t figura entre los otros análisis.',
  'questions/choice/adjusted':
    'El resultado principal se ajusta por {nuisances}, solo según el diseño; la razón sin ajustar figura al lado.',
  'questions/choice/not-adjusted/freedom': 'Sin ajustar por {nuisance}: campos insuficientes.',
  'questions/choice/not-adjusted/rank': 'Sin ajustar por {nuisance}: difiere de la misma manera en todos los campos.',
  'questions/choice/several':
    '{contrasts} comparaciones pedidas a la vez: los veredictos usan intervalos al 1 - 0,05/{contrasts} y al 1 - 0,10/{contrasts}.',
  'questions/choice/primary':
    '{kind} se declaró principal antes de contar: su veredicto se lee por sí solo, al 1 - 0,05/{contrasts}.',
  'questions/choice/early':
    'Una mirada temprana, antes de la última visita prevista: por ahora solo un intervalo del 99,9\u00a0% puede resolverlo.',
  'questions/choice/no-plan': 'Ningún plan dice cuándo termina el conteo; se da por terminado.',
  'questions/choice/measured/linear': 'Una sola pendiente sobre {name}, dada para un paso de {step, number}.',
  'questions/choice/measured/log-distance': 'Una sola pendiente sobre ln({name} + 10 m), dada para {step, number} veces más.',
  'questions/choice/measured/log-hives': 'Una sola pendiente sobre ln({name} + 0,5), dada para {step, number} veces más.',
  'questions/choice/worth':
    'Una razón de {worth, number} (o 1/{worth, number}) se toma como la más pequeña con la que vale la pena actuar.',
  'questions/choice/worth-suggested':
    'Una razón de {worth, number} se toma como la más pequeña con la que vale la pena actuar, según lo sugerido; nadie la fijó.',
  'questions/choice/rates-over-fields': 'Los campos son la unidad: la dispersión entre campos da el intervalo.',
  'questions/choice/rates-of-watches':
    'Con menos de tres campos la unidad son las observaciones, tomadas como independientes: el intervalo vale solo para estos minutos.',
  'questions/left-out/no-field':
    '{counts, plural, one {Un conteo no nombra} other {# conteos no nombran}} ningún campo; fuera del análisis.',
  'questions/left-out/no-level':
    '{counts, plural, one {Un conteo no tiene} other {# conteos no tienen}} ningún nivel registrado; fuera del análisis.',
  'questions/left-out/level-not-asked':
    '{counts, plural, one {Un conteo tiene} other {# conteos tienen}} otro nivel; fuera del análisis.',
  'questions/left-out/no-date':
    '{counts, plural, one {Un conteo no tiene} other {# conteos no tienen}} fecha; fuera del análisis.',
  'questions/left-out/field-lacks-a-level': 'Fuera del análisis por tener un solo nivel: {fields}.',
  'questions/left-out/field-holds-both-levels': 'Fuera del análisis por tener más de un nivel: {fields}.',
  'questions/left-out/no-effort':
    '{counts, plural, one {Un conteo no tiene} other {# conteos no tienen}} esfuerzo de muestreo conocido; fuera del análisis ({fields}).',
  'questions/left-out/outside-window':
    '{counts, plural, one {Un conteo se hizo} other {# conteos se hicieron}} fuera de la ventana meteorológica; fuera del análisis.',
  'questions/left-out/excepted':
    '{counts, plural, one {Un conteo quedó} other {# conteos quedaron}} fuera del análisis por --except.',

  // Checks
  'questions/check/permutation':
    '{kind}: permutación de campos ({how}) p = {p, number, ::.0000}; el menor valor que podía dar aquí es {smallest, number, ::.0000}.',
  'questions/check/permutation/exact': 'todas las disposiciones',
  'questions/check/permutation/drawn': 'disposiciones sorteadas',
  'questions/check/coverage/rates':
    'Con esta regla un intervalo contuvo el valor verdadero en el 93\u00a0% o más de los conjuntos de datos simulados en cada uno de 1191 tipos de diseño con cinco insectos o más por campo, y en el 95\u00a0% en el centro de ellos (docs/trials/calibration.md).',
  'questions/check/coverage':
    'Un intervalo así contuvo el valor verdadero en el 93,5 al 96,2\u00a0% de los conjuntos de datos simulados (144 tipos de diseño), con los rechazos que se usan aquí.',
  'questions/check/thresholds': 'Los umbrales de la auditoría son práctica común sin fuente; docs/limits.md los enumera.',
  'questions/check/holm': 'Valores p de Holm, al lado de los veredictos: {each}.',
  'questions/check/holm-one': '{kind} {p, number, ::.0000}',
  'questions/check/dispersion': '{kind}: la dispersión de las observaciones es {dispersion, number, ::.0#} veces la del azar.',

  // Cautions of the analysis
  'questions/caution/influential-visit':
    '{kind}: el veredicto ({verdict}) depende de {visits, plural, one {una visita} other {cualquiera de # visitas}}: {each}{more, plural, =0 {} other {, y # más}}.',
  'questions/caution/influential-visit/one': 'sin {field} el {date} sería: {verdict}',
  'questions/caution/influential-visit/cure':
    'Revisar estos conteos en el cuaderno de campo; con más visitas cada una pesa menos.',
  'questions/caution/hangs-on-adjustment': '{kind}: el veredicto ({verdict}) depende de por qué se ajustó: {each}.',
  'questions/caution/hangs-on-adjustment/one': 'sin ajustar por {nuisances} sería: {verdict}',
  'questions/caution/repeated-peeks':
    'Esto ya se había mirado con {looks, plural, one {otro estado} other {otros # estados}} de los datos. Cada mirada es una ocasión más de dejarse engañar por el azar.',
  'questions/caution/repeated-peeks/cure': 'Decidir de antemano qué visita es la última, y mirar entonces.',
  'questions/caution/refused': '{kind}: sin respuesta, porque {why}.',
  'questions/caution/not-adjusted': '{kind}: el resultado principal no se pudo ajustar por {nuisances}.',
  'questions/caution/not-adjusted/cure': 'Mantenerlo parejo entre los niveles, o contar más campos.',
  'questions/caution/adjustment-matters':
    '{kind}: ajustar por {nuisances} cambia la razón de {unadjusted, number, ::@@@} a {adjusted, number, ::@@@}, más que la diferencia por la que se pregunta.',
  'questions/caution/flowers-differ':
    'Los niveles difieren en flores abiertas. Una tasa por flor lo ocultaría, así que el resultado principal se da {measure}; por flor figura al lado.',
  'questions/caution/measures-disagree':
    'Contada {other}, la diferencia apunta en sentido contrario: el veredicto se queda en inclinado.',
  'questions/caution/counts-clump':
    '{kind}: las observaciones se dispersan {dispersion, number, ::.0} veces lo que daría solo el azar; el intervalo exacto es demasiado estrecho.',
  'questions/caution/counts-clump/cure': 'Tres campos o más dan un intervalo válido.',
  'questions/caution/outside-window':
    '{counts, plural, one {Un conteo se hizo} other {# conteos se hicieron}} cuando no cabía esperar que estos insectos volaran; fuera del análisis.',
  'questions/caution/kinds-not-replicated/block':
    'Hay {fields, plural, =0 {cero campos} one {un solo campo} other {solo # campos}}: lo que se contó vale solo para estas observaciones.',
  'questions/caution/kinds-not-replicated/warn':
    'Solo {fields} campos: el intervalo es ancho, y un solo campo atípico puede inclinarlo.',
  'questions/caution/kinds-not-replicated/cure': '{more, plural, one {Un campo más} other {# campos más}}.',

  // What may be said, whatever the question
  'questions/can-say/counted': 'Contamos {kind} en {fields, plural, one {un campo} other {# campos}}: {each}.',
  'questions/can-say/counted-at': '{level}: {total} ({watches, plural, one {una observación} other {# observaciones}})',
  'questions/can-say/shares-watches':
    'De todos los {among, select, sightings {avistamientos} other {visitantes contados}} ({level}), solo en estas observaciones: {each}.',
  'questions/can-say/shares-fields':
    'De todos los {among, select, sightings {avistamientos} other {visitantes contados}} ({level}), con los campos como unidad: {each}.',
  'questions/can-say/share':
    '{kind} {share, number, ::scale/100 @@}\u00a0% (de {low, number, ::scale/100 @@}\u00a0% a {high, number, ::scale/100 @@}\u00a0%)',
  'questions/can-say/relative-watches':
    'En estas observaciones, la frecuencia de {kind} por cada otro visitante fue de {ratio, number, ::@@@} veces ({levelB} frente a {levelA}; intervalo del 95\u00a0%: {low, number, ::@@@} a {ends, select, open {sin límite} other {{high, number, ::@@@}}}). Lo que reduce por igual todos los tipos se cancela aquí; los tipos pueden responder de manera distinta.',
  'questions/can-say/relative-fields':
    'En {fields} campos, la frecuencia de {kind} por cada otro visitante fue de {ratio, number, ::@@@} veces ({levelB} frente a {levelA}; intervalo del 95\u00a0%: {low, number, ::@@@} a {ends, select, open {sin límite} other {{high, number, ::@@@}}}){adjusted, select, yes {, con ajuste por {nuisances}; según lo contado, {plain, number, ::@@@} veces} other {}}. Lo que reduce por igual todos los tipos se cancela aquí; los tipos pueden responder de manera distinta.',
  'questions/can-say/no-gain/more':
    '{kind}: ningún aumento con el que valga la pena actuar con {levelB} (no se excluye un descenso).',
  'questions/can-say/no-gain/fewer':
    '{kind}: ningún descenso con el que valga la pena actuar con {levelB} (no se excluye un aumento).',

  // What may not be said
  'questions/cannot-say/made-the-difference': 'Que {cause} haya supuesto una diferencia para {kind}.',
  'questions/cannot-say/no-effect': 'Que {cause} no tenga efecto sobre {kind}.',
  'questions/cannot-say/no-difference':
    'Que {kind} tenga la misma frecuencia con {levelA} y con {levelB}: el intervalo es demasiado ancho para eso.',
  'questions/cannot-say/a-difference': 'Que {kind} difiera entre {levelA} y {levelB}.',
  'questions/cannot-say/shown': 'Que se haya mostrado una diferencia en {kind} entre {levelA} y {levelB}.',
  'questions/cannot-say/exactly-equal': 'Que {kind} tenga exactamente la misma frecuencia con {levelA} y con {levelB}.',
  'questions/cannot-say/everywhere': 'Que {cause} haga lo mismo a {kind} en otros cultivos, regiones o temporadas.',
  'questions/cannot-say/proved': 'Que esté probado para {kind}, o que nada más pueda haber cambiado junto con {cause}.',
  'questions/cannot-say/because-of': 'Que {kind} difiera a causa de {cause}: los niveles no se asignaron al azar.',

  // Next
  'questions/next/enough':
    '{kind}: el intervalo es lo bastante estrecho para una razón de {worth, number}; contar más diría el tamaño con más exactitud y cambiaría poco más.',
  'questions/next/more-fields':
    '{kind}: con aproximadamente {more, plural, one {un campo más como estos} other {# campos más como estos}} ({all} en total) se resolvería{minutes}',
  'questions/next/not-in-fields-like-these':
    '{kind}: no se puede resolver contando en campos como estos (harían falta más de {cap}){minutes}',
  'questions/next/minutes-too': '; más minutos en los mismos campos podrían lograrlo.',
  'questions/next/minutes-not': '; más minutos en los mismos campos no lo lograrían.',
  'questions/next/slope': '{kind}: más campos, sobre todo con {name} bajo y alto, son lo que más estrecha una pendiente.',
  'questions/next/settled': '{kind}: resuelto para lo que se preguntó; las horas rinden más en otra parte.',
  'questions/next/refused/no-freedom': '{kind}: más campos, o menos diferencias entre ellos por las que ajustar.',
  'questions/next/refused/lost': '{kind}: dar a cada bloque al menos un campo de cada nivel.',
  'questions/next/refused/no-scatter': '{kind}: contar más tiempo o en más campos, para que se vea la dispersión entre campos.',
  'questions/next/refused/level-without-insects':
    '{kind}: contar más tiempo en el nivel sin ninguno, o preguntar por tipos contados en conjunto.',
  'questions/next/refused/mostly-zero':
    '{kind}: observar más tiempo, o parcelas más grandes, o preguntar por tipos contados en conjunto.',
  'questions/next/refused/beyond-range': '{kind}: pedir un --step menor, o añadir campos que difieran más.',
  'questions/next/refused/few-in-level':
    '{kind}: observar más tiempo, o parcelas más grandes, o preguntar por tipos contados en conjunto.',
  'questions/next/refused/few-insects':
    '{kind}: observar más tiempo, o parcelas más grandes, o preguntar por tipos contados en conjunto.',

  // Figures
  'questions/figure/ratios': 'Razones y sus intervalos; la banda contiene razones demasiado pequeñas para actuar',
  'questions/figure/rates': 'Tasas campo por campo',
  'questions/figure/kinds': 'Tipos en las mismas observaciones',
  'questions/figure/visit-rates': 'Tasas por tipo',
  'questions/figure/visit-rates-by-field': 'Tasas campo por campo',
  'questions/figure/shares': 'Proporciones por tipo',
  'questions/figure/strips/date': 'Dónde se sitúan los niveles en la fecha',
  'questions/figure/strips/stage': 'Dónde se sitúan los niveles en el estadio de floración',
  'questions/figure/strips/hour': 'Dónde se sitúan los niveles en la hora del día',
  'questions/figure/strips/temperature': 'Dónde se sitúan los niveles en la temperatura',
}
