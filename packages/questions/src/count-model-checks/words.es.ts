import type { Words } from '@thrum/model/ground'

/** What checks of a fitted count model say, in Spanish. ICU message texts by id, the same as in English. */
export const words: Words = {
  'questions/model-checks/summary':
    '{looked, plural, =0 {No se hizo ninguna comprobación} one {Se hizo una comprobación} other {Se hicieron # comprobaciones}}; {struck, plural, =0 {ninguna llama la atención} one {una llama la atención} other {# llaman la atención}}. La ley de cada una procede de {fitted, plural, one {un juego de conteos} other {# juegos de conteos}} que se sacaron del modelo y se ajustaron de nuevo{failed, plural, =0 {} one { (uno más no se pudo ajustar)} other { (# más no se pudieron ajustar)}}{stopped, select, yes {; el trabajo se detuvo antes de terminar} other {}}. De veinte comprobaciones de un modelo verdadero, una baja de p = 0,05 por azar.',
  'questions/model-checks/checked':
    '{found} {verdict} (p = {p, number, ::@@}; sobre todas las comprobaciones juntas, {holm, number, ::@@}).',
  'questions/model-checks/not-checked': '{name}: no se miró, porque {because}.',
  'questions/model-checks/verdict/fine': 'Nada llama la atención',
  'questions/model-checks/verdict/look': 'Conviene mirarlo',
  'questions/model-checks/verdict/suspect': 'Sospechoso',
  'questions/model-checks/because/few-rows': 'hay menos de diez conteos',
  'questions/model-checks/because/one-value': 'apenas difiere entre los conteos',
  'questions/model-checks/because/no-dates': 'no se conoce ninguna fecha',
  'questions/model-checks/because/few-pairs': 'menos de diez visitas siguen a otra en su campo',
  'questions/model-checks/because/few-refits': 'se pudieron ajustar muy pocos de los juegos sacados del modelo',

  'questions/model-checks/check/uniformity': 'Reparto de los residuos',
  'questions/model-checks/check/dispersion': 'Dispersión',
  'questions/model-checks/check/zeros': 'Ceros',
  'questions/model-checks/check/outliers': 'Conteos muy apartados',
  'questions/model-checks/check/covariate': 'A lo largo de {name}',
  'questions/model-checks/check/time': 'En el tiempo',
  'questions/model-checks/check/autocorrelation': 'Visitas consecutivas',

  'questions/model-checks/found/uniformity':
    'Los residuos se apartan de un reparto uniforme en {statistic, number, ::@@@}; el modelo por sí solo se aparta hasta {high, number, ::@@@}.',
  'questions/model-checks/found/dispersion':
    'Los conteos se dispersan {statistic, number, ::@@@} veces lo que dice el modelo (al cuadrado); los juegos sacados del modelo quedan entre {low, number, ::@@@} y {high, number, ::@@@}.{side, select, above { Puede faltar una covariable, o hace falta una familia más ancha.} below { Los intervalos salen demasiado anchos.} other {}}',
  'questions/model-checks/found/zeros':
    'No se contó nada en {statistic, plural, =0 {ninguna fila} one {una fila} other {# filas}}; el modelo por sí solo lleva de {low, number, ::.#} a {high, number, ::.#}.{named, select, yes { Conviene incluir ceros de otro origen en el modelo solo si se puede nombrar ese origen (demasiado frío para volar, flores cerradas).} other {}}',
  'questions/model-checks/found/outliers':
    '{statistic, plural, =0 {Ningún conteo queda fuera de todo lo que se sacó para su fila} one {Un conteo queda fuera de todo lo que se sacó para su fila} other {# conteos quedan fuera de todo lo que se sacó para sus filas}}; el modelo por sí solo lleva a {high, number, ::.#} como máximo.',
  'questions/model-checks/found/along':
    '{name}, los conteos se apartan del modelo hasta {statistic, number, ::@@@} errores típicos; el modelo por sí solo se aparta hasta {high, number, ::@@@}.',
  'questions/model-checks/found/along-at':
    '{name}, los conteos se apartan del modelo hasta {statistic, number, ::@@@} errores típicos (el modelo por sí solo: hasta {high, number, ::@@@}), sobre todo en {where}: {found, number} contados, {mean, number, ::@@@} esperados (de {least, number, ::@@@} a {most, number, ::@@@}).',
  'questions/model-checks/found/autocorrelation':
    'Las visitas consecutivas a un campo {side, select, above {se apartan hacia el mismo lado} below {se apartan hacia lados opuestos} other {se apartan como el modelo lo permite}}: correlación {statistic, number, ::@@}; el modelo por sí solo lleva de {low, number, ::@@} a {high, number, ::@@}.',

  'questions/model-checks/without/refitted':
    'Sin {level} ({by}, {rows, plural, one {un conteo} other {# conteos}}), {sum} es {ratio, number, ::@@@} veces lo que es con todo: a {change, number, ::@@} errores típicos{turns, select, gains {, y su intervalo del 95\u00a0% contiene entonces la igualdad} loses {, y su intervalo del 95\u00a0% excluye entonces la igualdad} other {}}.',
  'questions/model-checks/without/aliased':
    'Sin {level} ({by}, {rows, plural, one {un conteo} other {# conteos}}), {sum} no se puede estimar: todo lo que se sabe de ello viene de ahí.',
  'questions/model-checks/without/separated':
    'Sin {level} ({by}, {rows, plural, one {un conteo} other {# conteos}}), el modelo no se puede ajustar: en parte de lo que queda no se contó ningún insecto.',
  'questions/model-checks/without/not-fitted':
    'Sin {level} ({by}, {rows, plural, one {un conteo} other {# conteos}}), el modelo no se puede ajustar.',

  'questions/model-checks/label/range': '{name} de {low, number, ::@@@} a {high, number, ::@@@}',
  'questions/model-checks/label/value': '{name} {value, number, ::@@@}',
  'questions/model-checks/label/level': '{name}: {level}',
  'questions/model-checks/label/date': '{date}',
  'questions/model-checks/label/dates': 'del {from} al {to}',
  'questions/model-checks/label/quantiles': 'residuos de {low, number} a {high, number}',
  'questions/model-checks/label/means': 'filas con {low, number, ::@@@} a {high, number, ::@@@} esperados',
  'questions/model-checks/label/all-rows': 'todas las filas',
  'questions/model-checks/label/apart': '{visits, plural, one {a una visita de distancia} other {a # visitas de distancia}}',
  'questions/model-checks/label/beyond/above': 'por encima de todo lo sacado',
  'questions/model-checks/label/beyond/below': 'por debajo de todo lo sacado',
  'questions/model-checks/label/by-the-model': '{line}, según el modelo por sí solo',
  'questions/model-checks/label/with-all': '{sum}, con todo',
  'questions/model-checks/label/without': 'sin {level} ({by})',
  'questions/model-checks/unit/times-expected': 'veces lo que espera el modelo',
  'questions/model-checks/unit/outliers': 'conteos',
  'questions/model-checks/unit/autocorrelation': 'correlación',
  'questions/model-checks/unit/ratio': 'veces',
}
