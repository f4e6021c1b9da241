import type { Words } from '@thrum/model/ground'

/** What `who-visits` says, in Spanish. ICU message texts by id, the same as in English. */
export const words: Words = {
  'questions/who-visits/title': 'tasas y proporciones por tipo, según campo, estadio o temporada',
  'questions/who-visits/asked': '¿Quién visita, y cuánto ({kinds}{grouped, select, yes {; según {by}} other {}})?',
  'questions/who-visits/headline/rate': 'Lo más frecuente: {rate}.',
  'questions/who-visits/headline/rate-and-share':
    'Lo más frecuente: {rate}; {share, number, ::scale/100 @@}\u00a0% de todos los visitantes (de {low, number, ::scale/100 @@}\u00a0% a {high, number, ::scale/100 @@}\u00a0%).',
  'questions/who-visits/headline/none':
    'No se contó ninguno de estos tipos en {counts, plural, one {una observación} other {# observaciones}}.',
  'questions/who-visits/headline/groups': '{counts} conteos en {groups} grupos; las tasas figuran abajo.',
  'questions/who-visits/headline/blocked':
    'No se puede dar ninguna tasa: {reasons}. Las proporciones entre lo que se vio figuran abajo.',
  'questions/who-visits/rate/fields':
    '{kind} {value, number, ::@@@} {unit} ({low, number, ::@@@} a {high, number, ::@@@}; {n} campos)',
  'questions/who-visits/rate/watches':
    '{kind} {value, number, ::@@@} {unit} ({low, number, ::@@@} a {high, number, ::@@@}; {n, plural, one {una observación} other {# observaciones}}, solo estos minutos)',
  'questions/who-visits/rate/none': '{kind}: ninguno visto, como máximo {high, number, ::@@@} {unit}',
  'questions/who-visits/can-say/counted':
    '{named, select, yes {{group}: } other {}}En {watches, plural, one {una observación} other {# observaciones}} de {fields, plural, one {un campo} other {# campos}} contamos {each}.',
  'questions/who-visits/can-say/total': '{kind} {total}',
  'questions/who-visits/can-say/rates': '{named, select, yes {{group}: } other {}}{each}.',
  'questions/who-visits/can-say/shares-fields':
    '{named, select, yes {{group}: de} other {De}} todos los {among, select, sightings {avistamientos} other {visitantes}}, con los campos como unidad: {each}.',
  'questions/who-visits/can-say/shares-watches':
    '{named, select, yes {{group}: de} other {De}} todos los {among, select, sightings {avistamientos} other {visitantes contados}}, solo en estas observaciones: {each}.',
  'questions/who-visits/cannot-say/rate': 'Cuántos visitaron por hora.',
  'questions/who-visits/cannot-say/other-fields':
    'Cuál es la tasa en otros campos: con menos de tres campos el intervalo vale solo para estos minutos.',
  'questions/who-visits/cannot-say/pollinates': 'Qué parte de la polinización hace cada tipo: las visitas no son polinización.',
  'questions/who-visits/cannot-say/difference':
    'Que los grupos difieran: se comparan con what-differs, que primero examina el diseño.',
  'questions/who-visits/next/fields':
    '{more, plural, one {Con un campo más} other {Con # campos más}} la tasa podría hablar por campos como estos.',
  'questions/who-visits/next/few-fields': '{fields} campos sostienen el intervalo; más campos lo estrechan, más minutos apenas.',
  'questions/who-visits/next/compare': 'Para comparar grupos, preguntar con what-differs.',
}
