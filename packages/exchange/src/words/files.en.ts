import type { Words } from '@thrum/model/ground'

/** Sentences about files, sheets and rows. */
export const fileWords: Words = {
  // A file as a whole
  'exchange/file/empty': 'The file is empty.',
  'exchange/file/empty/remedy': 'Check that the right file was chosen and that it was saved. Nothing was written.',
  'exchange/file/too-large': 'The file has {megabytes} MB; at most {limit} MB can be read.',
  'exchange/file/too-large/remedy': 'Split it, for example by season, and bring the parts one by one. Nothing was written.',
  'exchange/file/not-text':
    '{what, select, workbook {The file is a workbook, not a table of text.} pdf {The file is a PDF, not a table of text.} picture {The file is a picture, not a table of text.} archive {The file is an archive, not a table of text.} other {The file is no text: too many of its characters are control characters.}}',
  'exchange/file/not-text/remedy':
    '{what, select, workbook {Save the sheet with the counts as CSV and bring that file.} other {Bring the counts as CSV: one line a watch, values parted by commas, semicolons or tabs.}} Nothing was written.',
  'exchange/sheet/not-a-table': 'The file is not a table: its lines do not have the same number of values.',
  'exchange/sheet/not-a-table/remedy':
    'Save it as CSV with a header line and one delimiter, or name the delimiter in the mapping. Nothing was written.',
  'exchange/sheet/no-header': 'No header was found: line {line} holds values where the names of the columns should stand.',
  'exchange/sheet/no-header/remedy':
    'Put a line of column names above the first row, or give its line number in the mapping. Nothing was written.',
  'exchange/sheet/no-rows': 'The file has a header and no rows.',
  'exchange/sheet/no-rows/remedy': 'Check that the right sheet was saved. Nothing was written.',
  'exchange/sheet/too-wide': 'The file has more than {limit} columns.',
  'exchange/sheet/too-wide/remedy': 'Keep the columns of the counts and bring the file again. Nothing was written.',
  'exchange/sheet/too-long': 'The file has more than {limit} rows.',
  'exchange/sheet/too-long/remedy': 'Split it, for example by season, and bring the parts one by one. Nothing was written.',
  'exchange/sheet/no-tally-column': 'No column says how many insects were counted.',
  'exchange/sheet/no-tally-column/remedy':
    'Map at least one column as a tally with its kind; in a long table map the column of kinds. Nothing was written.',
  'exchange/sheet/effort-unmapped': 'Nothing says how long each watch lasted.',
  'exchange/sheet/effort-unmapped/remedy':
    'Map a column of minutes, or of start and end; or give the minutes if every watch was equally long. If nobody wrote it down, say so ("effort": "not recorded"): then shares can be told, rates cannot. Nothing was written.',
  'exchange/sheet/not-counts':
    'These are not counts: {cells} of {of} numbers in the tally columns are not whole, for example {written} in "{column}". They look like means over several watches; the numbers of insects and the effort behind them are gone.',
  'exchange/sheet/not-counts/remedy':
    'Bring the counts and the minutes of each watch, one line a watch, as they were written in the field. Nothing was written.',
  'exchange/sheet/units-mixed': 'Column "{header}" mixes counting units ({units}), which must never be pooled.',
  'exchange/sheet/units-mixed/remedy': 'Bring the rows of each counting unit as a file of their own. Nothing was written.',
  'exchange/read/stopped': 'Reading was stopped.',
  'exchange/read/stopped/remedy': 'Nothing was written. Start it again when you want.',

  // A row that cannot be one
  'exchange/row/cell-too-long': 'a cell has {length} characters; at most {limit} can be read',
  'exchange/row/stray-quote': 'a quotation mark opens and never closes, so its cells cannot be told apart',
  'exchange/row/too-many-cells':
    'it has {cells} cells under {columns} columns; a delimiter inside a value may need quotation marks',
  'exchange/row/too-few-cells': 'it has {cells} cells under {columns} columns',
  'exchange/row/no-kind': 'it counts insects and does not say which kind',
  'exchange/row/left-out': 'you left this line out',
  'exchange/row/entered-twice': 'it is line {first} entered once more; it is kept once',
  'exchange/row/entered-twice-asked': 'it equals line {first}: one watch entered twice, or two watches?',
  'exchange/row/in-conflict': 'it has the id of line {first} and contradicts it in {headers}; which line is right?',
  'exchange/row/cell-in-conflict': 'two lines with one id say different numbers; which one is right?',
  'exchange/watch/rows-differ': 'rows of one watch say different numbers; which one is right?',

  // The same, told again from a project, which keeps no numbers of them
  'exchange/row/cell-too-long/retold': 'a cell has more characters than can be read',
  'exchange/row/too-many-cells/retold':
    'it has more cells than there are columns; a delimiter inside a value may need quotation marks',
  'exchange/row/too-few-cells/retold': 'it has fewer cells than there are columns',
  'exchange/row/entered-twice/retold': 'it is another line entered once more; it is kept once',
  'exchange/row/entered-twice-asked/retold': 'it equals another line: one watch entered twice, or two watches?',
  'exchange/row/in-conflict/retold': 'it has the id of another line and contradicts it; which line is right?',

  // What was noticed about the file
  'exchange/note/utf-16': 'The file is in UTF-16 and was read so.',
  'exchange/note/western-encoding':
    'The file is not in UTF-8; it was read as Western European text (windows-1252). Check names with accents.',
  'exchange/note/mixed-encoding':
    'The file mixes encodings: {utf8, plural, one {# line} other {# lines}} in UTF-8, {other, plural, one {# line} other {# lines}} in Western European text. Each line was read in its own.',
  'exchange/note/control-characters':
    'The file holds {characters, plural, one {# control character} other {# control characters}}. They are not shown in names.',
  'exchange/note/unseen-signs':
    'The file holds {characters, plural, one {# sign that is} other {# signs that are}} not seen: marks of the direction of writing, blanks without a width. They are left out of names.',
  'exchange/note/line-ends':
    '{ends, select, CR {Its lines end as on very old computers (CR), and were read so.} other {Its lines end in different ways, and each was read.}}',
  'exchange/note/delimiter': 'Values are parted by {delimiter, select, tab {tabs} other {"{delimiter}"}}.',
  'exchange/note/repeated-header': 'Line {line} is a header once more. From there on, columns are read by its names.',
  'exchange/note/totals-agree':
    '{totals, plural, one {# line of totals was} other {# lines of totals were}} left out of the data, and agree with the rows above them.',
  'exchange/note/total-differs':
    'Line {line} ("{label}") says {said} under "{header}"; the rows above it sum to {found}. The rows were taken, the total was not.',
  'exchange/note/total-left-out': 'Line {line} ("{label}") sums up other lines; it was left out of the data.',
  'exchange/note/decimal-comma': 'Numbers in {headers} have a decimal comma.',
  'exchange/note/both-decimals':
    'Numbers in {headers} have decimal points in some cells and decimal commas in others. Cells that could be either wait.',
  'exchange/note/short-years': 'Years of two digits in "{header}" are read as 1950 to 2049.',
  'exchange/note/names-alike': 'Names in "{header}" differ only in capitals or accents: {names}. They are kept apart.',
  'exchange/note/minutes-differ':
    'The minutes of {watches, plural, one {one watch} other {# watches}} differ from its start and end (line {lines}). The minutes were taken.',
  'exchange/note/kept-line': 'Line {line} is kept as a note: {text}',
  'exchange/note/more-kept-lines': '{lines, plural, one {# more line is} other {# more lines are}} kept as notes.',
  'exchange/note/columns-left-out': 'Not mapped, and left out: {headers}.',
  'exchange/note/differs-within-watch':
    '"{header}" differs between rows of one watch. The first is taken for the watch; the file keeps the others.',
  'exchange/note/nothing-counted':
    '{watches, plural, one {One watch has} other {# watches have}} no number under any kind (line {lines}). It is taken as not counted, never as zero.',
  'exchange/note/no-flowers':
    '{watches, plural, one {One watch has} other {# watches have}} no open flowers (line {lines}). It is a true zero for the field; a rate per flower cannot use it.',
  'exchange/note/no-field': '{watches, plural, one {One watch names} other {# watches name}} no field (line {lines}).',
  'exchange/note/several-watches':
    'A field was watched more than once a day, and no column tells the watches apart (line {lines}). They are kept as separate watches.',
  'exchange/note/shared-id':
    'Lines {first} and {line} share an id and are different watches. Both are kept; one needs an id of its own.',
  'exchange/note/short-id': 'The id {id} is shorter than the others. It was left as it is; did you mean {proposed}?',
}
