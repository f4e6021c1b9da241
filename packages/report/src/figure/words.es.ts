import type { Words } from '@thrum/model/ground'

/** What figures say themselves, in Spanish. ICU message texts by id, the same as in English. */
export const words: Words = {
  'report/figure/empty': 'No hay nada que dibujar: ningún conteo informa sobre esto.',
  'report/figure/foot': 'Datos {digest}, {selected} de {of} conteos; {question}; Thrum {version}.',
  'report/figure/alt':
    '{title}. {each}{more, plural, =0 {} one {; una fila más está en la tabla} other {; # filas más están en la tabla}}.',
  'report/figure/more': '{more, plural, one {Una más está} other {# más están}} en la tabla.',
  'report/figure/verdict/design-blocks':
    'Veredicto{together, select, yes { de las comparaciones en conjunto} other {}}: el diseño lo impide.',
  'report/figure/verdict/alike': 'Veredicto{together, select, yes { de las comparaciones en conjunto} other {}}: similar.',
  'report/figure/verdict/shown': 'Veredicto{together, select, yes { de las comparaciones en conjunto} other {}}: mostrado.',
  'report/figure/verdict/leaning': 'Veredicto{together, select, yes { de las comparaciones en conjunto} other {}}: inclinado.',
  'report/figure/verdict/unsettled':
    'Veredicto{together, select, yes { de las comparaciones en conjunto} other {}}: sin resolver.',
  'report/figure/standing/fields':
    'n = {equal, select, yes {} other {{least} a }}{most, plural, one {1 campo, la unidad independiente} other {# campos, las unidades independientes}} de cada estimación.',
  'report/figure/standing/watches':
    'n = {equal, select, yes {} other {{least} a }}{most, plural, one {1 observación} other {# observaciones}}: lo que se dice vale solo para estas observaciones.',
  'report/figure/none': 'Esta respuesta no tiene figura.',
  'report/figure/no-limit': 'sin límite',
  'report/figure/level': '{level, number, ::.#}\u00a0%',
  'report/figure/role/headline': 'lo pedido',
  'report/figure/role/beside': 'al lado',

  'report/figure/intervals/head': '{unit} (intervalo del {level})',
  'report/figure/intervals/head/mixed': '{unit} (intervalo del {level} salvo indicación)',
  'report/figure/intervals/range': '{low} a {high}',
  'report/figure/intervals/at-least': '{low} o más',
  'report/figure/intervals/at-most': '{high} o menos',
  'report/figure/intervals/band': 'demasiado pequeño para actuar',
  'report/figure/intervals/less': '← menos',
  'report/figure/intervals/more': 'más →',
  'report/figure/intervals/told': '{label}: {value}{range, select, none {} other { ({range})}}',
  'report/figure/intervals/told/none': '{label}',
  'report/figure/intervals/caption': 'Marca: estimación; línea: su intervalo.',
  'report/figure/intervals/caption/mark': 'Marca: estimación.',
  'report/figure/intervals/caption/beside': 'Marcas llenas: lo que se preguntó; marcas huecas: al lado, para comparar.',
  'report/figure/intervals/caption/arrow': 'Flecha: la línea continúa.',
  'report/figure/intervals/caption/band': 'Sombreado: razones de {low} a {high}, demasiado pequeñas para actuar.',
  'report/figure/intervals/caption/log': 'En el eje, el doble y la mitad están a la misma distancia de 1.',

  'report/figure/rates/unit': '{unit}{scale, select, log {, escala logarítmica} root {, escala de raíz cuadrada} other {}}',
  'report/figure/rates/told':
    '{kind}{level, select, none {} other {, {level}}}: {fields, plural, one {un campo} other {# campos}}, {low} a {high} {unit}',
  'report/figure/rates/mark': '{field}{level, select, none {} other {, {level}}}: {rate} {unit}; {count} contados',
  'report/figure/rates/caption':
    'Una marca por campo{paired, select, yes { en cada nivel; una línea une las marcas de un mismo campo} other {}}.',
  'report/figure/rates/caption/own': 'Cada panel tiene su propio eje.',

  'report/figure/strips/axis/date': 'fecha{year, select, none {} other { ({year})}}',
  'report/figure/strips/axis/season-day': 'días desde el primer conteo de la temporada',
  'report/figure/strips/axis/stage': 'estadio de floración (código BBCH)',
  'report/figure/strips/axis/hour': 'hora solar del día',
  'report/figure/strips/axis/temperature': 'temperatura del aire (°C)',
  'report/figure/strips/caption': 'Cada trazo: un valor con el que se contó algo.',
  'report/figure/strips/apart': 'En ninguna parte coinciden dos niveles en el mismo tramo.',
  'report/figure/strips/told': '{level}: {values, plural, one {un valor} other {# valores}}, {low} a {high}',
  'report/figure/strips/told/none': '{level}: ningún valor conocido',
  'report/figure/strips/none': 'ningún valor conocido',

  'report/figure/column/what': 'Qué',
  'report/figure/column/value': 'Estimación ({unit})',
  'report/figure/column/low': 'Límite inferior',
  'report/figure/column/high': 'Límite superior',
  'report/figure/column/level': 'Intervalo',
  'report/figure/column/n': 'n',
  'report/figure/column/role': 'Papel',
  'report/figure/column/field': 'Campo',
  'report/figure/column/kind': 'Tipo',
  'report/figure/column/at-level': 'Nivel',
  'report/figure/column/count': 'Contados',
  'report/figure/column/effort': 'Esfuerzo de muestreo',
  'report/figure/column/rate': 'Tasa ({unit})',
  'report/figure/column/axis': 'Valor ({axis})',
}
