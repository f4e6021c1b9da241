import type { Words } from '@thrum/model/ground'

/** What a person reads before accepting a sheet, in Spanish. */
export const previewWords: Words = {
  'exchange/preview/rows':
    '{read, plural, one {# fila leída} other {# filas leídas}}: {accepted} aceptadas, {waiting} pendientes de respuesta, {refused} apartadas con su motivo. No se descartó nada.',
  'exchange/preview/watches':
    '{counts, plural, one {# observación} other {# observaciones}}, {minutes} minutos en total, {fields, plural, =0 {ningún campo nombrado} one {# campo} other {# campos}}{days, plural, =0 {, sin fecha} =1 {, el {first}} other {, en # días del {first} al {last}}}.',
  'exchange/preview/no-effort': 'No está registrado cuánto duraron las observaciones: se pueden dar proporciones, pero no tasas.',
  'exchange/preview/kind':
    '{kind}: {total}. {clean, plural, one {# número está limpio} other {# números están limpios}}{marked, plural, =0 {} one {, # se puede usar con una marca} other {, # se pueden usar con una marca}}{waiting, plural, =0 {} one {, # necesita una respuesta} other {, # necesitan una respuesta}}{missing, plural, =0 {} one {, # falta} other {, # faltan}}.',
  'exchange/preview/row': 'Línea {line}: {cells}.',
  'exchange/preview/shown':
    '{column}: «{written}» se lee como {printed} ({because}){cells, plural, one {.} other {, en # celdas.}}',
  'exchange/preview/more-shown': '{more, plural, one {# lectura más de esta clase.} other {# lecturas más de esta clase.}}',
  'exchange/preview/cell-waits': 'Línea {line}, {column}: «{written}» queda pendiente: {because}',
  'exchange/preview/row-waits': 'La línea {line} queda pendiente: {because}',
  'exchange/preview/row-refused': 'La línea {line} se aparta: {because}.',
  'exchange/preview/more-waiting':
    '{more, plural, one {# línea más queda pendiente o se aparta.} other {# líneas más quedan pendientes o se apartan.}}',
}
