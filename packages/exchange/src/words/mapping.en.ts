import type { Words } from '@thrum/model/ground'

/** Sentences about mappings: what does not fit, what is proposed and why, what is asked. */
export const mappingWords: Words = {
  'exchange/mapping/misshapen': 'The mapping does not have the right shape at "{where}": {what}.',
  'exchange/mapping/misshapen/remedy': 'Mend the mapping file, or have a new one proposed from the sheet. Nothing was written.',
  'exchange/mapping/column-missing': 'The mapping names a column "{header}" that the sheet does not have.',
  'exchange/mapping/column-missing/remedy': 'The columns of the sheet are: {headers}. Nothing was written.',
  'exchange/mapping/column-twice': 'The mapping names the column "{header}" twice.',
  'exchange/mapping/column-twice/remedy': 'Keep one of the two. Nothing was written.',
  'exchange/mapping/role-twice': 'More than one column is mapped as {role}: {headers}.',
  'exchange/mapping/role-twice/remedy':
    'Keep one of them as {role}, and map the others as factor, note or ignore. Nothing was written.',
  'exchange/mapping/role-of-other-shape': 'Column "{header}" is mapped as {role}, which a {shape} table does not have.',
  'exchange/mapping/role-of-other-shape/remedy':
    'In a wide table each kind has a column ("as": "tally"); in a long one each row names its kind ("as": "kind"). Nothing was written.',
  'exchange/mapping/unit-missing': 'The unit of "{header}" ({as}) is not said.',
  'exchange/mapping/unit-missing/remedy':
    'Give the column its unit in the mapping, for example "unit": "Cel". Nothing was written.',
  'exchange/mapping/unit-unknown': '"{unit}" is no unit for "{header}" ({as}).',
  'exchange/mapping/unit-unknown/remedy': 'Units of each role stand in the description of mappings. Nothing was written.',
  'exchange/mapping/factor-name-taken': 'A factor cannot be called "{factor}": a column of counts has that name.',
  'exchange/mapping/factor-name-taken/remedy': 'Give it another name in the mapping ("factor"). Nothing was written.',
  'exchange/mapping/counting-unit-unknown': '"{written}" in column "{header}" is no counting unit.',
  'exchange/mapping/counting-unit-unknown/remedy':
    'Say what it means in the mapping ("means"): snapshot, individuals or visits. Nothing was written.',
  'exchange/mapping/no-key': 'Nothing tells which rows belong to one watch.',
  'exchange/mapping/no-key/remedy':
    'Map a field, a plot, a date or an id, or name the columns in the mapping ("key"). Nothing was written.',
  'exchange/mapping/key-unknown': 'The key of the mapping names "{name}", which is no mapped column.',
  'exchange/mapping/key-unknown/remedy':
    'Name a mapped column by its role or its header. Roles are: {roles}. Nothing was written.',

  'exchange/propose/header': 'its header says so',
  'exchange/propose/insect': 'its header names insects and its cells are numbers',
  'exchange/propose/visits': 'its header says visits and its cells are numbers',
  'exchange/propose/kind-column': 'it names who was seen, row by row',
  'exchange/propose/number-column': 'it says how many of the kind beside it',
  'exchange/propose/other-names': 'it names the same insects in another way',
  'exchange/propose/distinct-visit': 'it is another one in every row',
  'exchange/propose/sum-of-others': 'its header says that it sums up other columns',
  'exchange/propose/presence': 'it says whether, not how many',
  'exchange/propose/dates': 'its cells are dates',
  'exchange/propose/yes-or-no': 'it says yes and no, so watches can be compared by it',
  'exchange/propose/repeated': 'its few values come back, so watches can be compared by it',
  'exchange/propose/free-text': 'its cells are free text',
  'exchange/propose/of-single-rows': 'it belongs to single rows, not to watches',
  'exchange/propose/second-of-role': 'another column already has that meaning',
  'exchange/propose/empty': 'it is empty',
  'exchange/propose/unknown': 'neither its header nor its cells say what it is',

  'exchange/ask/effort': 'How many minutes did each watch last? No column says it.',
  'exchange/ask/effort-noted': 'Did each watch last {minutes} minutes? A note in the file says: {text}',
  'exchange/ask/area-noted': 'Did each watch cover {area} m²? A note in the file says: {text}',
  'exchange/ask/year': 'The dates in "{header}" have no year. Which year was it?',
  'exchange/ask/date-order': 'Is "{example}" in "{header}" written day first or month first? No row settles it.',
  'exchange/ask/date-orders-mixed':
    'Is "{example}" in "{header}" written day first or month first? Some rows can only be day first, others only month first.',
  'exchange/ask/unit': 'Is "{header}" in {unit}? Its header does not say.',
  'exchange/ask/counting-unit':
    'Are the numbers {unit, select, visits {visits to flowers} other {insects seen}}? Insects seen, visits to flowers and snapshots are never pooled.',
  'exchange/ask/dash': 'What does a dash in "{header}" mean: none seen, or not looked for?',
  'exchange/ask/blank':
    '"{header}" has {blanks, plural, one {# blank cell} other {# blank cells}} and no zero. Does a blank mean none seen, or not looked for?',
  'exchange/ask/absent': 'If a watch has no row for a kind, does that mean that none was seen?',
  'exchange/ask/duplicates':
    '{rows, plural, one {# id stands} other {# ids stand}} more than once in "{header}". Keep rows with equal values once?',
  'exchange/ask/assigned': 'How did the levels of "{header}" come to their fields: at random, chosen, or is it not known?',
  'exchange/ask/presence':
    '"{header}" holds only 0 and 1 and seems to say whether something was present. It is left out; is that right?',
  'exchange/ask/sum-of-others': '"{header}" seems to be the sum of other columns. It is left out; is that right?',
  'exchange/ask/unknown': 'What is "{header}"? It is left out unless you say.',
  'exchange/ask/unknown-counts': '"{header}" holds whole numbers. Is it a kind that was counted? It is left out unless you say.',
}
