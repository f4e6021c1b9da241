import type { Words } from '@thrum/model/ground'

/** What `is-design-sound` says, in Spanish. ICU message texts by id, the same as in English. */
export const words: Words = {
  'questions/is-design-sound/title': 'solo la auditoría, antes o después de contar',
  'questions/is-design-sound/asked': '¿Puede este diseño sostener la comparación: {contrast}?',
  'questions/is-design-sound/headline/sound':
    'El diseño sostiene esta comparación: {arms}; nada de lo registrado se confunde con ella.',
  'questions/is-design-sound/headline/warned':
    'El diseño sostiene esta comparación, con {warnings, plural, one {una advertencia} other {# advertencias}}: {arms}.',
  'questions/is-design-sound/headline/blocked': 'El diseño no puede sostener esta comparación: {reasons}.',
  'questions/is-design-sound/arm': '{fields, plural, =0 {ningún campo} one {un campo} other {# campos}} con {level}',
  'questions/is-design-sound/pairs':
    '{fields, plural, =0 {ningún campo} one {un campo} other {# campos}} con todos estos niveles: {levels}',
  'questions/is-design-sound/can-say/design': 'La comparación se apoya en {watches} observaciones: {arms}.',
  'questions/is-design-sound/can-say/describe': 'Lo que se contó en estos campos, en estos días, como descripción.',
  'questions/is-design-sound/can-say/planned': 'Qué se contaría, y dónde. Todavía no se ha contado nada.',
  'questions/is-design-sound/can-say/compare':
    'Una diferencia en {contrast}, si llega a mostrarse, con las advertencias de abajo.',
  'questions/is-design-sound/cannot-say/credit': 'Que una diferencia provenga de {contrast}.',
  'questions/is-design-sound/cannot-say/enough':
    'Que haya campos suficientes para mostrar una diferencia: eso depende de cuánto se dispersen los campos.',
}
