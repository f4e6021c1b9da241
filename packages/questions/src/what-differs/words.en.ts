import type { Words } from '@thrum/model/ground'

/** What `what-differs` says, in English. ICU message texts by id. */
export const words: Words = {
  'questions/what-differs/title': 'a contrast between levels of anything recorded',
  'questions/what-differs/asked':
    '{kinds}{against}: {many, select, yes {do they} other {does it}} differ between {levels} ({contrast})?',
  'questions/what-differs/asked/since': '{kinds}{against}: did {many, select, yes {they} other {it}} change on {date}?',
  'questions/what-differs/asked/since-by':
    '{kinds}{against}: did {many, select, yes {they} other {it}} change on {date}, by {contrast} ({levels})?',
  'questions/what-differs/asked/slope':
    '{kinds}{against}: how {many, select, yes {do they} other {does it}} change with {name} ({step})?',
  'questions/what-differs/asked/against': ' for each {kind}',
  'questions/what-differs/headline/shown/caused':
    '{kind}: {levelB} caused, under these conditions, {ratio, number, ::@@@} times the {noun} of {levelA} ({level, number, ::scale/100 .##}\u00a0% interval {low, number, ::@@@} to {high, number, ::@@@}; {fields} fields); {size}.',
  'questions/what-differs/headline/shown/changed-more':
    '{kind}: {levelB} changed {ratio, number, ::@@@} times as much in {noun} as {levelA} ({level, number, ::scale/100 .##}\u00a0% interval {low, number, ::@@@} to {high, number, ::@@@}; {fields} fields); {size}.',
  'questions/what-differs/headline/shown/associated':
    '{kind}: {levelB} was associated with {ratio, number, ::@@@} times the {noun} of {levelA} ({level, number, ::scale/100 .##}\u00a0% interval {low, number, ::@@@} to {high, number, ::@@@}; {fields} fields); {size}.',
  'questions/what-differs/size/worth-acting-on': 'worth acting on',
  'questions/what-differs/size/may-be-too-small': 'the direction is shown, the size may be too small to matter',
  'questions/what-differs/headline/alike/no-difference-seen':
    '{kind}: {levelA} and {levelB} are alike for practical purposes: {ratio, number, ::@@@} times the {noun} ({level, number, ::scale/100 .##}\u00a0% interval {low, number, ::@@@} to {high, number, ::@@@}; {fields} fields), all within {least, number, ::@@@} to {worth, number}.',
  'questions/what-differs/headline/alike/difference-too-small':
    '{kind}: a difference between {levelA} and {levelB}, too small to act on: {ratio, number, ::@@@} times the {noun} ({level, number, ::scale/100 .##}\u00a0% interval {low, number, ::@@@} to {high, number, ::@@@}; {fields} fields).',
  'questions/what-differs/headline/leaning':
    '{kind}: leaning towards {direction} with {levelB}, not enough to act on: {ratio, number, ::@@@} times the {noun} of {levelA} ({level, number, ::scale/100 .##}\u00a0% interval {low, number, ::@@@} to {high, number, ::@@@}; {fields} fields).',
  'questions/what-differs/headline/unsettled':
    '{kind}: not settled. {levelB} had {ratio, number, ::@@@} times the {noun} of {levelA}, but anything from {low, number, ::@@@} to {high, number, ::@@@} fits the counts ({level, number, ::scale/100 .##}\u00a0% interval; {fields} fields).',
  'questions/what-differs/headline/design-blocks':
    '{kind}: these counts cannot tell what {cause} did: {reasons}. What can be said stands below.',
  'questions/what-differs/headline/several': '{comparisons} comparisons asked together: {each}.',
  'questions/what-differs/headline/one-of-several': '{kind} ({levelB} against {levelA}): {verdict}',

  'questions/kinds/asked': 'How many of {others} for each {kindA} in the same watches?',
  'questions/kinds/headline/shown':
    '{kindB}: {ratio, number, ::@@@} for each {kindA} in the same watches ({level, number, ::scale/100 .##}\u00a0% interval {low, number, ::@@@} to {ends, select, open {no limit} other {{high, number, ::@@@}}}; {fields} fields); {size}.',
  'questions/kinds/headline/alike':
    '{kindB} and {kindA} were about equally frequent in the same watches: {ratio, number, ::@@@} for each ({level, number, ::scale/100 .##}\u00a0% interval {low, number, ::@@@} to {ends, select, open {no limit} other {{high, number, ::@@@}}}; {fields} fields), all within {least, number, ::@@@} to {worth, number}.',
  'questions/kinds/headline/leaning':
    '{kindB}: leaning towards {direction} than {kindA}, not enough to act on: {ratio, number, ::@@@} for each ({level, number, ::scale/100 .##}\u00a0% interval {low, number, ::@@@} to {ends, select, open {no limit} other {{high, number, ::@@@}}}; {fields} fields).',
  'questions/kinds/headline/unsettled':
    '{kindB}: not settled. {ratio, number, ::@@@} for each {kindA}, but anything from {low, number, ::@@@} to {ends, select, open {no limit} other {{high, number, ::@@@}}} fits the counts ({level, number, ::scale/100 .##}\u00a0% interval; {fields} fields).',
  'questions/kinds/headline/design-blocks': '{kindB} against {kindA}: not to be told beyond these watches: {reasons}.',
  'questions/kinds/headline/several': '{comparisons} comparisons asked together: {each}.',
  'questions/kinds/headline/one-of-several': '{kindB} for each {kindA}: {verdict}',
  'questions/kinds/can-say/counted':
    'We counted {first} {kindB} and {second} {kindA} in {watches, plural, one {one watch} other {# watches}} of {fields, plural, one {one field} other {# fields}}.',
  'questions/kinds/cannot-say/shown':
    'That {kindB} does more pollination than {kindA}, or the other way round: visits are not pollination.',
  'questions/kinds/cannot-say/alike': 'That {kindB} and {kindA} do the same pollination: visits are not pollination.',
  'questions/kinds/cannot-say/leaning': 'That one of {kindA} and {kindB} has been shown to be more frequent.',
  'questions/kinds/cannot-say/unsettled': 'That {kindA} and {kindB} are equally frequent, or that one outnumbers the other.',
  'questions/kinds/cannot-say/design-blocks': 'Which of {kindA} and {kindB} is more frequent in fields like these.',
  'questions/kinds/next/more': 'More fields; more minutes in the same fields help little.',
  'questions/kinds/next/settled': 'Settled for what was asked.',

  // The same comparison by other analyses
  'questions/analysis/as-asked': 'as asked ({method}{adjusted, select, yes {, adjusted for {nuisances}} other {}})',
  'questions/analysis/field-t': 'field-level t on log rates',
  'questions/analysis/unadjusted': 'not adjusted',
  'questions/analysis/without-nuisances': 'not adjusted for {nuisances}',
  'questions/analysis/adjusted': 'adjusted for {nuisances}',
  'questions/analysis/window-all': 'with the counts outside the weather window',
  'questions/analysis/window-in': 'without the counts outside the weather window',
  'questions/analysis/without-visit': 'without the visit to {field}{dated, select, yes { on {date}} other {}}',
  'questions/analysis/model': 'count model (negative binomial)',
  'questions/analysis/model-minutes': 'count model with ln(minutes) as a covariate',
  'questions/analysis/model-per-flower': 'count model per flower',
  'questions/analysis/model-flowers': 'count model with ln(open flowers) as a covariate',
  'questions/analysis/model-shares': 'model of shares (beta-binomial)',
  'questions/analysis/permutation': 'permutation of fields',
  'questions/analysis/permutation/too-few':
    'p = {p, number, ::@@}; the smallest p that {fields} fields could give is {smallest, number, ::@@}, so this test could not have shown anything',
  'questions/analysis/permutation/apart':
    'p = {p, number, ::@@} (the smallest that {fields} fields could give is {smallest, number, ::@@}): had the levels lain otherwise, so great a difference would be rare',
  'questions/analysis/permutation/not-apart':
    'p = {p, number, ::@@} (the smallest that {fields} fields could give is {smallest, number, ::@@}): had the levels lain otherwise, so great a difference would not be rare',
  'questions/analysis/none/blocked': 'the design blocks it',
  'questions/analysis/none/nothing-left': 'what is left cannot be compared',
  'questions/analysis/none/too-many-visits': 'too many visits for a model while you wait',
  'questions/analysis/none/lost': 'the model cannot tell the levels from what stands beside them',
  'questions/analysis/none/all-zero': 'all counts are zero',
  'questions/analysis/none/all-trials': 'nothing but this kind was counted',
  'questions/analysis/none/separated': 'a level or block without any insect has no rate that a model could tell from zero',
  'questions/analysis/none/not-converged': 'the fit did not settle',
  'questions/analysis/none/not-identifiable': 'the counts do not settle the parts of the model',
  'questions/analyses/holds':
    '{comparison}: the verdict does not hang on the choice of analysis: {count, plural, =2 {both analyses give} other {all # analyses give}} {verdict}.',
  'questions/analyses/alone': '{comparison}: {verdict}; no other analysis could be set beside it.',
  'questions/analyses/hangs': '{comparison}: the verdict hangs on the choice of analysis: {each}.',
  'questions/analyses/gives': '{analyses} {count, plural, one {gives} other {give}} {verdict}',
  'questions/analyses/and': '{before}; {next}',
  'questions/analyses/permutation-finds/less':
    '{comparison}: the verdict hangs on the choice of analysis: {count, plural, one {the interval gives} other {all # analyses with an interval give}} {verdict}, and the permutation of fields does not bear it out.',
  'questions/analyses/permutation-finds/more':
    '{comparison}: the verdict hangs on the choice of analysis: {count, plural, one {the interval gives} other {all # analyses with an interval give}} {verdict}, and the permutation of fields finds a difference.',
  'questions/analyses/permutation': 'Permutation of fields: {told}.',
  'questions/analyses/missing': 'Not to be had: {each}.',
  'questions/analyses/missing/one': '{label} ({because})',
  'questions/analyses/held-back': 'It is held at {verdict} all the same, for the reason under the cautions.',
  'questions/analyses/several':
    '{hanging, plural, =0 {Of none of {comparisons} comparisons does the verdict hang} one {Of one of {comparisons} comparisons the verdict hangs} other {Of # of {comparisons} comparisons the verdict hangs}} on the choice of analysis.',
  'questions/analyses/row': '{comparison}, {label}: {verdict}',
  'questions/analyses/row/none': '{comparison}, {label}: not to be had',
  'questions/analyses/row/permutation':
    '{comparison}, permutation of fields: p = {p, number, ::@@}, the least possible {smallest, number, ::@@}',
  'questions/figure/analyses': 'The same comparison by other analyses',
}
