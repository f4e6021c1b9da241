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
}
