import type { Words } from '@thrum/model/ground'

/** What all questions share, in English. ICU message texts by id. */
export const words: Words = {
  text: '{text}',
  'questions/headline/with-notes': '{main} {notes}',

  // What stops a question
  'questions/no-counts-yet': 'This project holds no counts yet.',
  'questions/no-counts-yet/remedy': 'Bring a table first: thrum import counts.csv',
  'questions/no-counts-selected': 'No count fulfils these conditions; the project holds {of}.',
  'questions/no-counts-selected/remedy': 'Loosen --where, --field, --crop or --season.',
  'questions/slope-relative': 'A slope of a relative count is not worked out yet.',
  'questions/slope-relative/remedy': 'Leave out --against, or compare levels without --step.',
  'questions/slope-since': 'A slope and a before-and-after comparison cannot be asked at once.',
  'questions/slope-since/remedy': 'Leave out --since or --step.',
  'questions/against-itself': '"{kind}" cannot be held against itself.',
  'questions/against-itself/remedy': 'Name another kind with --against.',
  'questions/one-level': 'There is nothing to compare: "{factor}" has one level only ("{level}") in these counts.',
  'questions/one-level/remedy': 'Loosen the conditions, or compare something else.',
  'questions/no-levels': 'Nothing is recorded of "{factor}" in these counts.',
  'questions/no-levels/remedy': 'Loosen the conditions, or tell the counts apart by something else.',
  'questions/worth-needed': 'Say first which difference would be worth acting on. It has no default.',
  'questions/worth-needed/remedy':
    'Add --worth and a ratio; suggested here: --worth {suggested, number} (a smaller difference would then count as too small to act on).',
  'questions/two-kinds-needed': 'To compare kinds, name two or more.',
  'questions/two-kinds-needed/remedy': 'For example --levels "honey bee,bumble bee", the reference first. Kinds: {known}.',

  'questions/not-of-kinds': 'Kinds in the same watches are not compared with {options}.',
  'questions/not-of-kinds/remedy':
    'Leave out {options}; or compare something else than kinds, and name one kind with --kinds and the other with --against.',

  // Options
  'questions/option/field': 'only these fields',
  'questions/option/crop': 'only these crops',
  'questions/option/season': 'only these seasons',
  'questions/option/where': 'only counts for which all of these hold, e.g. "stage<=67"',
  'questions/option/except': 'leave out counts for which all of these hold',
  'questions/option/unit': 'only counts in this counting unit',
  'questions/option/window': 'leave out counts made when the insects could not fly (in), or keep them (all)',
  'questions/option/per': 'rate per time watched, per open flower, or per area',
  'questions/option/kinds': 'kinds to compare, each; without it all kinds together',
  'questions/option/kinds-each': 'kinds to tell; without it every kind',
  'questions/option/by': 'tell them apart by something recorded (field, stage, season ...)',
  'questions/option/between': 'what to compare: strip, position, daypart, season, kind, or anything recorded',
  'questions/option/levels': 'the levels to compare, the reference first',
  'questions/option/step': 'one slope of a measured level per so large a step (distances and hives: times so much)',
  'questions/option/since': 'before and after this date; with --between also against fields without the change',
  'questions/option/against': 'count relative to this kind in the same watches',
  'questions/option/worth': 'the smallest ratio worth acting on',
  'questions/option/expect': 'the direction that was expected beforehand',
  'questions/option/looks': 'with how many other states of the data the answer was looked at before',
  'questions/option/worthSet': 'whether that ratio was set before the answer was first looked at',

  // Verdicts and directions
  'questions/verdict/shown': 'shown',
  'questions/verdict/alike': 'alike',
  'questions/verdict/leaning': 'leaning',
  'questions/verdict/unsettled': 'unsettled',
  'questions/verdict/design-blocks': 'blocked by the design',
  'questions/direction/more': 'more',
  'questions/direction/fewer': 'fewer',
  'questions/headline/worth-after-look':
    'The smallest ratio worth acting on ({worth, number}) was set after the answer had been looked at.',

  // Nouns
  'questions/noun/visitors': 'visitors',
  'questions/noun/visits': 'visits',
  'questions/noun/watch/time': '{thing} per minute',
  'questions/noun/watch/flower': '{thing} per flower and minute',
  'questions/noun/watch/area': '{thing} per area and minute',
  'questions/noun/scan/time': '{thing} per scan',
  'questions/noun/scan/flower': '{thing} per flower',
  'questions/noun/scan/area': '{thing} per area',
  'questions/noun/relative': 'visitors for each {other}',
  'questions/measure/time': 'per time watched',
  'questions/measure/flower': 'per flower',
  'questions/measure/area': 'per area',
  'questions/unit/ratio': 'times',
  'questions/unit/times': 'times',
  'questions/unit/share': 'of all visitors',
  'questions/unit/share-sightings': 'among sightings',
  'questions/unit/rate/time': 'per hour',
  'questions/unit/rate/flower': 'per 100 flowers and hour',
  'questions/unit/rate/area': 'per 100 m² and hour',
  'questions/unit/scan/time': 'per scan',
  'questions/unit/scan/flower': 'per 100 flowers',
  'questions/unit/scan/area': 'per 100 m²',
  'questions/contrast/levels': '{factor}',
  'questions/contrast/before-after': 'before and after',
  'questions/cause/level': '{level}',
  'questions/slope/base': '{name} as it is',
  'questions/slope/step': '{name} higher by {step, number}',
  'questions/slope/fold': '{step, number} times the {name}',
  'questions/cause/change': 'the change on {date}',
  'questions/contrast/before-after-control': 'before and after, by {factor}',

  // Why an answer is blocked, shortly
  'questions/reason/tangled': '{nuisances} cannot be told apart from it',
  'questions/reason/tangled-blocks': 'each block holds one level only',
  'questions/reason/no-control': 'there is no control',
  'questions/reason/not-replicated': 'too few fields',
  'questions/reason/same-bees-hives': 'the distance of the hives changes too little: the same bees came',
  'questions/reason/same-bees-fields': 'fields lie too near each other',
  'questions/reason/effort-unknown': 'watched minutes are not recorded',
  'questions/reason/flowers-not-counted': 'flowers were not counted',
  'questions/reason/area-unknown': 'the watched area is not recorded',
  'questions/reason/zeros-missing': 'it is not known whether absent kinds were looked for',
  'questions/reason/outside-window': 'all counts of one level lie outside the weather window',
  'questions/reason/stages-apart': 'bloom stages lie too far apart',
  'questions/reason/one-observer-per-level': 'each level had an observer of its own',
  'questions/reason/refused': 'too few insects or fields',
  'questions/refusal/few-fields': 'only {fields, plural, =0 {no field} one {one field} other {# fields}} with {level}',
  'questions/refusal/few-pairs':
    'only {fields, plural, =0 {no field holds} one {one field holds} other {# fields hold}} both levels',
  'questions/refusal/no-freedom': 'too few fields for what has to be adjusted',
  'questions/refusal/lost': 'the levels cannot be told apart from the blocks',
  'questions/refusal/no-scatter': 'all fields say exactly the same, so their scatter is unknown',
  'questions/refusal/level-without-insects': 'none was counted with {level}',
  'questions/refusal/mostly-zero': 'more than half of the totals by field and level are zero ({zeros} of {totals})',
  'questions/refusal/beyond-range':
    'the fields (or counts) differ far less in {name} than the step asked for; a slope cannot be carried so far beyond what was measured',
  'questions/refusal/few-in-level':
    'too few insects: {insects, plural, one {one} other {#}} with {level} in all fields together, {least, number} are the least',
  'questions/refusal/few-insects':
    'too few insects: {mean, number, ::.0} by field and level on average (before and after with controls: in the poorest of the four groups), {least, number} are the least',

  // Estimates
  'questions/estimate/ratio': '{kind}: {levelB} / {levelA}',
  'questions/estimate/ratio-together': '{kind}: {levelB} / {levelA}, level for all comparisons together',
  'questions/estimate/ratio-90': '{kind}: {levelB} / {levelA}, 90\u00a0%',
  'questions/estimate/ratio-without': '{kind}: {levelB} / {levelA}, not adjusted for {nuisances}',
  'questions/estimate/ratio-described': '{kind}: {levelB} / {levelA}, as counted in these fields, credited to nothing',
  'questions/estimate/ratio-unadjusted': '{kind}: {levelB} / {levelA}, not adjusted',
  'questions/estimate/ratio-watches': '{kind}: {levelB} / {levelA}, these watches only',
  'questions/estimate/variant/window-all': '{kind}: {levelB} / {levelA}, with the counts outside the weather window',
  'questions/estimate/variant/per-time': '{kind}: {levelB} / {levelA}, per time watched',
  'questions/estimate/variant/per-area': '{kind}: {levelB} / {levelA}, per area',
  'questions/estimate/variant/per-flower': '{kind}: {levelB} / {levelA}, per flower',
  'questions/estimate/rate-at': '{kind}, {level}: {total} counted, these watches only',
  'questions/estimate/rate': '{kind}{named, select, yes {, {group}} other {}}',
  'questions/estimate/rate-watches': '{kind}{named, select, yes {, {group}} other {}}, these watches only',
  'questions/estimate/rate-mean': '{kind}{named, select, yes {, {group}} other {}}, plain mean of fields',
  'questions/estimate/share': '{kind}{named, select, yes {, {group}} other {}}, share',
  'questions/estimate/share-at': '{kind}, {level}: {part} of {whole}',
  'questions/estimate/relative': '{kind} for each other visitor: {levelB} / {levelA}',
  'questions/estimate/relative-unadjusted': '{kind} for each other visitor: {levelB} / {levelA}, not adjusted',
  'questions/estimate/kinds': '{kindB} for each {kindA}',
  'questions/estimate/inflation': '{nuisances} with {levelB} against {levelA}',

  // Methods by name
  'questions/method/field-t': 'field-level t on log rates',
  'questions/method/field-t-adjusted': 'field-level t on log rates, adjusted',
  'questions/method/thinned': 'field-level contrast of counts thinned to equal exposure',
  'questions/method/thinned-adjusted': 'field-level contrast of counts thinned to equal exposure, adjusted',
  'questions/method/relative-t': 'field-level t on log relative counts',
  'questions/method/relative-t-adjusted': 'field-level t on log relative counts, adjusted',
  'questions/method/poisson-watches': 'exact Poisson interval of these watches',
  'questions/method/exact-ratio': 'exact conditional ratio of these watches',
  'questions/method/odds-exact': 'exact conditional odds ratio of these watches',
  'questions/method/odds-t': 'odds from the share over fields (logit-t)',
  'questions/method/odds-watches': 'exact binomial odds of these watches',
  'questions/method/goodman': 'Goodman simultaneous intervals of these watches',
  'questions/method/share-t': 'share over fields (logit-t)',
  'questions/method/ratio-of-sums': 'rate over fields (ratio of sums, log-t)',
  'questions/method/mean-of-rates': 'plain mean of field rates, t',
  'questions/method/inflation': 'inflation of the variance of the contrast',

  // Choices
  'questions/choice/structure/between-fields': 'Fields are compared: {fields} fields, one number each.',
  'questions/choice/structure/within-fields': 'Differences within fields are compared with none: {fields} fields.',
  'questions/choice/structure/before-after':
    'Before and after within {fields, plural, one {one field} other {# fields}}, without control.',
  'questions/choice/structure/before-after-control': 'Changes from before to after are compared between {fields} fields.',
  'questions/choice/blocks': 'Blocks: {blocks}.',
  'questions/choice/thinned':
    '{kinds}: few insects or unequal exposures bend the t on logarithms; the totals are thinned to equal exposure instead, which is free of that. The t stands among the other analyses.',
  'questions/choice/adjusted':
    'The headline is adjusted for {nuisances}, by the design alone; the unadjusted ratio stands beside it.',
  'questions/choice/not-adjusted/freedom': 'Not adjusted for {nuisance}: too few fields.',
  'questions/choice/not-adjusted/rank': 'Not adjusted for {nuisance}: it differs in the same way in every field.',
  'questions/choice/several':
    '{contrasts} comparisons asked together: verdicts use intervals at 1 - 0.05/{contrasts} and 1 - 0.10/{contrasts}.',
  'questions/choice/primary': '{kind} was declared primary before counting: its verdict is read alone, at 1 - 0.05/{contrasts}.',
  'questions/choice/early': 'An early look, before the last planned visit: only a 99.9\u00a0% interval can settle it now.',
  'questions/choice/no-plan': 'No plan says when counting ends; it is taken as finished.',
  'questions/choice/measured/linear': 'One slope on {name}, told for a step of {step, number}.',
  'questions/choice/measured/log-distance': 'One slope on ln({name} + 10 m), told for {step, number} times as much.',
  'questions/choice/measured/log-hives': 'One slope on ln({name} + 0.5), told for {step, number} times as much.',
  'questions/choice/worth': 'A ratio of {worth, number} (or 1/{worth, number}) is taken as the smallest worth acting on.',
  'questions/choice/worth-suggested':
    'A ratio of {worth, number} is taken as the smallest worth acting on, as suggested; nobody set it.',
  'questions/choice/rates-over-fields': 'Fields are the unit: the scatter between fields makes the interval.',
  'questions/choice/rates-of-watches':
    'With fewer than three fields the watches are the unit, taken as independent: the interval holds for these minutes only.',
  'questions/left-out/no-field': '{counts, plural, one {One count names} other {# counts name}} no field; left out.',
  'questions/left-out/no-level': '{counts, plural, one {One count has} other {# counts have}} no level recorded; left out.',
  'questions/left-out/level-not-asked': '{counts, plural, one {One count has} other {# counts have}} another level; left out.',
  'questions/left-out/no-date': '{counts, plural, one {One count has} other {# counts have}} no date; left out.',
  'questions/left-out/field-lacks-a-level': 'Left out because they hold one level only: {fields}.',
  'questions/left-out/field-holds-both-levels': 'Left out because they hold more than one level: {fields}.',
  'questions/left-out/no-effort':
    '{counts, plural, one {One count has} other {# counts have}} no known effort; left out ({fields}).',
  'questions/left-out/outside-window':
    '{counts, plural, one {One count was} other {# counts were}} made outside the weather window; left out.',
  'questions/left-out/excepted': '{counts, plural, one {One count was} other {# counts were}} left out by --except.',

  // Checks
  'questions/check/permutation':
    '{kind}: permutation of fields ({how}) p = {p, number, ::.0000}; the smallest it could give here is {smallest, number, ::.0000}.',
  'questions/check/permutation/exact': 'all arrangements',
  'questions/check/permutation/drawn': 'drawn arrangements',
  'questions/check/coverage/rates':
    'By this rule an interval covered the truth in 93\u00a0% or more of simulated data sets in each of 1,191 kinds of design with five insects or more a field, and in 95\u00a0% in the middle of them (docs/trials/calibration.md).',
  'questions/check/coverage':
    'Such an interval covered the truth in 93.5 to 96.2\u00a0% of simulated data sets (144 kinds of design), with the refusals used here.',
  'questions/check/thresholds': 'The thresholds of the audit are common practice without a source; docs/limits.md lists them.',
  'questions/check/holm': 'Holm p values, beside the verdicts: {each}.',
  'questions/check/holm-one': '{kind} {p, number, ::.0000}',
  'questions/check/dispersion': '{kind}: scatter of the watches {dispersion, number, ::.0#} times that of chance.',

  // Cautions of the analysis
  'questions/caution/influential-visit':
    '{kind}: the verdict ({verdict}) hangs on {visits, plural, one {one visit} other {any one of # visits}}: {each}{more, plural, =0 {} other {, and # more}}.',
  'questions/caution/influential-visit/one': 'without {field} on {date} it would be {verdict}',
  'questions/caution/influential-visit/cure': 'Look at these counts in the field book; more visits make each weigh less.',
  'questions/caution/hangs-on-adjustment': '{kind}: the verdict ({verdict}) hangs on what was adjusted for: {each}.',
  'questions/caution/hangs-on-adjustment/one': 'not adjusted for {nuisances} it would be {verdict}',
  'questions/caution/repeated-peeks':
    'This was looked at before with {looks, plural, one {another state} other {# other states}} of the data. Each look is another chance to be misled by luck.',
  'questions/caution/repeated-peeks/cure': 'Decide beforehand which visit is the last, and look then.',
  'questions/caution/refused': '{kind}: not answered, because {why}.',
  'questions/caution/not-adjusted': '{kind}: the headline could not be adjusted for {nuisances}.',
  'questions/caution/not-adjusted/cure': 'Keep it even between levels, or count more fields.',
  'questions/caution/adjustment-matters':
    '{kind}: adjusting for {nuisances} changes the ratio from {unadjusted, number, ::@@@} to {adjusted, number, ::@@@}, more than the difference asked about.',
  'questions/caution/flowers-differ':
    'The levels differ in open flowers. A rate per flower would hide that, so the headline is told {measure}; per flower stands beside it.',
  'questions/caution/measures-disagree': 'Counted {other}, the difference points the other way: the verdict is held at leaning.',
  'questions/caution/counts-clump':
    '{kind}: watches scatter {dispersion, number, ::.0} times as much as chance alone; the exact interval is too narrow.',
  'questions/caution/counts-clump/cure': 'Three fields or more give an interval that holds.',
  'questions/caution/outside-window':
    '{counts, plural, one {One count was} other {# counts were}} made when these insects could not be expected to fly; left out.',
  'questions/caution/kinds-not-replicated/block':
    'Only {fields, plural, =0 {no field} one {one field} other {# fields}}: what was counted holds for these watches only.',
  'questions/caution/kinds-not-replicated/warn': 'Only {fields} fields: the interval is wide, and one odd field can sway it.',
  'questions/caution/kinds-not-replicated/cure': '{more, plural, one {One more field} other {# more fields}}.',

  // What may be said, whatever the question
  'questions/can-say/counted': 'We counted {kind} in {fields, plural, one {one field} other {# fields}}: {each}.',
  'questions/can-say/counted-at': '{level}: {total} ({watches, plural, one {one watch} other {# watches}})',
  'questions/can-say/shares-watches':
    'Of all {among, select, sightings {sightings} other {visitors counted}} ({level}), in these watches only: {each}.',
  'questions/can-say/shares-fields':
    'Of all {among, select, sightings {sightings} other {visitors counted}} ({level}), over fields: {each}.',
  'questions/can-say/share':
    '{kind} {share, number, ::scale/100 @@}\u00a0% ({low, number, ::scale/100 @@}\u00a0% to {high, number, ::scale/100 @@}\u00a0%)',
  'questions/can-say/relative-watches':
    'In these watches, {kind} for each other visitor came {ratio, number, ::@@@} times as often ({levelB} against {levelA}; 95\u00a0% interval {low, number, ::@@@} to {ends, select, open {no limit} other {{high, number, ::@@@}}}). What thins all kinds alike cancels in this; kinds may respond differently.',
  'questions/can-say/relative-fields':
    'Over {fields} fields, {kind} for each other visitor came {ratio, number, ::@@@} times as often ({levelB} against {levelA}; 95\u00a0% interval {low, number, ::@@@} to {ends, select, open {no limit} other {{high, number, ::@@@}}}){adjusted, select, yes {, adjusted for {nuisances}; as counted, {plain, number, ::@@@} times} other {}}. What thins all kinds alike cancels in this; kinds may respond differently.',
  'questions/can-say/no-gain/more': '{kind}: no gain worth acting on with {levelB} (a fall is not excluded).',
  'questions/can-say/no-gain/fewer': '{kind}: no fall worth acting on with {levelB} (a gain is not excluded).',

  // What may not be said
  'questions/cannot-say/made-the-difference': 'That {cause} made a difference to {kind}.',
  'questions/cannot-say/no-effect': 'That {cause} has no effect on {kind}.',
  'questions/cannot-say/no-difference':
    'That {kind} is equally frequent with {levelA} and {levelB}: the interval is too wide for that.',
  'questions/cannot-say/a-difference': 'That {kind} differs between {levelA} and {levelB}.',
  'questions/cannot-say/shown': 'That a difference in {kind} between {levelA} and {levelB} has been shown.',
  'questions/cannot-say/exactly-equal': 'That {kind} is exactly equally frequent with {levelA} and {levelB}.',
  'questions/cannot-say/everywhere': 'That {cause} does the same to {kind} in other crops, regions or seasons.',
  'questions/cannot-say/proved': 'That it is proved for {kind}, or that nothing else can have changed along with {cause}.',
  'questions/cannot-say/because-of': 'That {kind} differs because of {cause}: the levels were not dealt out at random.',

  // Next
  'questions/next/enough':
    '{kind}: the interval is narrow enough for a ratio of {worth, number}; more counting would say the size more exactly and change little else.',
  'questions/next/more-fields':
    '{kind}: about {more, plural, one {one more field} other {# more fields}} like these ({all} in all) would settle it{minutes}',
  'questions/next/not-in-fields-like-these':
    '{kind}: not to be settled by counting in fields like these (more than {cap} would be needed){minutes}',
  'questions/next/minutes-too': '; more minutes in the same fields could, too.',
  'questions/next/minutes-not': '; more minutes in the same fields would not.',
  'questions/next/slope': '{kind}: more fields, above all with low and high {name}, narrow a slope most.',
  'questions/next/settled': '{kind}: settled for what was asked; spend the hours elsewhere.',
  'questions/next/refused/no-freedom': '{kind}: more fields, or fewer differences between them to adjust for.',
  'questions/next/refused/lost': '{kind}: give each block at least one field of every level.',
  'questions/next/refused/no-scatter': '{kind}: count longer or in more fields, so that the scatter between fields can be seen.',
  'questions/next/refused/level-without-insects':
    '{kind}: count longer at the level with none, or ask about kinds counted together.',
  'questions/next/refused/mostly-zero': '{kind}: watch longer, or larger plots, or ask about kinds counted together.',
  'questions/next/refused/beyond-range': '{kind}: ask for a smaller --step, or add fields that differ more.',
  'questions/next/refused/few-in-level': '{kind}: watch longer, or larger plots, or ask about kinds counted together.',
  'questions/next/refused/few-insects': '{kind}: watch longer, or larger plots, or ask about kinds counted together.',

  // Figures
  'questions/figure/ratios': 'Ratios and their intervals; the band holds ratios too small to act on',
  'questions/figure/rates': 'Rates field by field',
  'questions/figure/kinds': 'Kinds in the same watches',
  'questions/figure/visit-rates': 'Rates by kind',
  'questions/figure/visit-rates-by-field': 'Rates field by field',
  'questions/figure/shares': 'Shares by kind',
  'questions/figure/strips/date': 'Where the levels lie on the date',
  'questions/figure/strips/stage': 'Where the levels lie on the bloom stage',
  'questions/figure/strips/hour': 'Where the levels lie on the hour of day',
  'questions/figure/strips/temperature': 'Where the levels lie on the temperature',
}
