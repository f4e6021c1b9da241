import type { Words } from '@thrum/model/ground'

/** What `survey` says to a person, in English. ICU message texts by id. */
export const words: Words = {
  // What stops a question before it starts
  'survey/factor/unknown': 'Nothing called "{name}" was recorded in this project.',
  'survey/factor/unknown/remedy': 'Counts can be told apart by: {known}.',
  'survey/factor/not-measured': '"{name}" holds no numbers in these counts, so it has no slope.',
  'survey/factor/not-measured/remedy': 'Measured are: {known}. Without --step the levels themselves are compared.',
  'survey/factor/no-such-level': '"{level}" is no level of "{name}".',
  'survey/factor/no-such-level/remedy': 'Its levels are: {known}.',
  'survey/condition/unreadable': 'The condition "{found}" cannot be read.',
  'survey/condition/unreadable/remedy': 'Write it like crop=cherry, season!=2031, date>=2031-07-20 or stage<=67, in quotes.',
  'survey/condition/no-such-level': 'No count has {name} "{level}".',
  'survey/condition/no-such-level/remedy': 'Recorded are: {known}.',
  'survey/condition/not-ordered': 'The condition on {name} compares with "{found}", which is neither a number nor a date.',
  'survey/condition/not-ordered/remedy': 'Write a number, or a date as year-month-day.',
  'survey/kind/unknown': 'No kind "{name}" was counted in this project.',
  'survey/kind/unknown/remedy': 'Kinds and groups are: {known}.',
  'survey/units-mixed': 'The counts asked about are in different counting units ({units}), which must never be pooled.',
  'survey/units-mixed/remedy': 'Ask for one of them, for example --unit individuals.',
  'survey/contrast/nothing-asked': 'A comparison needs something to compare.',
  'survey/contrast/nothing-asked/remedy':
    'Say --between with something recorded (strip, position, daypart, season ...), or --since with a date.',

  // Nuisances by name, and how they read at a level
  'survey/nuisance/date': 'date',
  'survey/nuisance/flowers': 'open flowers',
  'survey/nuisance/stage': 'bloom stage',
  'survey/nuisance/hour': 'hour of day',
  'survey/nuisance/temperature': 'air temperature',
  'survey/nuisance/observer': 'observer',
  'survey/nuisance/season': 'season',
  'survey/nuisance/position': 'plot position',
  'survey/reading/both': '{name} {a} against {b}',
  'survey/reading/none': 'not recorded',
  'survey/reading/date': '{value}',
  'survey/reading/stage': '{value, number, ::.0}',
  'survey/reading/hour': '{value, number, ::.0} h',
  'survey/reading/temperature': '{value, number, ::.0} °C',
  'survey/reading/observer': '{value, number, ::scale/100 .}\u00a0%',
  'survey/reading/season': '{value, number, ::scale/100 .}\u00a0%',
  'survey/reading/position': '{value, number, ::scale/100 .}\u00a0%',
  'survey/reading/change/date': 'later by {value, number, ::.0} days',
  'survey/reading/change/stage': 'further by {value, number, ::.0} codes',
  'survey/reading/change/hour': 'later by {value, number, ::.0} h',
  'survey/reading/change/temperature': 'warmer by {value, number, ::.0} °C',
  'survey/reading/change/observer': 'share changed by {value, number, ::scale/100 .}\u00a0%',
  'survey/reading/change/season': 'share changed by {value, number, ::scale/100 .}\u00a0%',
  'survey/reading/change/position': 'share changed by {value, number, ::scale/100 .}\u00a0%',

  // Findings
  'survey/audit/tangled/block/lost':
    '{levelA} and {levelB} differ in {nuisance} in the same way everywhere ({readings}). What is seen may be the one or the other, and no analysis of these counts can tell which.',
  'survey/audit/tangled/block':
    '{levelA} and {levelB} differ in {nuisance} almost everywhere ({readings}). Too little is left to tell the two apart.',
  'survey/audit/tangled/warn':
    '{nuisance} is partly tangled with {levelA} against {levelB} ({readings}): telling them apart makes the comparison {inflation, number, ::.0} times less sure. It is shown adjusted and not.',
  'survey/audit/tangled/warn/lost':
    '{levelA} and {levelB} differ in {nuisance} in the same way everywhere ({readings}). It cancels only if both kinds respond to it alike.',
  'survey/audit/tangled/note':
    '{nuisance} is a little tangled with {levelA} against {levelB} ({readings}); the headline is adjusted for it where it can be.',
  'survey/audit/tangled/blocks':
    'Each block ({blocks}) holds one level only, so the comparison asked is the same as a comparison of blocks.',
  'survey/audit/no-control':
    'There is no control: the {fields, plural, one {field was} other {# fields were}} watched before and after, and no field was watched in which nothing changed. Whatever else changed in that time looks the same.',
  'survey/audit/not-checked': 'Not recorded in every field, so it could not be checked: {nuisances}.',
  'survey/audit/everything-differed/season': 'A season is everything that differed in it: weather, bloom, neighbours, observers.',
  'survey/audit/everything-differed/date': 'A date is everything that differed on it: bloom stage, weather, hours, observers.',
  'survey/audit/not-replicated/within/block':
    '{fields, plural, =0 {No field holds} one {Only one field holds} other {Only # fields hold}} both levels. Counts of one field are repeats of that field, not of what is asked; three fields are the least.',
  'survey/audit/not-replicated/within/warn':
    'Only {fields} fields hold both levels: the interval is wide, and one odd field can sway it.',
  'survey/audit/not-replicated/between/block':
    'Too few fields: {arms}. Counts of one field are repeats of that field, not of what is asked; three fields in each level are the least.',
  'survey/audit/not-replicated/between/warn': 'Few fields: {arms}. The interval is wide, and one odd field can sway it.',
  'survey/audit/not-replicated/arm': '{fields, plural, =0 {none} one {one} other {#}} with {level}',
  'survey/audit/hives-unknown': 'Nobody recorded where hives stood, so it is not known whether the same bees worked both sides.',
  'survey/audit/same-bees-hives/moved/block':
    'The hives moved from {from, number, ::.} m to {to, number, ::.} m. Over such a distance honey bees fly anyway (their range in this season: {range, number, ::.} m): exposure to the hives changes only {fold, number, ::.0}-fold, less than the {worth, number}-fold change asked about. Much the same bees came before and after.',
  'survey/audit/same-bees-hives/moved/warn':
    'The hives moved from {from, number, ::.} m to {to, number, ::.} m; exposure to them changes {fold, number, ::.0}-fold (range in this season: {range, number, ::.} m). Part of the bees came before and after alike: the true effect is at least this.',
  'survey/audit/same-bees-hives/levels/block':
    'Both {levelA} and {levelB} lie within reach of the same hives: exposure on one side is {percent, number, ::.}\u00a0% of that on the other, nearer than the {worth, number}-fold difference asked about.',
  'survey/audit/same-bees-hives/levels/warn':
    'The control is reached by the hives too: its exposure is {percent, number, ::.}\u00a0% of the other side. The true effect is at least this.',
  'survey/audit/hangs-on-range':
    'This hangs on how far the bees fly (nearest hives at {from, number, ::.} m and {to, number, ::.} m): with their range of spring {spring}, of summer {summer}, of autumn {autumn}.',
  'survey/audit/hangs-on-range/none': 'the sides are separate',
  'survey/audit/hangs-on-range/warn': 'they share some bees',
  'survey/audit/hangs-on-range/block': 'they are worked by the same bees',
  'survey/audit/places-unknown':
    'The places of {fields} of {of} fields are not recorded, so it is not known whether fields of different levels share their insects.',
  'survey/audit/same-bees-fields/block':
    '{one} and {other} lie {metres, number, ::.} m apart and differ in what is compared: insects cross between them, so they are not independent fields.',
  'survey/audit/same-bees-fields/warn':
    '{one} and {other} lie {metres, number, ::.} m apart, within the {range, number, ::.} m over which these insects fly: a difference between them will look smaller than it is.',
  'survey/audit/hives-just-moved':
    '{counts, plural, one {One count was} other {# counts were}} made less than {days} days after hives were set down.',
  'survey/audit/effort-unknown/block': 'Nobody recorded how long the counts were watched: no rate can be given.',
  'survey/audit/effort-unknown/warn':
    'In {counts} of {of} counts the watched minutes are not recorded; they are left out of rates.',
  'survey/audit/level-without-effort/time': 'No count with {level} has its watched minutes recorded.',
  'survey/audit/level-without-effort/flower':
    'In no count with {level} were open flowers counted: nothing can be said per flower.',
  'survey/audit/level-without-effort/area': 'No count with {level} has its watched area recorded: nothing can be said per area.',
  'survey/audit/durations-differ':
    'Watches last from {shortest, number, ::.#} to {longest, number, ::.#} minutes. Insects already there when a watch starts make short watches look busier.',
  'survey/audit/flower-unknown/block': 'Open flowers were not counted: no rate per flower can be given.',
  'survey/audit/flower-unknown/warn':
    'In {counts} of {of} counts open flowers were not counted; they are left out of rates per flower.',
  'survey/audit/area-unknown/block': 'The watched area is not recorded: no rate per area can be given.',
  'survey/audit/area-unknown/warn':
    'In {counts} of {of} counts the watched area is not recorded; they are left out of rates per area.',
  'survey/audit/no-open-flowers':
    'In {counts, plural, one {one count} other {# counts}} no flower was open: a rate per flower has no meaning there.',
  'survey/audit/zeros-missing':
    'In {counts} of {of} counts it is not known whether an absent kind was looked for. Rates are not given, only shares among sightings.',
  'survey/audit/waiting':
    '{cells, plural, one {One cell waits} other {# cells wait}} for a person and {cells, plural, one {stays} other {stay}} out of estimates.',
  'survey/audit/not-looked-for':
    '{kind} was not looked for, or its number is not known, in {counts} of {of} counts; they are left out for it.',
  'survey/audit/saturated-counts':
    '{counts, plural, one {One watch holds} other {# watches hold}} more than {limit} insects of a kind in 10 minutes: some were probably missed.',
  'survey/audit/two-corrections':
    '{cells, plural, one {One cell was} other {# cells were}} corrected twice without knowledge of each other; the latest stands.',
  'survey/audit/records-unread':
    '{records, plural, one {One record} other {# records}} in this project {records, plural, one {was} other {were}} written by a newer version and cannot be read here.',
  'survey/audit/outside-window/level': 'All counts with {level} were made when these insects could not be expected to fly.',
  'survey/audit/outside-window/warn':
    '{counts, plural, one {One count was} other {# counts were}} made when these insects could not be expected to fly; left out, and shown with and without.',
  'survey/audit/stages-apart':
    'Bloom stage runs from {low, number, ::.0} to {high, number, ::.0} between the levels, more than {allowed} codes, and could not be adjusted for.',
  'survey/audit/outside-bloom':
    '{counts, plural, one {One count lies} other {# counts lie}} outside stages {from} to {to}, where few flowers are open.',
  'survey/audit/one-observer-per-level/block':
    '{levelA} and {levelB} were watched by an observer each ({percent, number, ::.}\u00a0% of visits exchanged): what is seen may be the eyes and not the fields.',
  'survey/audit/one-observer-per-level/warn':
    '{levelA} and {levelB} were mostly watched by an observer each; {percent, number, ::.}\u00a0% of visits were exchanged.',

  // Checks of a project, whatever is asked of it
  'survey/check/no-counts': 'This project holds no counts yet.',
  'survey/check/no-counts/cure': 'Bring a table: thrum import counts.csv',
  'survey/check/cells-waiting': 'In {counts} of {of} counts a number waits for a person; it stays out of estimates.',
  'survey/check/cells-waiting/cure': 'Correct the file and bring it again, or say in its mapping what the written words mean.',
  'survey/check/no-field': '{counts} of {of} counts name no field; they stay out of every rate over fields.',
  'survey/check/no-field/cure': 'Map the column that names the field.',
  'survey/check/no-date': '{counts} of {of} counts have no date: neither season nor date can be checked for them.',
  'survey/check/no-date/cure': 'Map the column with the date.',
  'survey/check/outside-bloom': '{counts} of {of} counts lie outside bloom stages 61 to 67.',
  'survey/check/outside-bloom/cure': 'Right, if the flowers before and after were meant; else correct the stage.',
  'survey/check/kinds-mixed': 'Kinds of different breadth are counted side by side: {kinds}.',
  'survey/check/kinds-mixed/cure':
    'Say whether the broader one is the sum of the others or the rest; never add them without knowing.',
  'survey/check/no-stage': '{counts} of {of} counts have no bloom stage; date stands in for it.',
  'survey/check/no-stage/cure': 'Write down the BBCH code at every visit.',
  'survey/check/no-flowers': '{counts} of {of} counts have no open flowers counted: nothing per flower can be said of them.',
  'survey/check/no-flowers/cure': 'Count open flowers in every watched plot.',
  'survey/check/no-weather': '{counts} of {of} counts have neither temperature nor wind: whether insects could fly is not known.',
  'survey/check/no-weather/cure': 'Write down temperature, wind and cloud at every visit.',
  'survey/check/impossible-times':
    '{counts, plural, one {One count ends} other {# counts end}} before {counts, plural, one {it starts} other {they start}}.',
  'survey/check/impossible-times/cure': 'Correct start or end.',
  'survey/check/entered-twice':
    '{counts} counts share field, plot, observer, date and start with another: perhaps entered twice.',
  'survey/check/entered-twice/cure': 'Look at them and withdraw one of each two.',
  'survey/check/unit-not-said': 'In {counts} of {of} counts nobody said what one number counts: individuals or visits.',
  'survey/check/unit-not-said/cure': 'Say it in the mapping of the file ("unit": individuals, visits or snapshot).',
  'survey/check/no-place': '{counts} of {of} counts lie in fields whose place is not recorded.',
  'survey/check/no-place/cure': 'Record a point or an outline for each field.',

  // Cures
  'survey/cure/controls':
    'Watch at least three fields in which nothing changes over the same dates, or compare three fields with and three without it on the same days.',
  'survey/cure/same-days-both-arms': 'Visit changed and unchanged fields on the same days, before and after.',
  'survey/cure/levels-in-each-block': 'Give each block at least one field of every level.',
  'survey/cure/record-them': 'Record it at every visit.',
  'survey/cure/between/date': 'Visit fields of every level on the same days.',
  'survey/cure/between/stage':
    'Visit fields of every level at the same bloom stages; two more visits to each field on common days would do it.',
  'survey/cure/between/hour': 'Swap the order of visits from day to day, so that every level is seen early and late.',
  'survey/cure/between/temperature': 'Visit fields of every level on the same days, cool and warm.',
  'survey/cure/between/observer': 'Let every observer watch every level equally often.',
  'survey/cure/between/season': 'Watch fields of every level in every season.',
  'survey/cure/between/position': 'Put plots at the same positions in fields of every level.',
  'survey/cure/within/date': 'Watch both levels in a field on the same days.',
  'survey/cure/within/stage': 'Watch both levels in a field at the same bloom stage.',
  'survey/cure/within/hour': 'Swap the order of the two within a field from day to day.',
  'survey/cure/within/temperature': 'Watch both levels in a field one after the other, in alternating order.',
  'survey/cure/within/observer': 'Let the same observer watch both levels in a field.',
  'survey/cure/within/season': 'Watch both levels in every season.',
  'survey/cure/within/position': 'Watch both levels at each plot position.',
  'survey/cure/more-fields': '{more, plural, one {One more field} other {# more fields}} with both levels.',
  'survey/cure/more-fields-in': 'More fields: {each}.',
  'survey/cure/fields-with': '{more, plural, one {one} other {#}} with {level}',
  'survey/cure/look-for-hives': 'Ask all owners where hives stand within 3 km, and from when to when.',
  'survey/cure/hives-far':
    'Compare times when hives stand near with times when none stand within 3 km, in three fields or more, with fields that keep theirs.',
  'survey/cure/controls-out-of-range': 'Choose control fields out of reach of the hives (3 km and more).',
  'survey/cure/record-places': 'Record a point or an outline for each field.',
  'survey/cure/fields-further-apart': 'Choose fields at least {range, number, ::.} m apart, edge to edge.',
  'survey/cure/wait-after-move': 'Wait {days} days after hives were set down.',
  'survey/cure/record-minutes': 'Write down start and end, or the watched minutes, of every count.',
  'survey/cure/one-duration': 'Keep one duration for all watches.',
  'survey/cure/count-flowers': 'Count open flowers (or flower heads, and flowers on 20 of them) in every watched plot.',
  'survey/cure/record-area': 'Record the watched area of every plot.',
  'survey/cure/say-what-absent-means':
    'Find out whether the observers looked for every kind in every watch, and bring the file again with that answer.',
  'survey/cure/settle-cells': 'Look at the waiting cells and settle them.',
  'survey/cure/smaller-plots': 'Watch a smaller plot, or fewer kinds at a time.',
  'survey/cure/settle-corrections': 'Look at both corrections and decide.',
  'survey/cure/newer-thrum': 'Open the project with the newest version.',
  'survey/cure/count-in-window':
    'Count when it is warm enough (13 to 15 °C and more), dry, not too windy, between 10 and 16 h by the sun.',
  'survey/cure/same-stage': 'Count the levels at stages no more than four codes apart.',
  'survey/cure/rotate-observers': 'Let observers swap levels from visit to visit.',
}
