import type { Words } from '@thrum/model/ground'

/** What checks of a fitted count model say, in English. ICU message texts by id. */
export const words: Words = {
  'questions/model-checks/summary':
    '{looked, plural, =0 {No check was made} one {One check was made} other {# checks were made}}; {struck, plural, =0 {none struck} one {one struck} other {# struck}}. The law of each comes from {fitted, plural, one {one set of counts} other {# sets of counts}} drawn from the model and fitted anew{failed, plural, =0 {} one { (one more could not be fitted)} other { (# more could not be fitted)}}{stopped, select, yes {; the work was stopped before its end} other {}}. Of twenty checks of a true model one falls below p = 0.05 by chance.',
  'questions/model-checks/checked': '{found} {verdict} (p = {p, number, ::@@}; over all checks together {holm, number, ::@@}).',
  'questions/model-checks/not-checked': '{name}: not looked at, because {because}.',
  'questions/model-checks/verdict/fine': 'Nothing strikes',
  'questions/model-checks/verdict/look': 'Worth a look',
  'questions/model-checks/verdict/suspect': 'Suspect',
  'questions/model-checks/because/few-rows': 'there are fewer than ten counts',
  'questions/model-checks/because/one-value': 'it hardly differs between the counts',
  'questions/model-checks/because/no-dates': 'no date is known',
  'questions/model-checks/because/few-pairs': 'fewer than ten visits follow another one in their field',
  'questions/model-checks/because/few-refits': 'too few drawn sets could be fitted',

  'questions/model-checks/check/uniformity': 'Spread of the residuals',
  'questions/model-checks/check/dispersion': 'Scatter',
  'questions/model-checks/check/zeros': 'Zeros',
  'questions/model-checks/check/outliers': 'Counts far outside',
  'questions/model-checks/check/covariate': 'Along {name}',
  'questions/model-checks/check/time': 'In time',
  'questions/model-checks/check/autocorrelation': 'Visits that follow one another',

  'questions/model-checks/found/uniformity':
    'The residuals stray from an even spread by {statistic, number, ::@@@}; the model alone strays by up to {high, number, ::@@@}.',
  'questions/model-checks/found/dispersion':
    'Counts scatter {statistic, number, ::@@@} times as much (squared) as the model says; sets drawn from the model lie between {low, number, ::@@@} and {high, number, ::@@@}.{side, select, above { A covariate may be missing, or a wider family is needed.} below { Intervals come out too wide.} other {}}',
  'questions/model-checks/found/zeros':
    'Nothing was counted in {statistic, plural, =0 {no row} one {one row} other {# rows}}; the model alone leads to {low, number, ::.#} to {high, number, ::.#}.{named, select, yes { Take zeros of another origin into the model only if you can name that origin (too cold to fly, flowers closed).} other {}}',
  'questions/model-checks/found/outliers':
    '{statistic, plural, =0 {No count lies outside everything that was drawn for its row} one {One count lies outside everything that was drawn for its row} other {# counts lie outside everything that was drawn for their rows}}; the model alone leads to at most {high, number, ::.#}.',
  'questions/model-checks/found/along':
    '{name}, counts stray from the model by up to {statistic, number, ::@@@} standard errors; the model alone strays by up to {high, number, ::@@@}.',
  'questions/model-checks/found/along-at':
    '{name}, counts stray from the model by up to {statistic, number, ::@@@} standard errors (the model alone: up to {high, number, ::@@@}), most at {where}: {found, number} counted, {mean, number, ::@@@} expected ({least, number, ::@@@} to {most, number, ::@@@}).',
  'questions/model-checks/found/autocorrelation':
    'Visits that follow one another in a field {side, select, above {stray to the same side} below {stray to opposite sides} other {stray as the model lets them}}: correlation {statistic, number, ::@@}; the model alone leads to {low, number, ::@@} to {high, number, ::@@}.',

  'questions/model-checks/without/refitted':
    'Without {level} ({by}, {rows, plural, one {one count} other {# counts}}) {sum} is {ratio, number, ::@@@} times what it is with all: {change, number, ::@@} standard errors away{turns, select, gains {, and its 95\u00a0% interval then holds no difference} loses {, and its 95\u00a0% interval then excludes no difference} other {}}.',
  'questions/model-checks/without/aliased':
    'Without {level} ({by}, {rows, plural, one {one count} other {# counts}}) {sum} cannot be estimated: all that is known of it comes from there.',
  'questions/model-checks/without/separated':
    'Without {level} ({by}, {rows, plural, one {one count} other {# counts}}) the model cannot be fitted: in part of what is left no insect was counted.',
  'questions/model-checks/without/not-fitted':
    'Without {level} ({by}, {rows, plural, one {one count} other {# counts}}) the model cannot be fitted.',

  'questions/model-checks/label/range': '{name} {low, number, ::@@@} to {high, number, ::@@@}',
  'questions/model-checks/label/value': '{name} {value, number, ::@@@}',
  'questions/model-checks/label/level': '{name}: {level}',
  'questions/model-checks/label/date': '{date}',
  'questions/model-checks/label/dates': '{from} to {to}',
  'questions/model-checks/label/quantiles': 'residuals from {low, number} to {high, number}',
  'questions/model-checks/label/means': 'rows with {low, number, ::@@@} to {high, number, ::@@@} expected',
  'questions/model-checks/label/all-rows': 'all rows',
  'questions/model-checks/label/apart': '{visits, plural, one {one visit apart} other {# visits apart}}',
  'questions/model-checks/label/beyond/above': 'above all that was drawn',
  'questions/model-checks/label/beyond/below': 'below all that was drawn',
  'questions/model-checks/label/by-the-model': '{line}, by the model alone',
  'questions/model-checks/label/with-all': '{sum}, with all',
  'questions/model-checks/label/without': 'without {level} ({by})',
  'questions/model-checks/unit/times-expected': 'times what the model expects',
  'questions/model-checks/unit/outliers': 'counts',
  'questions/model-checks/unit/autocorrelation': 'correlation',
  'questions/model-checks/unit/ratio': 'times',
}
