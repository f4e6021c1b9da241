import type { Words } from '@thrum/model/ground'

/** What `what-differs` says, in Spanish. ICU message texts by id, the same as in English. */
export const words: Words = {
  'questions/what-differs/title': 'un contraste entre niveles de cualquier cosa registrada',
  'questions/what-differs/asked':
    '{kinds}{against}: ¿{many, select, yes {difieren} other {difiere}} entre {levels} ({contrast})?',
  'questions/what-differs/asked/since': '{kinds}{against}: ¿{many, select, yes {cambiaron} other {cambió}} el {date}?',
  'questions/what-differs/asked/since-by':
    '{kinds}{against}: ¿{many, select, yes {cambiaron} other {cambió}} el {date}, según {contrast} ({levels})?',
  'questions/what-differs/asked/slope':
    '{kinds}{against}: ¿cómo {many, select, yes {cambian} other {cambia}} con {name} ({step})?',
  'questions/what-differs/asked/against': ' por cada {kind}',
  'questions/what-differs/headline/shown/caused':
    '{kind}: {levelB} causó, en estas condiciones, {ratio, number, ::@@@} veces el número de {noun} de {levelA} (intervalo del {level, number, ::scale/100 .##}\u00a0%: {low, number, ::@@@} a {high, number, ::@@@}; {fields} campos); {size}.',
  'questions/what-differs/headline/shown/changed-more':
    '{kind}: {levelB} cambió {ratio, number, ::@@@} veces lo que {levelA} en número de {noun} (intervalo del {level, number, ::scale/100 .##}\u00a0%: {low, number, ::@@@} a {high, number, ::@@@}; {fields} campos); {size}.',
  'questions/what-differs/headline/shown/associated':
    '{kind}: {levelB} se asoció con {ratio, number, ::@@@} veces el número de {noun} de {levelA} (intervalo del {level, number, ::scale/100 .##}\u00a0%: {low, number, ::@@@} a {high, number, ::@@@}; {fields} campos); {size}.',
  'questions/what-differs/size/worth-acting-on': 'vale la pena actuar',
  'questions/what-differs/size/may-be-too-small':
    'la dirección queda mostrada, el tamaño puede ser demasiado pequeño para importar',
  'questions/what-differs/headline/alike/no-difference-seen':
    '{kind}: {levelA} y {levelB} son similares a efectos prácticos: {ratio, number, ::@@@} veces el número de {noun} (intervalo del {level, number, ::scale/100 .##}\u00a0%: {low, number, ::@@@} a {high, number, ::@@@}; {fields} campos), todo entre {least, number, ::@@@} y {worth, number}.',
  'questions/what-differs/headline/alike/difference-too-small':
    '{kind}: una diferencia entre {levelA} y {levelB}, demasiado pequeña para actuar: {ratio, number, ::@@@} veces el número de {noun} (intervalo del {level, number, ::scale/100 .##}\u00a0%: {low, number, ::@@@} a {high, number, ::@@@}; {fields} campos).',
  'questions/what-differs/headline/leaning':
    '{kind}: se inclina hacia {direction} con {levelB}, sin que baste para actuar: {ratio, number, ::@@@} veces el número de {noun} de {levelA} (intervalo del {level, number, ::scale/100 .##}\u00a0%: {low, number, ::@@@} a {high, number, ::@@@}; {fields} campos).',
  'questions/what-differs/headline/unsettled':
    '{kind}: sin resolver. {levelB} tuvo {ratio, number, ::@@@} veces el número de {noun} de {levelA}, pero cualquier valor de {low, number, ::@@@} a {high, number, ::@@@} es compatible con los conteos (intervalo del {level, number, ::scale/100 .##}\u00a0%; {fields} campos).',
  'questions/what-differs/headline/design-blocks':
    '{kind}: estos conteos no pueden decir qué hizo {cause}: {reasons}. Lo que se puede decir figura abajo.',
  'questions/what-differs/headline/several': '{comparisons} comparaciones pedidas a la vez: {each}.',
  'questions/what-differs/headline/one-of-several': '{kind} ({levelB} frente a {levelA}): {verdict}',

  'questions/kinds/asked': '¿Cuántos de {others} por cada {kindA} en las mismas observaciones?',
  'questions/kinds/headline/shown':
    '{kindB}: {ratio, number, ::@@@} por cada {kindA} en las mismas observaciones (intervalo del {level, number, ::scale/100 .##}\u00a0%: {low, number, ::@@@} a {ends, select, open {sin límite} other {{high, number, ::@@@}}}; {fields} campos); {size}.',
  'questions/kinds/headline/alike':
    '{kindB} y {kindA} tuvieron más o menos la misma frecuencia en las mismas observaciones: {ratio, number, ::@@@} por cada uno (intervalo del {level, number, ::scale/100 .##}\u00a0%: {low, number, ::@@@} a {ends, select, open {sin límite} other {{high, number, ::@@@}}}; {fields} campos), todo entre {least, number, ::@@@} y {worth, number}.',
  'questions/kinds/headline/leaning':
    '{kindB}: se inclina hacia {direction} que {kindA}, sin que baste para actuar: {ratio, number, ::@@@} por cada uno (intervalo del {level, number, ::scale/100 .##}\u00a0%: {low, number, ::@@@} a {ends, select, open {sin límite} other {{high, number, ::@@@}}}; {fields} campos).',
  'questions/kinds/headline/unsettled':
    '{kindB}: sin resolver. {ratio, number, ::@@@} por cada {kindA}, pero cualquier valor de {low, number, ::@@@} a {ends, select, open {sin límite} other {{high, number, ::@@@}}} es compatible con los conteos (intervalo del {level, number, ::scale/100 .##}\u00a0%; {fields} campos).',
  'questions/kinds/headline/design-blocks':
    '{kindB} frente a {kindA}: no se puede decir más allá de estas observaciones: {reasons}.',
  'questions/kinds/headline/several': '{comparisons} comparaciones pedidas a la vez: {each}.',
  'questions/kinds/headline/one-of-several': '{kindB} por cada {kindA}: {verdict}',
  'questions/kinds/can-say/counted':
    'Contamos {first} {kindB} y {second} {kindA} en {watches, plural, one {una observación} other {# observaciones}} de {fields, plural, one {un campo} other {# campos}}.',
  'questions/kinds/cannot-say/shown': 'Que {kindB} polinice más que {kindA}, o al revés: las visitas no son polinización.',
  'questions/kinds/cannot-say/alike': 'Que {kindB} y {kindA} polinicen lo mismo: las visitas no son polinización.',
  'questions/kinds/cannot-say/leaning': 'Que se haya mostrado que {kindA} o {kindB} sea más frecuente.',
  'questions/kinds/cannot-say/unsettled': 'Que {kindA} y {kindB} tengan la misma frecuencia, o que uno supere en número al otro.',
  'questions/kinds/cannot-say/design-blocks': 'Cuál es más frecuente en campos como estos, {kindA} o {kindB}.',
  'questions/kinds/next/more': 'Más campos; más minutos en los mismos campos ayudan poco.',
  'questions/kinds/next/settled': 'Resuelto para lo que se preguntó.',

  // La misma comparación con otros análisis
  'questions/analysis/as-asked': 'lo preguntado ({method}{adjusted, select, yes {, con ajuste por {nuisances}} other {}})',
  'questions/analysis/field-t': 't a nivel de campo sobre logaritmos de tasas',
  'questions/analysis/unadjusted': 'sin ajuste',
  'questions/analysis/without-nuisances': 'sin ajustar por {nuisances}',
  'questions/analysis/adjusted': 'con ajuste por {nuisances}',
  'questions/analysis/window-all': 'con los conteos fuera de la ventana meteorológica',
  'questions/analysis/window-in': 'sin los conteos fuera de la ventana meteorológica',
  'questions/analysis/without-visit': 'sin la visita a {field}{dated, select, yes { el {date}} other {}}',
  'questions/analysis/model': 'modelo de conteos (binomial negativo)',
  'questions/analysis/model-minutes': 'modelo de conteos con ln(minutos) como covariable',
  'questions/analysis/model-per-flower': 'modelo de conteos por flor',
  'questions/analysis/model-flowers': 'modelo de conteos con ln(flores abiertas) como covariable',
  'questions/analysis/model-shares': 'modelo de proporciones (beta-binomial)',
  'questions/analysis/permutation': 'permutación de campos',
  'questions/analysis/permutation/too-few':
    'p = {p, number, ::@@}; la menor p que {fields} campos podían dar es {smallest, number, ::@@}, así que este contraste no podía mostrar nada',
  'questions/analysis/permutation/apart':
    'p = {p, number, ::@@} (la menor que {fields} campos podían dar es {smallest, number, ::@@}): con los niveles repartidos de otro modo, una diferencia tan grande sería rara',
  'questions/analysis/permutation/not-apart':
    'p = {p, number, ::@@} (la menor que {fields} campos podían dar es {smallest, number, ::@@}): con los niveles repartidos de otro modo, una diferencia tan grande no sería rara',
  'questions/analysis/none/blocked': 'lo impide el diseño',
  'questions/analysis/none/nothing-left': 'lo que queda no se puede comparar',
  'questions/analysis/none/too-many-visits': 'demasiadas visitas para ajustar un modelo mientras espera',
  'questions/analysis/none/lost': 'el modelo no distingue los niveles de lo que está a su lado',
  'questions/analysis/none/all-zero': 'todos los conteos son cero',
  'questions/analysis/none/all-trials': 'solo se contó este tipo',
  'questions/analysis/none/separated': 'un nivel o bloque sin ningún insecto no tiene una tasa que un modelo distinga de cero',
  'questions/analysis/none/not-converged': 'el ajuste del modelo no llegó a un resultado estable',
  'questions/analysis/none/not-identifiable': 'los conteos no bastan para fijar las partes del modelo',
  'questions/analyses/holds':
    '{comparison}: el veredicto no depende del análisis elegido: {count, plural, =2 {los dos análisis dan} other {los # análisis dan}} {verdict}.',
  'questions/analyses/alone': '{comparison}: {verdict}; no se pudo poner otro análisis al lado.',
  'questions/analyses/hangs': '{comparison}: el veredicto depende del análisis elegido: {each}.',
  'questions/analyses/gives': '{analyses} {count, plural, one {da} other {dan}} {verdict}',
  'questions/analyses/and': '{before}; {next}',
  'questions/analyses/permutation-finds/less':
    '{comparison}: el veredicto depende del análisis elegido: {count, plural, one {el intervalo da} other {los # análisis con intervalo dan}} {verdict}, y la permutación de campos no lo respalda.',
  'questions/analyses/permutation-finds/more':
    '{comparison}: el veredicto depende del análisis elegido: {count, plural, one {el intervalo da} other {los # análisis con intervalo dan}} {verdict}, y la permutación de campos encuentra una diferencia.',
  'questions/analyses/permutation': 'Permutación de campos: {told}.',
  'questions/analyses/missing': 'No disponible: {each}.',
  'questions/analyses/missing/one': '{label} ({because})',
  'questions/analyses/held-back': 'Aun así queda en «{verdict}», por el motivo que dan las advertencias.',
  'questions/analyses/several':
    '{hanging, plural, =0 {En ninguna de {comparisons} comparaciones depende el veredicto} one {En una de {comparisons} comparaciones el veredicto depende} other {En # de {comparisons} comparaciones el veredicto depende}} del análisis elegido.',
  'questions/analyses/row': '{comparison}, {label}: {verdict}',
  'questions/analyses/row/none': '{comparison}, {label}: no disponible',
  'questions/analyses/row/permutation':
    '{comparison}, permutación de campos: p = {p, number, ::@@}, la menor posible {smallest, number, ::@@}',
  'questions/figure/analyses': 'La misma comparación con otros análisis',
}
