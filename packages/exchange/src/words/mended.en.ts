import type { Words } from '@thrum/model/ground'

/** What is said of values that a person types for one cell, and of files that were mended. */
export const mendedWords: Words = {
  'exchange/typed/refused': '"{written}" cannot stand in {column} ({because}).',
  'exchange/typed/refused/remedy':
    'Write the number itself, with a point as decimal mark; a date as 2031-05-04, a time as 09:30. If the number is gone write missing, if nobody looked write not-looked-for.',
  'exchange/typed/out-of-range': '"{written}" cannot stand in {column}, which lies between {least} and {most}.',
  'exchange/typed/out-of-range/remedy': 'Write the value in the unit of the column; thrum history shows it.',
  'exchange/typed/not-positive': '"{written}" cannot stand in {column}, which is always more than nothing.',
  'exchange/typed/not-positive/remedy': 'If the number is gone write missing; to take back the whole count: thrum withdraw.',
  'exchange/typed/not-one-of': '"{written}" is no word for {column}.',
  'exchange/typed/not-one-of/remedy': 'It is one of: {choices}.',
  'exchange/typed/nothing': 'nothing is written',
  'exchange/mended/waits': '"{written}" (waits)',
  'exchange/mended/missing': 'missing',
  'exchange/mended/not-looked-for': 'not looked for',
  'exchange/mended/no-key':
    'No columns were found that name each watch of this file once, so its rows cannot be told from those of its earlier version.',
  'exchange/mended/no-key/remedy':
    'Nothing was written. Name the columns that do, for example --key field,plot,date,start. If no row of this file is in the project yet, say --separate. Or make a new project and bring the file there.',
  'exchange/mended/key-unknown': 'The key names "{name}", which is no column of the counts of this file.',
  'exchange/mended/key-unknown/remedy': 'Nothing was written. Columns are: {columns}.',
  'exchange/mended/key-not-unique': '{key} do not name each watch once: see lines {lines}.',
  'exchange/mended/key-not-unique/remedy':
    'Nothing was written. Add a column that tells them apart, for example --key field,plot,date,start.',
  'exchange/mended/key-doubtful':
    'Matched by {key}, more than half of the rows would be watches in another field or on another day: this is hardly the same file mended.',
  'exchange/mended/key-doubtful/remedy':
    'Nothing was written. If no row of this file is in the project yet, say --separate. If it is the same file, name other columns with --key.',
}
