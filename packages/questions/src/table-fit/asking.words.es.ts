import type { Words } from '@thrum/model/ground'

/** What is said where a fit cannot be asked for so, in Spanish. ICU message texts by id. */
export const words: Words = {
  'questions/fit/no-such-column': 'No hay ninguna columna "{found}" en esta tabla, y --{option} la nombra.',
  'questions/fit/no-such-column/remedy': 'Sus columnas: {known}.',
  'questions/fit/named-twice': '--{option} nombra "{found}" dos veces.',
  'questions/fit/named-twice/remedy': 'Nómbrela una vez.',
  'questions/fit/too-many-together': 'Más de {most} columnas actuarían juntas en --{option}: "{found}".',
  'questions/fit/too-many-together/remedy': 'Una menos columnas con "and", o sepárelas con comas.',
  'questions/fit/one-column': '--{option} toma columnas de una en una, y no "{found}".',
  'questions/fit/one-column/remedy': 'Sepárelas con comas.',
  'questions/fit/response-needed': '¿Qué columna se contó o se midió?',
  'questions/fit/response-needed/remedy': 'Nómbrela con --response. Las columnas: {known}.',
  'questions/fit/family-needed': '¿Cómo se dispersan los números de "{response}"? Nada se da por supuesto.',
  'questions/fit/family-needed/remedy':
    'Añada --family y una de estas:\n{kind, select, shares {binomial: partes de un total conocido que se dispersan como monedas\nbeta-binomial: partes que se dispersan más que monedas} counts {nb2: conteos que se dispersan más que el azar, tanto más cuanto mayor la media; pruebe primero esta\nnb1: conteos que se dispersan más que el azar, en proporción a la media\npoisson: conteos que se dispersan como el azar\nbinomial, beta-binomial: una parte de un total conocido, que nombra --trials\ngaussian: un número medido que solo por casualidad es entero} other {gaussian: números medidos}}',
  'questions/fit/no-such-family': 'No hay ninguna familia "{found}".',
  'questions/fit/no-such-family/remedy': 'Familias: {known}.',
  'questions/fit/not-of-family': '--{option} no va con la familia {family}.',
  'questions/fit/not-of-family/remedy': 'Déjela fuera, o tome otra familia.',
  'questions/fit/trials-needed': 'Una parte necesita su total: ¿de cuántos?',
  'questions/fit/trials-needed/remedy': 'Nombre la columna de los totales con --trials.',
  'questions/fit/only-with': '--{option} solo dice algo junto a --{other}.',
  'questions/fit/only-with/remedy': 'Añada --{other}, o deje fuera --{option}.',
  'questions/fit/slope': '"{found}" no nombra ninguna pendiente.',
  'questions/fit/slope/remedy':
    'Escriba una columna de números, la palabra "by" y un agrupamiento: --slope "bloom stage by field".',
  'questions/fit/slope-not-random': 'Las pendientes varían según "{by}", que no está entre lo que se sortea.',
  'questions/fit/slope-not-random/remedy': 'Añada "{by}" a --random.',
  'questions/fit/by': 'No hay límites "{found}".',
  'questions/fit/by/remedy': 'Escriba "--by" y uno de: {known}.',
  'questions/fit/per': 'Las medias se dicen para un esfuerzo mayor que 0, y no para "{found}".',
  'questions/fit/per/remedy': 'Por ejemplo --per 60.',
  'questions/fit/whole-number': '--{option} es un número entero de {min, number} a {max, number}, y no "{found}".',
  'questions/fit/whole-number/remedy': 'Corríjalo, o déjelo fuera.',
  'questions/fit/nodes-one-grouping': 'La cuadratura es para un solo agrupamiento sin pendiente.',
  'questions/fit/nodes-one-grouping/remedy': 'Deje fuera --nodes, o nombre un solo agrupamiento en --random.',
  'questions/fit/response-on-itself': '"{response}" no puede depender de sí misma.',
  'questions/fit/response-on-itself/remedy': 'Sáquela de --fixed y de --random.',
  'questions/fit/levels': '--levels debería nombrar una columna y el orden de sus niveles, pero dice "{found}".',
  'questions/fit/levels/remedy': 'Por ejemplo --levels "strip=none>sown", primero la referencia. Las columnas: {known}.',
  'questions/fit/no-such-level': 'Ninguna celda de "{column}" dice "{found}".',
  'questions/fit/no-such-level/remedy': 'Sus niveles: {known}.',
  'questions/fit/without-both': '"{found}" está en --fixed y en --random: ¿cuál de los dos se deja fuera?',
  'questions/fit/without-both/remedy': 'Nómbrela solo en una de ellas.',
  'questions/fit/without-contained':
    '"{found}" es parte de columnas que actúan juntas, y no se puede dejar fuera mientras ellas queden.',
  'questions/fit/without-contained/remedy': 'Deje fuera primero lo que hacen juntas: nombre eso.',
  'questions/fit/without-sloped': '"{found}" tiene una pendiente, y no se puede dejar fuera mientras la pendiente quede.',
  'questions/fit/without-sloped/remedy': 'Nombre la pendiente: --without "{slope}".',
  'questions/fit/without-unknown': '"{found}" no está en el modelo, así que nada se pierde sin ella.',
  'questions/fit/without-unknown/remedy': 'En el modelo, como se nombraron: {known}.',
  'questions/fit/not-compared': '"{found}" no es una columna de niveles en --fixed: sus medias no se pueden comparar.',
  'questions/fit/not-compared/remedy':
    '{count, plural, =0 {El modelo no tiene ninguna columna de niveles. Los números se toman como nombres con "--as-levels".} other {Columnas de niveles en el modelo: {known}.}}',
  'questions/fit/too-many-means': '"{found}" tiene {means, number} medias; se comparan como mucho {most}.',
  'questions/fit/too-many-means/remedy': 'Nombre menos columnas con --compare.',
  'questions/fit/too-many-columns': '--{option} da {columns, number} columnas del modelo; se ajustan como mucho {most}.',
  'questions/fit/too-many-columns/remedy': 'Una columna de muchos nombres va en --random.',
  'questions/fit/too-many-levels':
    'Los agrupamientos de --random tienen {levels, number} niveles además de los del mayor; se ajustan como mucho {most, number}.',
  'questions/fit/too-many-levels/remedy': 'Deje fuera uno de los agrupamientos grandes.',
  'questions/fit/not-a-number': 'Línea {line}: "{column}" debería ser un número, pero dice "{found}".',
  'questions/fit/not-a-number/remedy':
    'Corrija la celda, o déjela en blanco: las filas con un blanco quedan fuera y se nombran. Un número no lleva unidad, y solo un signo decimal.',
  'questions/fit/mixed-column':
    '"{column}" tiene {numbers, plural, one {# número} other {# números}} y {texts, plural, one {# texto} other {# textos}}; la línea {line} dice "{found}". ¿Es un número o un nombre?',
  'questions/fit/mixed-column/remedy': 'Corrija los textos, o tome todas sus celdas como nombres con "--as-levels" y "{column}".',
  'questions/fit/not-a-count':
    '{rows, plural, one {Una celda} other {# celdas}} de "{column}" no {rows, plural, one {es un número entero} other {son números enteros}} desde 0, como "{found}" ({rows, plural, one {línea} other {líneas}} {lines}).',
  'questions/fit/not-a-count/remedy':
    'Los conteos son enteros. Para tasas, dé los conteos y --effort; para números medidos tome --family gaussian.',
  'questions/fit/above-trials':
    '{rows, plural, one {Una celda} other {# celdas}} de "{column}" {rows, plural, one {supera} other {superan}} el total de su fila ({rows, plural, one {línea} other {líneas}} {lines}).',
  'questions/fit/above-trials/remedy': 'Corríjalas: la parte no puede ser mayor que el total.',
  'questions/fit/no-effort':
    '{rows, plural, one {Una celda} other {# celdas}} de "{column}" no {rows, plural, one {es mayor} other {son mayores}} que 0, como "{found}" ({rows, plural, one {línea} other {líneas}} {lines}): sin esfuerzo nada se puede contar.',
  'questions/fit/no-effort/remedy': 'Corríjalas, o déjelas en blanco: las filas con un blanco quedan fuera y se nombran.',
  'questions/fit/no-rows': 'No queda ninguna fila: a cada una le falta una celda de una de estas: {columns}.',
  'questions/fit/no-rows/remedy': 'Deje fuera del modelo la columna a la que más le falta.',
}
