import type { Words } from '@thrum/model/ground'
import { words as tableFit } from './print/table-fit.words.es.ts'

/** What `report` says itself, in Spanish. ICU message texts by id, the same as in English. */
export const words: Words = {
  ...tableFit,
  'report/all-kinds': 'todos los tipos',
  'report/heading/estimates': 'Lo que se encontró',
  'report/heading/can-say': 'Lo que se puede decir',
  'report/heading/cannot-say': 'Lo que no se puede decir',
  'report/heading/cautions': 'Advertencias',
  'report/heading/analyses': 'Con otros análisis',
  'report/heading/next': 'Qué hacer a continuación',
  'report/heading/method': 'Cómo se calculó',
  'report/table-of': '({unit}; intervalo del 95\u00a0% salvo indicación)',
  'report/table-of/values': '({unit})',
  'report/no-limit': 'sin límite',
  'report/units/fields': '{n, plural, one {1 campo} other {# campos}}',
  'report/units/pairs-of-fields': '{n, plural, one {1 campo} other {# campos}}',
  'report/units/watches': '{n, plural, one {1 observación} other {# observaciones}}',
  'report/severity/block': '[impide]',
  'report/severity/warn': '[advierte]',
  'report/severity/note': '[nota]',
  'report/cure': 'Remedio: {cure}',
  'report/evidence': '({rows, plural, one {lo muestra un conteo} other {lo muestran # conteos}})',
  'report/trust/published': 'publicado',
  'report/trust/computed': 'calculado',
  'report/trust/from-memory': 'de memoria',
  'report/trust/common-practice-no-source': 'práctica común, sin fuente',
  'report/receipt':
    'Comprobante: datos {digest}, {selected} de {of} conteos, {method}, Thrum {version}. Con --receipt CARPETA se obtienen las filas y un guion de R que lo vuelve a calcular.',
}
