import type { Words } from '@thrum/model/ground'

/** Sentences about mappings, in Spanish: what does not fit, what is proposed and why, what is asked. */
export const mappingWords: Words = {
  'exchange/mapping/misshapen': 'El mapeo no tiene la forma correcta en «{where}»: {what}.',
  'exchange/mapping/misshapen/remedy':
    'Enmendar el archivo de mapeo, o pedir que se proponga uno nuevo a partir de la hoja. No se escribió nada.',
  'exchange/mapping/column-missing': 'El mapeo nombra una columna «{header}» que la hoja no tiene.',
  'exchange/mapping/column-missing/remedy': 'Las columnas de la hoja son: {headers}. No se escribió nada.',
  'exchange/mapping/column-twice': 'El mapeo nombra dos veces la columna «{header}».',
  'exchange/mapping/column-twice/remedy': 'Conservar una de las dos. No se escribió nada.',
  'exchange/mapping/role-twice': 'Más de una columna está asignada como {role}: {headers}.',
  'exchange/mapping/role-twice/remedy':
    'Conservar una de ellas como {role}, y asignar las demás como factor, note o ignore. No se escribió nada.',
  'exchange/mapping/role-of-other-shape': 'La columna «{header}» está asignada como {role}, que una tabla {shape} no tiene.',
  'exchange/mapping/role-of-other-shape/remedy':
    'En una tabla ancha cada tipo tiene una columna ("as": "tally"); en una larga cada fila nombra su tipo ("as": "kind"). No se escribió nada.',
  'exchange/mapping/unit-missing': 'No se dice la unidad de «{header}» ({as}).',
  'exchange/mapping/unit-missing/remedy':
    'Dar a la columna su unidad en el mapeo, por ejemplo "unit": "Cel". No se escribió nada.',
  'exchange/mapping/unit-unknown': '«{unit}» no es una unidad para «{header}» ({as}).',
  'exchange/mapping/unit-unknown/remedy':
    'Las unidades de cada papel figuran en la descripción de los mapeos. No se escribió nada.',
  'exchange/mapping/factor-name-taken': 'Un factor no se puede llamar «{factor}»: una columna de los conteos tiene ese nombre.',
  'exchange/mapping/factor-name-taken/remedy': 'Darle otro nombre en el mapeo ("factor"). No se escribió nada.',
  'exchange/mapping/counting-unit-unknown': '«{written}» en la columna «{header}» no es una unidad de conteo.',
  'exchange/mapping/counting-unit-unknown/remedy':
    'Decir en el mapeo qué significa ("means"): snapshot, individuals o visits. No se escribió nada.',
  'exchange/mapping/no-key': 'Nada dice qué filas pertenecen a una misma observación.',
  'exchange/mapping/no-key/remedy':
    'Asignar un campo, una parcela, una fecha o un identificador, o nombrar las columnas en el mapeo ("key"). No se escribió nada.',
  'exchange/mapping/key-unknown': 'La clave del mapeo nombra «{name}», que no es ninguna columna asignada.',
  'exchange/mapping/key-unknown/remedy':
    'Nombrar una columna asignada por su papel o por su encabezado. Los papeles son: {roles}. No se escribió nada.',

  'exchange/propose/header': 'lo dice su encabezado',
  'exchange/propose/insect': 'su encabezado nombra insectos y sus celdas son números',
  'exchange/propose/visits': 'su encabezado dice visitas y sus celdas son números',
  'exchange/propose/kind-column': 'nombra a quién se vio, fila por fila',
  'exchange/propose/number-column': 'dice cuántos del tipo que tiene al lado',
  'exchange/propose/other-names': 'nombra los mismos insectos de otro modo',
  'exchange/propose/distinct-visit': 'es distinto en cada fila',
  'exchange/propose/sum-of-others': 'su encabezado dice que suma otras columnas',
  'exchange/propose/presence': 'dice si los hubo, no cuántos',
  'exchange/propose/dates': 'sus celdas son fechas',
  'exchange/propose/yes-or-no': 'dice sí y no, así que se pueden comparar observaciones por ella',
  'exchange/propose/repeated': 'sus pocos valores se repiten, así que se pueden comparar observaciones por ella',
  'exchange/propose/free-text': 'sus celdas son texto libre',
  'exchange/propose/of-single-rows': 'corresponde a filas sueltas, no a observaciones',
  'exchange/propose/second-of-role': 'otra columna ya tiene ese significado',
  'exchange/propose/empty': 'está vacía',
  'exchange/propose/unknown': 'ni su encabezado ni sus celdas dicen qué es',

  'exchange/ask/effort': '¿Cuántos minutos duró cada observación? Ninguna columna lo dice.',
  'exchange/ask/effort-noted': '¿Duró cada observación {minutes} minutos? Una nota del archivo dice: {text}',
  'exchange/ask/area-noted': '¿Abarcó cada observación {area} m²? Una nota del archivo dice: {text}',
  'exchange/ask/year': 'Las fechas en «{header}» no tienen año. ¿Qué año era?',
  'exchange/ask/date-order':
    '¿Está escrito «{example}» en «{header}» con el día primero o con el mes primero? Ninguna fila lo resuelve.',
  'exchange/ask/date-orders-mixed':
    '¿Está escrito «{example}» en «{header}» con el día primero o con el mes primero? Algunas filas solo pueden tener el día primero, otras solo el mes primero.',
  'exchange/ask/unit': '¿Está «{header}» en {unit}? Su encabezado no lo dice.',
  'exchange/ask/counting-unit':
    '¿Son los números {unit, select, visits {visitas a flores} other {insectos vistos}}? Los insectos vistos, las visitas a flores y los recuentos instantáneos nunca se juntan.',
  'exchange/ask/dash': '¿Qué significa un guion en «{header}»: que no se vio ninguno, o que no se buscó?',
  'exchange/ask/blank':
    '«{header}» tiene {blanks, plural, one {# celda vacía} other {# celdas vacías}} y ningún cero. ¿Significa una celda vacía que no se vio ninguno, o que no se buscó?',
  'exchange/ask/absent': 'Si una observación no tiene fila para un tipo, ¿significa que no se vio ninguno?',
  'exchange/ask/duplicates':
    '{rows, plural, one {# identificador está} other {# identificadores están}} más de una vez en «{header}». ¿Conservar una sola vez las filas con valores iguales?',
  'exchange/ask/assigned': '¿Cómo llegaron los niveles de «{header}» a sus campos: al azar, elegidos, o no se sabe?',
  'exchange/ask/presence': '«{header}» contiene solo 0 y 1 y parece decir si algo estaba presente. Se deja fuera; ¿es correcto?',
  'exchange/ask/sum-of-others': '«{header}» parece ser la suma de otras columnas. Se deja fuera; ¿es correcto?',
  'exchange/ask/unknown': '¿Qué es «{header}»? Se deja fuera mientras no se diga.',
  'exchange/ask/unknown-counts':
    '«{header}» contiene números enteros. ¿Es un tipo que se contó? Se deja fuera mientras no se diga.',
}
