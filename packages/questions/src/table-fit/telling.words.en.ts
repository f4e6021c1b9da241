import type { Words } from '@thrum/model/ground'

/** What is said of a fit, and of what could not be fitted, in English. ICU message texts by id. */
export const words: Words = {
  'questions/fit/together': '{columns} together',
  'questions/fit/levels-together': '{levels}',
  'questions/fit/part/first': 'all at reference',
  'questions/fit/part/level': '{column}: {level}',
  'questions/fit/part/number': '{column} (+1)',
  'questions/fit/part/together': '{parts}',
  'questions/fit/pair': '{of} against {against}',
  'questions/fit/held': '{column} at {value}',
  'questions/fit/per-effort': 'per {per, number} of {effort}',

  'questions/fit/about':
    '{response} in {rows, plural, one {one row} other {# rows}}, {family}{zeros, select, some {, with zeros of another origin} other {}}: hanging on {fixed, plural, =0 {nothing but their mean} other {{terms}}}{random, plural, =0 {} other {; {groupings} drawn at random}}.',
  'questions/fit/family/nb2': 'as counts that scatter more the larger their mean (negative binomial, NB2; log link)',
  'questions/fit/family/nb1': 'as counts that scatter in proportion to their mean (negative binomial, NB1; log link)',
  'questions/fit/family/poisson': 'as counts that scatter by chance alone (Poisson; log link)',
  'questions/fit/family/binomial': 'as shares that scatter by chance alone (binomial; logit link)',
  'questions/fit/family/beta-binomial': 'as shares that scatter more than by chance (beta-binomial; logit link)',
  'questions/fit/family/gaussian': 'as measured numbers (normal; no link)',

  'questions/fit/choice/reference': '{column}: {level}',
  'questions/fit/choice/references': 'Each level is held against the reference of its column ({references}).',
  'questions/fit/choice/at-zero':
    'Coefficients of other columns, and of all at reference, are those where {numbers} would be 0; means are told at their mean.',
  'questions/fit/choice/added': 'Left out when they were named, and in because larger terms contain them: {added}.',
  'questions/fit/choice/slope':
    'The slope of {slope} is drawn at random for each {of}{apart, select, yes {, apart from the intercept} other {, together with the intercept}}.',
  'questions/fit/choice/effort': 'Effort: the log of {effort} is added, so that rates are compared.',
  'questions/fit/choice/offset': '{offset} is added to the linear predictor as it is.',
  'questions/fit/choice/trials': 'Each count is a part of {trials}.',
  'questions/fit/choice/zeros':
    'The chance of a zero of another origin is {count, plural, =0 {one for all rows} other {by {terms}}} (logit link).',
  'questions/fit/choice/likelihood':
    '{how, select, squares {Fitted by least squares} restricted {Fitted by restricted maximum likelihood} full {Fitted by maximum likelihood} laplace {Fitted by maximum likelihood, groupings by the Laplace approximation} nodes {Fitted by maximum likelihood, the grouping by quadrature with {nodes} nodes} other {Fitted by maximum likelihood}}.',
  'questions/fit/choice/limits':
    '{by, select, profile {95\u00a0% limits by the profile of the likelihood, cut at the t of as many degrees of freedom as df says} bootstrap {95\u00a0% limits by {refits, number} refits to counts drawn from the fit; p by t} other {95\u00a0% limits and p by t}}. df {groups, plural, =0 {is rows less columns} other {is by what the units of a column are: levels of a grouping within which it is the same, else rows}}.',

  'questions/fit/scatter/group': '{of} ({levels, plural, one {# level} other {# levels}})',
  'questions/fit/scatter/slope-of': '{slope} by {of}',
  'questions/fit/scatter/zero': 'no scatter found beside that of single rows: a result, not a failure',
  'questions/fit/scatter/deviation':
    '{link, select, log {a typical level is {fold, number}-fold above or below the middle one} logit {odds of a typical level are {fold, number}-fold above or below the middle one} other {a typical level lies so far from the middle one}}',
  'questions/fit/scatter/deviation-at-zero': '{explained}, where {slope} is 0',
  'questions/fit/scatter/slope': 'of the slopes; correlation with the intercepts {correlation, number}',
  'questions/fit/scatter/slope-alone': 'of the slopes',
  'questions/fit/scatter/residual': 'rows',
  'questions/fit/scatter/residual-said': 'a typical row lies so far from its mean',
  'questions/fit/scatter/dispersion-nb2': 'theta',
  'questions/fit/scatter/dispersion-nb1': 'phi',
  'questions/fit/scatter/dispersion-beta-binomial': 'a + b',
  'questions/fit/scatter/said-nb2': 'variance of a count: mean + mean²/{value, number}',
  'questions/fit/scatter/said-nb1': 'variance of a count: mean × (1 + {value, number})',
  'questions/fit/scatter/said-beta-binomial':
    'shares of single rows scatter as a beta law with a + b = {value, number}: the smaller, the more they scatter',
  'questions/fit/scatter/as-chance': 'no scatter found beyond chance',

  'questions/fit/without/full': 'by the full likelihood',
  'questions/fit/without/boundary': 'a variance cannot be below 0: half a chi-square of 0 and half of 1 df',
  'questions/fit/without/two': 'a variance on its edge is among them: p is rather too large',
  'questions/fit/without/nothing': 'nothing is estimated of it',
  'questions/fit/without/search': 'the larger model was not found to be as likely as the smaller: its search stopped short',

  'questions/fit/check/laplace':
    '{verdict, select, fine {The Laplace approximation is good enough here} other {The Laplace approximation is not good enough here: fit it by quadrature with --nodes 15}}: exact integration would move a coefficient by {coefficients, number} and the scatter of the grouping by {deviation, number} of their standard errors.',

  'questions/fit/caution/refused':
    '{count, plural, one {One line should be a row and could not be read as one} other {# lines should be rows and could not be read as such}} ({count, plural, one {line} other {lines}} {lines}): {count, plural, one {it is} other {they are}} not in the fit.',
  'questions/fit/caution/refused/cure':
    'Look at {count, plural, one {it} other {them}}: more or fewer cells than the header, or a quote that was not closed.',
  'questions/fit/caution/aside':
    '{count, plural, one {One line was} other {# lines were}} taken for a title, a total, a note or a header once more, and not for a row ({count, plural, one {line} other {lines}} {lines}).',
  'questions/fit/caution/whole-units':
    '{columns}: the same throughout each level of {of}, so that {units, number} levels decide, and not {rows, number} rows. A comparison of whole fields is decided by the question what-differs; this describes.',
  'questions/fit/caution/whole-units/cure': 'Bring the counts into a project and ask what-differs.',
  'questions/fit/caution/few-groups': '{of} has only {groups} levels: they say little of how levels scatter.',
  'questions/fit/caution/few-groups/cure': 'Take it as a fixed column instead.',
  'questions/fit/caution/perfect-correlation':
    '{of}: slopes and intercepts are estimated as one; too few levels tell them apart.',
  'questions/fit/caution/perfect-correlation/cure': 'Draw them apart with "--slope-apart", or leave the slope out.',
  'questions/fit/caution/no-extra-zeros':
    'No zeros of another origin were found: their chance is as good as none, and its coefficients say no more than that.',
  'questions/fit/caution/no-extra-zeros/cure': 'Leave out --zeros.',
  'questions/fit/caution/wide-offset': 'The largest effort is {fold, number} times the smallest: one row weighs as many others.',
  'questions/fit/caution/wide-offset/cure': 'Look whether all efforts are in one unit.',
  'questions/fit/caution/plain-family':
    '{family, select, poisson {Poisson takes counts for scattering by chance alone. Where they scatter more, its limits are too narrow: compare the AICc of --family nb2.} other {The binomial takes shares for scattering by chance alone. Where they scatter more, its limits are too narrow: compare the AICc of --family beta-binomial.}}',
  'questions/fit/caution/full-likelihood':
    'Maximum likelihood finds scatter of groupings and standard errors rather too small. --reml is fairer; keep this one to compare models of other columns.',
  'questions/fit/caution/no-grouping':
    'The {rows, number} rows are taken as independent. Rows of one field, day or observer are not: name those in --random.',
  'questions/fit/caution/slope-without-term':
    '{slope} is not in --fixed: the slopes of {of} scatter about 0, and not about a slope of all.',
  'questions/fit/caution/slope-without-term/cure': 'Add it to --fixed.',
  'questions/fit/caution/no-effort': 'No effort was named: counts are compared as if all were watched alike.',
  'questions/fit/caution/unchecked': 'The fit was not checked, as was asked.',
  'questions/fit/caution/zeros-mechanism':
    'Zeros of another origin are in the model: say by what they come. Means are those of rows without such a zero.',

  'questions/fit/refused/all-zero': 'Nothing was counted: all counts are 0.',
  'questions/fit/refused/all-zero/cure': 'There is no rate to compare. Say so: it is a result.',
  'questions/fit/refused/all-trials': 'Every part is its whole: there is no share to compare.',
  'questions/fit/refused/all-trials/cure': 'Say so: it is a result.',
  'questions/fit/refused/separated':
    'Somewhere along {columns} there are zeros only (or wholes only), so that no finite ratio is the likeliest.',
  'questions/fit/refused/separated/cure': 'Tell that level in words, leave its rows out, or join levels; then fit the rest.',
  'questions/fit/refused/not-converged': 'The search found no top. What it hangs on: {suspects}.',
  'questions/fit/refused/not-converged/cure': 'Leave one of these out, or join levels that have few rows.',
  'questions/fit/refused/not-converged-unnamed': 'The search found no top.',
  'questions/fit/refused/not-converged-unnamed/cure': 'Leave out columns or groupings, one after the other.',
  'questions/fit/refused/not-identifiable': 'The rows cannot tell these from each other: {suspects}.',
  'questions/fit/refused/not-identifiable/cure': 'Leave one of them out.',
  'questions/fit/refused/not-identifiable-unnamed': 'The likelihood has no single top: the rows tell too little for this model.',
  'questions/fit/refused/not-identifiable-unnamed/cure': 'Leave out columns or groupings, one after the other.',
  'questions/fit/refused/grouping-blurred':
    'The scatter of {of} cannot be told from that of rows, of the columns, or of the groupings before it.',
  'questions/fit/refused/grouping-blurred/cure': 'Leave it out of --random, or name it in --fixed instead.',
  'questions/fit/refused/no-residual': 'The columns explain every row exactly: there is no scatter to judge anything by.',
  'questions/fit/refused/no-residual/cure': 'Fit fewer columns, or more rows.',
  'questions/fit/refused/one-level': 'All rows have one level of "{column}" ("{level}"): it cannot tell anything.',
  'questions/fit/refused/one-level/cure': 'Leave it out.',
  'questions/fit/refused/one-group': 'All rows are of one level of {of}: how levels scatter cannot be told.',
  'questions/fit/refused/one-group/cure': 'Leave it out of --random.',
  'questions/fit/refused/few-rows':
    '{rows, plural, one {One row} other {# rows}} cannot carry {columns, plural, one {one coefficient} other {# coefficients}}.',
  'questions/fit/refused/few-rows/cure': 'Name fewer columns, or bring more rows.',

  'questions/fit/suspect/zeros': 'other zeros by {of}',
  'questions/fit/suspect/dispersion': 'the scatter of single counts',
  'questions/fit/suspect/deviation': 'the scatter of {of}',
  'questions/fit/suspect/slope-deviation': 'the scatter of the slopes of {of}',
  'questions/fit/suspect/slope-correlation': 'the correlation of slopes and intercepts of {of}',
}
