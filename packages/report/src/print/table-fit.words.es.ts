import type { Words } from '@thrum/model/ground'

/** What stands about the numbers of a fit, in Spanish. ICU message texts by id. */
export const words: Words = {
  'report/fit/heading/coefficients': 'Coeficientes',
  'report/fit/heading/zeros': 'Ceros de otro origen',
  'report/fit/heading/scatter': 'Lo que varía',
  'report/fit/heading/without': 'Lo que se pierde sin',
  'report/fit/heading/comparison': '{of}: medias y pares',
  'report/fit/heading/checks': 'Comprobaciones',
  'report/fit/heading/cautions': 'Cautelas',
  'report/fit/heading/rows': 'Filas que quedan fuera',
  'report/fit/heading/choices': 'Cómo se ajustó',
  'report/fit/heading/refused': 'Sin ajuste',
  'report/fit/column/term': 'término',
  'report/fit/column/estimate': 'estimado',
  'report/fit/column/se': 'EE',
  'report/fit/column/log': 'razón',
  'report/fit/column/logit': 'razón de odds',
  'report/fit/column/limits': 'límites 95\u00a0%',
  'report/fit/column/df': 'gl',
  'report/fit/column/p': 'valor p',
  'report/fit/column/holm': 'p (de Holm)',
  'report/fit/column/all-at-once': 'todos a la vez',
  'report/fit/column/mean': 'media',
  'report/fit/column/pair-log': 'razón',
  'report/fit/column/pair-logit': 'razón de odds',
  'report/fit/column/pair-identity': 'diferencia',
  'report/fit/small-p': '<{limit}',
  'report/fit/set-aside': '{count, plural, =0 {aparte: no tiene más que ceros} other {aparte: no dice más que {equals}}}',
  'report/fit/no-scatter': 'sin error estándar',
  'report/fit/not-told': 'no se puede decir: depende de lo que quedó aparte',
  'report/fit/row-scatter': '{label}: {value}, {explained}.',
  'report/fit/row-scatter/none': '{label}: {explained}.',
  'report/fit/likelihood':
    '{restricted, select, yes {Verosimilitud restringida (log)} other {Verosimilitud (log)}} {logLikelihood}, {parameters, plural, one {un parámetro} other {# parámetros}}, AIC {aic}{hasAicc, select, yes {, AICc {aicc}} other {}}.',
  'report/fit/without': '{label}: ji al cuadrado {statistic} con {df} gl, p {p}{noted, select, yes { ({note})} other {}}.',
  'report/fit/without/refused': '{label}: no se compara. {because}',
  'report/fit/means':
    '{link, select, log {Medias} logit {Partes} other {Medias}}{hasPer, select, yes { {per}} other {}}{grouped, select, yes {, en el nivel central de cada agrupamiento} other {}}{held, plural, =0 {} other {, con {numbers}}}; las demás columnas promediadas, cada nivel con el mismo peso. gl {df}.',
  'report/fit/pairs':
    'Pares, gl {df}; "todos a la vez": límites que valen para {pairs, plural, one {el par} other {los # pares}} juntos.',
  'report/fit/left-out':
    'Falta {column} en {rows, plural, one {una fila} other {# filas}} ({rows, plural, one {línea} other {líneas}} {lines}{more, select, yes { …} other {}}).',
  'report/fit/rows': 'Se usan {used, number} de {of, number} filas.',
  'report/fit/verdict/fine': '[bien]',
  'report/fit/verdict/look': '[mirar]',
  'report/fit/verdict/suspect': '[sospechoso]',
  'report/fit/verdict/not-checked': '[sin mirar]',
  'report/fit/no-checks': 'Los números medidos aún no tienen comprobaciones: dibuje los residuos con las filas del recibo.',
  'report/fit/receipt':
    'Thrum {version}; semilla {seed}. Con "--receipt" y una carpeta vienen las filas y un programa de R que ajusta lo mismo.',
}
