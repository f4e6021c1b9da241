import type { Words } from '@thrum/model/ground'

/** What stands about the numbers of a fit, in English. ICU message texts by id. */
export const words: Words = {
  'report/fit/heading/coefficients': 'Coefficients',
  'report/fit/heading/zeros': 'Zeros of another origin',
  'report/fit/heading/scatter': 'What varies',
  'report/fit/heading/without': 'What is lost without',
  'report/fit/heading/comparison': '{of}: means and pairs',
  'report/fit/heading/checks': 'Checks',
  'report/fit/heading/cautions': 'Cautions',
  'report/fit/heading/rows': 'Rows left out',
  'report/fit/heading/choices': 'How it was fitted',
  'report/fit/heading/refused': 'No fit',
  'report/fit/column/term': 'term',
  'report/fit/column/estimate': 'estimate',
  'report/fit/column/se': 'SE',
  'report/fit/column/log': 'ratio',
  'report/fit/column/logit': 'odds ratio',
  'report/fit/column/limits': '95\u00a0% limits',
  'report/fit/column/df': 'df',
  'report/fit/column/p': 'p',
  'report/fit/column/holm': 'p (Holm)',
  'report/fit/column/all-at-once': 'all at once',
  'report/fit/column/mean': 'mean',
  'report/fit/column/pair-log': 'ratio',
  'report/fit/column/pair-logit': 'odds ratio',
  'report/fit/column/pair-identity': 'difference',
  'report/fit/small-p': '<{limit}',
  'report/fit/set-aside':
    '{count, plural, =0 {set aside: it holds nothing but zeros} other {set aside: it says no more than {equals}}}',
  'report/fit/no-scatter': 'no standard error',
  'report/fit/not-told': 'cannot be told: it hangs on what was set aside',
  'report/fit/row-scatter': '{label}: {value}, {explained}.',
  'report/fit/row-scatter/none': '{label}: {explained}.',
  'report/fit/likelihood':
    '{restricted, select, yes {Restricted log likelihood} other {Log likelihood}} {logLikelihood}, {parameters, plural, one {one parameter} other {# parameters}}, AIC {aic}{hasAicc, select, yes {, AICc {aicc}} other {}}.',
  'report/fit/without': '{label}: chi-square {statistic} on {df} df, p {p}{noted, select, yes { ({note})} other {}}.',
  'report/fit/without/refused': '{label}: not compared. {because}',
  'report/fit/means':
    '{link, select, log {Means} logit {Shares} other {Means}}{hasPer, select, yes { {per}} other {}}{grouped, select, yes {, at a level of each grouping that lies in the middle} other {}}{held, plural, =0 {} other {, with {numbers}}}; other columns averaged, each level weighing the same. df {df}.',
  'report/fit/pairs':
    'Pairs, df {df}; "all at once": limits that hold for {pairs, plural, one {the pair} other {all # pairs}} together.',
  'report/fit/left-out':
    '{column} is missing in {rows, plural, one {one row} other {# rows}} ({rows, plural, one {line} other {lines}} {lines}{more, select, yes { …} other {}}).',
  'report/fit/rows': '{used, number} of {of, number} rows are used.',
  'report/fit/verdict/fine': '[fine]',
  'report/fit/verdict/look': '[look]',
  'report/fit/verdict/suspect': '[suspect]',
  'report/fit/verdict/not-checked': '[not looked at]',
  'report/fit/no-checks': 'Measured numbers have no checks yet: draw residuals from the rows of the receipt.',
  'report/fit/receipt': 'Thrum {version}; seed {seed}. With --receipt FOLDER come the rows and an R script that fits the same.',
}
