import type { Words } from '@thrum/model/ground'

/** What is said of a fit, and of what could not be fitted, in Spanish. ICU message texts by id. */
export const words: Words = {
  'questions/fit/together': '{columns} a la vez',
  'questions/fit/levels-together': '{levels}',
  'questions/fit/part/first': 'todo en la referencia',
  'questions/fit/part/level': '{column}: {level}',
  'questions/fit/part/number': '{column} (+1)',
  'questions/fit/part/together': '{parts}',
  'questions/fit/pair': '{of} frente a {against}',
  'questions/fit/held': '{column} en {value}',
  'questions/fit/per-effort': 'por {per, number} de {effort}',

  'questions/fit/about':
    '{response} en {rows, plural, one {una fila} other {# filas}}, {family}{zeros, select, some {, con ceros de otro origen} other {}}: depende {fixed, plural, =0 {solo de su media} other {de {terms}}}{random, plural, =0 {} other {; {groupings} se sortean}}.',
  'questions/fit/family/nb2': 'como conteos que se dispersan más cuanto mayor es su media (binomial negativa, NB2; enlace log)',
  'questions/fit/family/nb1': 'como conteos que se dispersan en proporción a su media (binomial negativa, NB1; enlace log)',
  'questions/fit/family/poisson': 'como conteos que se dispersan solo por azar (Poisson; enlace log)',
  'questions/fit/family/binomial': 'como partes que se dispersan solo por azar (binomial; enlace logit)',
  'questions/fit/family/beta-binomial': 'como partes que se dispersan más que por azar (beta-binomial; enlace logit)',
  'questions/fit/family/gaussian': 'como números medidos (normal; sin enlace)',

  'questions/fit/choice/reference': '{column}: {level}',
  'questions/fit/choice/references': 'Cada nivel se compara con la referencia de su columna ({references}).',
  'questions/fit/choice/at-zero':
    'Los coeficientes de las demás columnas, y de todo en la referencia, son los que habría con {numbers} en 0; las medias se dicen en su media.',
  'questions/fit/choice/added': 'No se nombraron, y están porque términos mayores los contienen: {added}.',
  'questions/fit/choice/slope':
    'La pendiente de {slope} se sortea para cada {of}{apart, select, yes {, aparte de la ordenada} other {, junto con la ordenada}}.',
  'questions/fit/choice/effort': 'Esfuerzo: se suma el logaritmo de {effort}, para comparar tasas.',
  'questions/fit/choice/offset': '{offset} se suma al predictor lineal tal como está.',
  'questions/fit/choice/trials': 'Cada conteo es una parte de {trials}.',
  'questions/fit/choice/zeros':
    'La probabilidad de un cero de otro origen es {count, plural, =0 {una para todas las filas} other {según {terms}}} (enlace logit).',
  'questions/fit/choice/likelihood':
    '{how, select, squares {Ajustado por mínimos cuadrados} restricted {Ajustado por máxima verosimilitud restringida} full {Ajustado por máxima verosimilitud} laplace {Ajustado por máxima verosimilitud, los agrupamientos por la aproximación de Laplace} nodes {Ajustado por máxima verosimilitud, el agrupamiento por cuadratura con {nodes} nodos} other {Ajustado por máxima verosimilitud}}.',
  'questions/fit/choice/limits':
    '{by, select, profile {Límites del 95\u00a0% por el perfil de la verosimilitud, cortado en la t con los grados de libertad que dice gl} bootstrap {Límites del 95\u00a0% por {refits, number} ajustes a conteos sorteados del ajuste; p por t} other {Límites del 95\u00a0% y p por t}}. gl {groups, plural, =0 {son filas menos columnas} other {va según las unidades de cada columna: niveles de un agrupamiento dentro del cual es la misma; si no, filas}}.',

  'questions/fit/scatter/group': '{of} ({levels, plural, one {# nivel} other {# niveles}})',
  'questions/fit/scatter/slope-of': '{slope} según {of}',
  'questions/fit/scatter/zero': 'sin más dispersión que la de cada fila: es un resultado, no un fallo',
  'questions/fit/scatter/deviation':
    '{link, select, log {un nivel típico está {fold, number} veces por encima o por debajo del central} logit {las razones de un nivel típico están {fold, number} veces por encima o por debajo del central} other {un nivel típico dista tanto del central}}',
  'questions/fit/scatter/deviation-at-zero': '{explained}, donde {slope} es 0',
  'questions/fit/scatter/slope': 'de las pendientes; correlación con las ordenadas {correlation, number}',
  'questions/fit/scatter/slope-alone': 'de las pendientes',
  'questions/fit/scatter/residual': 'filas',
  'questions/fit/scatter/residual-said': 'una fila típica dista tanto de su media',
  'questions/fit/scatter/dispersion-nb2': 'theta',
  'questions/fit/scatter/dispersion-nb1': 'phi',
  'questions/fit/scatter/dispersion-beta-binomial': 'a + b',
  'questions/fit/scatter/said-nb2': 'varianza de un conteo: media + media²/{value, number}',
  'questions/fit/scatter/said-nb1': 'varianza de un conteo: media × (1 + {value, number})',
  'questions/fit/scatter/said-beta-binomial':
    'las partes de cada fila se dispersan como una ley beta con a + b = {value, number}: cuanto menor, más se dispersan',
  'questions/fit/scatter/as-chance': 'sin más dispersión que la del azar',

  'questions/fit/without/full': 'por la verosimilitud completa',
  'questions/fit/without/boundary': 'una varianza no baja de 0: la mitad de una ji al cuadrado de 0 y la mitad de 1 gl',
  'questions/fit/without/two': 'hay entre ellas una varianza en su borde: p es más bien demasiado grande',
  'questions/fit/without/nothing': 'de ello no se estima nada',
  'questions/fit/without/search': 'no se halló el modelo mayor tan verosímil como el menor: su búsqueda se quedó corta',

  'questions/fit/check/laplace':
    '{verdict, select, fine {La aproximación de Laplace basta aquí} other {La aproximación de Laplace no basta aquí: ajústelo por cuadratura con --nodes 15}}: la integración exacta movería un coeficiente {coefficients, number} y la dispersión del agrupamiento {deviation, number} de sus errores estándar.',

  'questions/fit/caution/refused':
    '{count, plural, one {Una línea debería ser una fila y no se pudo leer como tal} other {# líneas deberían ser filas y no se pudieron leer como tales}} ({count, plural, one {línea} other {líneas}} {lines}): no {count, plural, one {está} other {están}} en el ajuste.',
  'questions/fit/caution/refused/cure':
    'Mire {count, plural, one {esa línea} other {esas líneas}}: más o menos celdas que el encabezado, o unas comillas sin cerrar.',
  'questions/fit/caution/aside':
    '{count, plural, one {Una línea se tomó} other {# líneas se tomaron}} por título, total, nota o encabezado repetido, y no por fila ({count, plural, one {línea} other {líneas}} {lines}).',
  'questions/fit/caution/whole-units':
    '{columns}: lo mismo en todo cada nivel de {of}, así que deciden {units, number} niveles, y no {rows, number} filas. Una comparación de campos enteros la decide la pregunta "what-differs"; esto describe.',
  'questions/fit/caution/whole-units/cure': 'Lleve los conteos a un proyecto y pregunte "what-differs".',
  'questions/fit/caution/few-groups': '{of} tiene solo {groups} niveles: dicen poco de cómo se dispersan los niveles.',
  'questions/fit/caution/few-groups/cure': 'Tómelo como columna fija.',
  'questions/fit/caution/perfect-correlation':
    '{of}: pendientes y ordenadas se estiman como una sola cosa; hay pocos niveles para distinguirlas.',
  'questions/fit/caution/perfect-correlation/cure': 'Sortéelas aparte con "--slope-apart", o deje fuera la pendiente.',
  'questions/fit/caution/no-extra-zeros':
    'No se hallaron ceros de otro origen: su probabilidad es casi nula, y sus coeficientes no dicen más que eso.',
  'questions/fit/caution/no-extra-zeros/cure': 'Deje fuera --zeros.',
  'questions/fit/caution/wide-offset': 'El mayor esfuerzo es {fold, number} veces el menor: una fila pesa como otras tantas.',
  'questions/fit/caution/wide-offset/cure': 'Mire si todos los esfuerzos están en la misma unidad.',
  'questions/fit/caution/plain-family':
    '{family, select, poisson {Poisson da por hecho que los conteos se dispersan solo por azar. Si se dispersan más, sus límites son demasiado estrechos: compare el AICc de --family nb2.} other {La binomial da por hecho que las partes se dispersan solo por azar. Si se dispersan más, sus límites son demasiado estrechos: compare el AICc de --family beta-binomial.}}',
  'questions/fit/caution/full-likelihood':
    'La máxima verosimilitud halla más bien pequeñas la dispersión de los agrupamientos y los errores estándar. --reml es más justa; guarde esta para comparar modelos de otras columnas.',
  'questions/fit/caution/no-grouping':
    'Las {rows, number} filas se toman como independientes. Las de un mismo campo, día u observador no lo son: nómbrelos en --random.',
  'questions/fit/caution/slope-without-term':
    '{slope} no está en --fixed: las pendientes de {of} se dispersan en torno a 0, y no en torno a una pendiente de todas.',
  'questions/fit/caution/slope-without-term/cure': 'Añádala a --fixed.',
  'questions/fit/caution/no-effort':
    'No se nombró ningún esfuerzo: los conteos se comparan como si todos se hubieran observado igual.',
  'questions/fit/caution/unchecked': 'El ajuste no se comprobó, como se pidió.',
  'questions/fit/caution/zeros-mechanism':
    'Hay ceros de otro origen en el modelo: diga de qué vienen. Las medias son las de filas sin un cero así.',

  'questions/fit/refused/all-zero': 'No se contó nada: todos los conteos son 0.',
  'questions/fit/refused/all-zero/cure': 'No hay tasa que comparar. Dígalo: es un resultado.',
  'questions/fit/refused/all-trials': 'Cada parte es su total: no hay nada que comparar.',
  'questions/fit/refused/all-trials/cure': 'Dígalo: es un resultado.',
  'questions/fit/refused/separated':
    'En algún lugar a lo largo de {columns} solo hay ceros (o solo totales), y ninguna razón finita es la más verosímil.',
  'questions/fit/refused/separated/cure':
    'Cuente ese nivel con palabras, deje fuera sus filas o junte niveles; ajuste luego el resto.',
  'questions/fit/refused/not-converged': 'La búsqueda no halló cima. Depende de: {suspects}.',
  'questions/fit/refused/not-converged/cure': 'Deje fuera algo de ello, o junte niveles que tienen pocas filas.',
  'questions/fit/refused/not-converged-unnamed': 'La búsqueda no halló cima.',
  'questions/fit/refused/not-converged-unnamed/cure': 'Deje fuera columnas o agrupamientos, uno tras otro.',
  'questions/fit/refused/not-identifiable': 'Las filas no distinguen entre sí: {suspects}.',
  'questions/fit/refused/not-identifiable/cure': 'Deje fuera algo de ello.',
  'questions/fit/refused/not-identifiable-unnamed':
    'La verosimilitud no tiene una sola cima: las filas dicen demasiado poco para este modelo.',
  'questions/fit/refused/not-identifiable-unnamed/cure': 'Deje fuera columnas o agrupamientos, uno tras otro.',
  'questions/fit/refused/grouping-blurred':
    'La dispersión de {of} no se distingue de la de las filas, de las columnas, o de los agrupamientos anteriores.',
  'questions/fit/refused/grouping-blurred/cure': 'Déjelo fuera de --random, o nómbrelo en --fixed.',
  'questions/fit/refused/no-residual': 'Las columnas explican cada fila exactamente: no queda dispersión con que juzgar nada.',
  'questions/fit/refused/no-residual/cure': 'Ajuste menos columnas, o más filas.',
  'questions/fit/refused/one-level': 'Todas las filas tienen un solo nivel de "{column}" ("{level}"): no puede decir nada.',
  'questions/fit/refused/one-level/cure': 'Déjela fuera.',
  'questions/fit/refused/one-group':
    'Todas las filas son de un solo nivel de {of}: no se puede decir cómo se dispersan los niveles.',
  'questions/fit/refused/one-group/cure': 'Déjelo fuera de --random.',
  'questions/fit/refused/few-rows':
    '{rows, plural, one {Una fila} other {# filas}} no {rows, plural, one {puede} other {pueden}} con {columns, plural, one {un coeficiente} other {# coeficientes}}.',
  'questions/fit/refused/few-rows/cure': 'Nombre menos columnas, o traiga más filas.',

  'questions/fit/suspect/zeros': 'otros ceros según {of}',
  'questions/fit/suspect/dispersion': 'la dispersión de cada conteo',
  'questions/fit/suspect/deviation': 'la dispersión de {of}',
  'questions/fit/suspect/slope-deviation': 'la dispersión de las pendientes de {of}',
  'questions/fit/suspect/slope-correlation': 'la correlación de pendientes y ordenadas de {of}',
}
