import type { Words } from '@thrum/model/ground'

/** What the terminal says itself, in English. ICU message texts by id. */
export const words: Words = {
  'cli/stopping': 'Stopping after the step in hand; press Ctrl-C again to end at once.',
  'cli/stopped': 'Stopped.',
  'cli/stopped/remedy': 'What was not finished counts for nothing. Give the command again when you want.',
  'cli/progress': '{done} {unit}',
  'cli/progress/of': '{done} of {total} {unit}',
  'cli/progress/unit/rows': 'rows',
  'cli/progress/unit/fact': 'facts',
  'cli/progress/unit/replicate': 'refits',
  'cli/progress/unit/refit': 'refits',
  'cli/mishap': 'Thrum itself failed: {what}',
  'cli/mishap/remedy': 'Nothing that was written before is lost. Try again; if it happens again, report the line above.',
  'cli/arguments/flag-with-value': '--{name} takes no value; "{found}" stands behind it.',
  'cli/arguments/flag-with-value/remedy': 'Write --{name} alone, or leave it out.',
  'cli/arguments/named-twice': 'Two projects are named: {word}, and {named} with --in.',
  'cli/arguments/named-twice/remedy': 'Name one.',
  'cli/arguments/single-dash': 'Options are words here; "{found}" is none.',
  'cli/arguments/single-dash/remedy': 'Write --name value. To list them:\n    thrum help',
  'cli/no-such-command': 'There is no command "{name}".',
  'cli/no-such-command/remedy': 'Commands are: {known}. What each does:\n    thrum help',
  'cli/no-project-here': 'There is no project in this folder.',
  'cli/no-project-here/remedy': 'Name one with --in FILE.thrum, or make one:\n    thrum new my-project.thrum',
  'cli/which-project': 'There is more than one project in this folder: {found}.',
  'cli/which-project/remedy': 'Name the one you mean with --in.',

  'cli/new/usage': 'A new project needs one name.',
  'cli/new/usage/remedy': '    thrum new my-project.thrum --title "My project"',
  'cli/new/name': 'Not every computer can hold a file named "{name}".',
  'cli/new/name/remedy': 'Leave out any of < > : " | ? * and dots or blanks at the end.',
  'cli/new/made': 'Made {file}. Next:\n    thrum import counts.csv --in {file}',

  'cli/import/usage': 'One file at a time.',
  'cli/import/usage/remedy': '    thrum import counts.csv --in my-project.thrum',
  'cli/import/no-file': '{file} cannot be read.',
  'cli/import/no-file/remedy': 'Check the name and the folder.',
  'cli/import/no-mapping': 'The mapping {file} cannot be read.',
  'cli/import/no-mapping/remedy': 'Check its name, or leave --mapping out to have one proposed.',
  'cli/import/mapping-not-json': 'The mapping {file} is not valid JSON.',
  'cli/import/mapping-not-json/remedy': 'Mend it, or delete it to have a new one proposed.',
  'cli/import/mapping-not-kept': 'The mapping cannot be kept as {file}: nothing can be written there.',
  'cli/import/mapping-not-kept/remedy':
    'Nothing was written to the project. Copy the table to a folder you may write in, or name another place with --mapping.',
  'cli/import/assigned-unknown': 'Nothing called "{name}" is compared in this table.',
  'cli/import/assigned-unknown/remedy':
    'Its columns that are compared: {known}. Name one of them, or map the column as "factor" in the mapping first.',
  'cli/import/assigned': '--assigned should name a factor and how its levels came to the fields, but reads "{found}".',
  'cli/import/assigned/remedy': 'For example --assigned "strip=at random" (or chosen, or not known).',
  'cli/import/read': '{file}: {rows, plural, one {one row} other {# rows}} read.',
  'cli/import/columns': 'How its columns are understood (kept in {file}, where you can change it):',
  'cli/import/column': '{header} → {as} ({because})',
  'cli/import/questions': 'Please decide (what is proposed will be used):',
  'cli/import/proposed': '{asks} Proposed: {proposed}.',
  'cli/import/becomes': 'What it becomes:',
  'cli/yes': 'yes',
  'cli/import/accept': 'Accept these counts? (yes or no)',
  'cli/import/said-again': '{options}',
  'cli/import/not-yet':
    'Nothing counts yet. If this is right:\n    thrum import {file} --in {project}{more} --accept\nIf not, change {mapping} and run the command again.',
  'cli/import/done':
    'Accepted: {counts, plural, one {one count of {file} now stands} other {# counts of {file} now stand}} in {project}.',
  'cli/import/known': '{file} was brought before with this mapping. Nothing was added.',

  'cli/import/file-not-kept':
    '{file} itself is not kept in the project, because it holds something that the project forgot. Its rows are kept without it.',
  'cli/mended/of': '{file} is another version of {mends}, which was brought on {day}. Its rows are matched by {key}.',
  'cli/mended/equal':
    '{rows, plural, =0 {No row is as before.} one {One row is as before and adds nothing.} other {# rows are as before and add nothing.}}',
  'cli/mended/changed':
    '{cells, plural, one {One cell changed and becomes a correction:} other {# cells changed and become corrections:}}',
  'cli/mended/cell': 'line {line}, {column}: {from} → {to}',
  'cli/mended/kept':
    '{cells, plural, one {One cell changed} other {# cells changed}} that a person corrected here to another value. What was corrected here stays (the command correct changes it):',
  'cli/mended/more': '{more, plural, one {one more} other {# more}}; --json lists all',
  'cli/mended/added':
    '{rows, plural, one {One row is} other {# rows are}} new: {lines, plural, one {line} other {lines}} {numbers}.',
  'cli/mended/added-tallies': '{tallies, plural, one {One tally is} other {# tallies are}} new in rows that were there: {kinds}.',
  'cli/mended/gone':
    '{rows, plural, one {One row is} other {# rows are}} no longer in the file: {names}. {rows, plural, one {It stays} other {They stay}} as {rows, plural, one {it is} other {they are}}, unless you say --withdraw-missing.',
  'cli/mended/gone-tallies':
    '{tallies, plural, one {One tally is} other {# tallies are}} no longer in the file: {kinds}. {tallies, plural, one {It stays} other {They stay}}, unless you say --withdraw-missing.',
  'cli/mended/withdrawn':
    '{rows, plural, one {One row (line {numbers}) was} other {# rows (lines {numbers}) were}} withdrawn here and {rows, plural, one {stays} other {stay}} so.',
  'cli/mended/forgotten':
    '{rows, plural, one {One row (line {numbers}) was} other {# rows (lines {numbers}) were}} forgotten here and {rows, plural, one {stays} other {stay}} so.',
  'cli/mended/columns-gone': 'No longer in the file: {columns}. What they said stays.',
  'cli/mended/nothing': 'Nothing changes.',
  'cli/mended/accept': 'Take these changes? (yes or no)',
  'cli/mended/not-yet':
    'Nothing is changed yet. If this is right:\n    thrum import {file} --in {project}{more} --accept\nIf the rows are matched wrongly, name the columns that tell watches apart, like --key field,plot,date,start. If it is another file, say --separate.',
  'cli/mended/done':
    'Accepted {file} into {project}: {corrections, plural, =0 {no correction} one {one correction} other {# corrections}}, {counts, plural, =0 {no new count} one {one new count} other {# new counts}}{tallies, plural, =0 {} one {, one new tally} other {, # new tallies}}{withdrawn, plural, =0 {} one {, one withdrawal} other {, # withdrawals}}.',

  'cli/ask/usage': 'Ask one question at a time.',
  'cli/ask/usage/remedy': 'For example:\n    thrum ask who-visits\nTo list the questions:\n    thrum help',
  'cli/ask/plan-only-audit': 'A plan holds no counts yet, so "{id}" has nothing to answer with.',
  'cli/ask/plan-only-audit/remedy': 'Ask is-design-sound of it.',
  'cli/ask/figure': 'Figure written to {file}.',
  'cli/ask/figure-name': 'A figure is drawn as SVG or PNG, and "{file}" ends in neither.',
  'cli/ask/figure-name/remedy': 'Write --figure answer.svg or --figure answer.png.',
  'cli/ask/figure-look': 'A figure looks light or dark, and "{found}" is neither.',
  'cli/ask/figure-look/remedy': 'Write --figure-look light (on paper) or --figure-look dark (on a dark screen).',
  'cli/ask/figure-width': 'The width of a figure should be a whole number from {narrowest} to {widest}, but reads "{found}".',
  'cli/ask/figure-width/remedy': 'For example --figure-width 390 for a phone; without it the page is 1280 wide.',
  'cli/ask/figure-missing': '--figure-look and --figure-width say how a figure is drawn, but none is asked for.',
  'cli/ask/figure-missing/remedy': 'Add --figure answer.svg or --figure answer.png.',
  'cli/ask/no-figure': 'This answer has nothing to draw, so {file} was not written.',
  'cli/ask/no-figure/remedy':
    'The answer itself stands; ask again without --figure. what-differs and who-visits draw the counts; is-design-sound draws only what is tangled.',
  'cli/ask/figure-not-written': '{file} cannot be written.',
  'cli/ask/figure-not-written/remedy': 'Check the folder, and ask again. The answer above stands.',
  'cli/ask/receipt':
    'Receipt written to {folder}: the rows, and receipt.R, which recomputes the answer. In that folder:\n    Rscript receipt.R',
  'cli/ask/receipt-folder-used': '{folder} holds what is not an earlier receipt, or was changed since: {found}.',
  'cli/ask/receipt-folder-used/remedy': 'Nothing was touched. Name a new folder with --receipt.',
  'cli/ask/receipt-not-written': 'The receipt cannot be written to {folder}.',
  'cli/ask/receipt-not-written/remedy': 'The answer stands above. Name a folder you may write in with --receipt.',

  'cli/check/usage': 'Check one project at a time.',
  'cli/check/usage/remedy': '    thrum check my-project.thrum',
  'cli/check/holds':
    '{counts, plural, one {One count} other {# counts}} in {fields, plural, one {one field} other {# fields}}, {kinds, plural, one {one kind} other {# kinds}}, from {sheets, plural, one {one file} other {# files}}.',
  'cli/check/lines': 'Lines of the file: {lines}{more, plural, =0 {} other { and # more}}.',
  'cli/check/unfinished': 'A file was begun and never accepted ({sheet}); nothing of it counts. Bring it again to finish it.',
  'cli/check/fine': 'Nothing blocks.',
  'cli/check/blocked': 'Something blocks; see above.',

  'cli/correct/usage': 'A correction names a row, what is corrected in it, and the new value.',
  'cli/correct/usage/remedy': '    thrum correct counts.csv:14 "honey bee" 12 --reason "read the paper sheet again"',
  'cli/correct/done': '{row}, {column}: {from} is now {to}. What was written before is kept.',
  'cli/correct/decides': 'This decides between the corrections that knew nothing of each other.',
  'cli/correct/new-word': 'No row said {column} "{to}" so far; if that is a slip of the keys, correct it again.',
  'cli/correct/undo': 'To undo it:\n    thrum withdraw {fact} --reason TEXT',

  'cli/withdraw/usage': 'A withdrawal names one row, fact or file.',
  'cli/withdraw/usage/remedy':
    '    thrum withdraw counts.csv:14 --reason "counted in the wrong field"\nA kind behind the row takes back its tally alone.',
  'cli/withdraw/done':
    '{what, select, count {{row} ({told}) is withdrawn, with {tallies, plural, one {its tally} other {its # tallies}}.} tally {The tally of {kind} in {row} is withdrawn.} file {{row} is withdrawn with all its rows.} correction {The correction is undone: what stood before stands again.} withdrawal {The withdrawal is undone.} other {{row} is withdrawn.}} Nothing is deleted.',
  'cli/withdraw/undo': 'To undo it:\n    thrum withdraw {fact} --reason TEXT',

  'cli/settle/usage': 'To settle a cell, name its row, its column or kind, and its value.',
  'cli/settle/usage/remedy':
    '    thrum settle counts.csv:5 "honey bee" 3\nInstead of the number also missing, or not-looked-for. What waits is listed by:\n    thrum settle',
  'cli/settle/contested':
    '{cells, plural, one {One cell was} other {# cells were}} corrected by people who knew nothing of each other. The latest stands meanwhile:',
  'cli/settle/choices': '{row} "{column}" ({told}): {choices}.',
  'cli/settle/choice': '{to} by {by} on {at}',
  'cli/settle/cells': '{cells, plural, one {One cell waits} other {# cells wait}} for a person:',
  'cli/settle/cell': '{row} "{column}" ({told}): "{written}" waits.',
  'cli/settle/cell-because': '{row} "{column}" ({told}): "{written}" ({because}).',
  'cli/settle/rows': '{rows, plural, one {One row waits} other {# rows wait}} as a whole:',
  'cli/settle/row':
    '{row}: {because}. It is decided in the mapping beside the file ("lines", "duplicates"); then bring the same file again.',
  'cli/settle/more': '{more, plural, one {one more} other {# more}}; --json lists all.',
  'cli/settle/none': 'Nothing waits.',
  'cli/settle/how':
    'Settle one:\n    thrum settle {row} "{column}" NUMBER\nInstead of NUMBER also missing (it was counted and the number is gone), or not-looked-for. Until then it is in no estimate.',
  'cli/settle/how-contested':
    'Decide one:\n    thrum correct {row} "{column}" VALUE --reason TEXT\nTo be told of both:\n    thrum history {row}',
  'cli/settle/done': '{row}, {column}: {from} is settled as {to}.',

  'cli/history/usage': 'History takes one row, and a column or kind of it if you like.',
  'cli/history/usage/remedy': '    thrum history counts.csv:14',
  'cli/history/row': '{row} ({told})',
  'cli/history/fact': '{row}',
  'cli/history/line': 'As it came, line {line} of {file}: {cells}',
  'cli/history/cell': '{column}: {brought} in the file',
  'cli/history/corrected': '{to} by {by}, {at}: "{reason}"{taken, select, yes {; taken back} other {}} [{fact}]',
  'cli/history/settled': 'settled as {to} by {by}, {at}{taken, select, yes {; taken back} other {}} [{fact}]',
  'cli/history/by-file':
    '{to} by the mended file {file}, brought by {by}, {at}{taken, select, yes {; taken back} other {}} [{fact}]',
  'cli/history/contested':
    'Not all of these knew of each other. {stands} stands meanwhile. Decide:\n    thrum correct {row} "{column}" VALUE --reason TEXT',
  'cli/history/stands': '{stands} stands.',
  'cli/history/never': 'Nothing was ever corrected here.',
  'cli/history/withdrawn': 'Withdrawn by {by}, {at}: "{reason}"{taken, select, yes {; taken back} other {}} [{fact}]',
  'cli/history/gone': 'It is withdrawn, and in no answer.',

  'cli/forget/usage': 'What is forgotten is a person, the place of a field, or a fact.',
  'cli/forget/usage/remedy':
    '    thrum forget observer "NAME" --because "asked to"\n    thrum forget place FIELD --because TEXT\n    thrum forget fact ID --because TEXT',
  'cli/forget/stands': '"{name}" stands in:',
  'cli/forget/nowhere': '"{name}" stands nowhere in this project. Other copies will forget it when they take from this one.',
  'cli/forget/words': '  {where}, column {column}: {number, plural, one {one word} other {# words}}',
  'cli/forget/facts': '  {number, plural, one {one fact} other {# facts}} of kind {where}',
  'cli/forget/stays': 'The same words stand as a kind, a crop or the like, and stay there: {words}.',
  'cli/forget/files':
    '{count, plural, one {The file} other {The files}} as {count, plural, one {it} other {they}} came will be dropped from the project: {files}. So will any other text file in it that holds it.',
  'cli/forget/for-ever':
    'This cannot be undone. {what, select, observer {What stands instead is the same in every copy, so that one observer stays one. Whoever has the project and guesses the name can still check the guess.} place {The field stays, without its point and outline.} other {Only that something was there stays.}}',
  'cli/forget/accept': 'Forget it? (yes or no)',
  'cli/forget/not-yet':
    'Nothing is forgotten yet. If this is right:\n    thrum forget {what} "{name}" --because TEXT --in {project} --accept',
  'cli/forget/done':
    '{what, select, observer {The name is forgotten; {instead} stands instead.} place {The place of {name} is forgotten.} other {{name} is forgotten.}}',
  'cli/forget/known': 'It was forgotten before. Nothing was added.',
  'cli/forget/dropped':
    '{files, plural, one {One file} other {# files}} as {files, plural, one {it} other {they}} came {files, plural, one {was} other {were}} dropped.',
  'cli/forget/copies':
    '{copies, plural, one {One backup or kept file} other {# backups and kept files}} beside the project forgot it too.',
  'cli/forget/copy-left': '{file} beside the project could not forget it ({because}). Delete it if you must.',
  'cli/forget/elsewhere':
    'Other copies forget it when they take from this one (the command merge). Tables and backups that lie elsewhere are yours to delete.',

  'cli/merge/usage': 'Merge takes one other copy.',
  'cli/merge/usage/remedy': '    thrum merge other-copy.thrum --in my-project.thrum',
  'cli/merge/done':
    '{project} took from {other}: {facts, plural, =0 {no fact} one {one fact} other {# facts}}{files, plural, =0 {} one {, one file} other {, # files}}. {other} is as it was.',
  'cli/merge/nothing': '{other} has nothing that {project} has not.',
  'cli/merge/counts': '{counts, plural, one {One count} other {# counts}} {more, select, yes {more} other {fewer}} than before.',
  'cli/merge/contested':
    '{cells, plural, one {One cell was} other {# cells were}} corrected in both copies, to different values. What to decide is listed by:\n    thrum settle',
  'cli/merge/forgot':
    '{facts, plural, one {One thing was} other {# things were}} to be forgotten, and {facts, plural, one {is} other {are}} gone here too.',
  'cli/merge/held-back': '{facts, plural, one {One fact} other {# facts}} of files that nobody accepted stayed there.',

  'cli/restore/usage': 'Restore takes one project.',
  'cli/restore/usage/remedy':
    '    thrum restore my-project.thrum\nand then:\n    thrum restore my-project.thrum --day 2031-05-04',
  'cli/restore/backups':
    '{count, plural, =0 {There is no backup of {project}. One is made before the first writing of a day, from the second day on.} one {One backup of {project}:} other {# backups of {project}:}}',
  'cli/restore/backup': '  {day}: {facts, plural, one {one fact} other {# facts}}, the latest of {latest}; {kilobytes} kB',
  'cli/restore/unreadable': '  {day}: cannot be read',
  'cli/restore/other': '  {day}: of another project, which had this name before',
  'cli/restore/how': 'To put one in place (what stands there now is kept beside it):\n    thrum restore {project} --day {day}',
  'cli/restore/done':
    '{project} is as it was before the first writing of {day}, with {facts, plural, one {one fact} other {# facts}}.',
  'cli/restore/kept': 'What stood there is kept as {before}.',
  'cli/restore/missing':
    '{missing, plural, one {One fact of it is} other {# facts of it are}} not in the backup. To have {missing, plural, one {it} other {them}} back:\n    thrum merge {before} --in {project}',

  'cli/fit/no-receipt': 'No receipt was written: there is no fit to recompute.',
  'cli/fit/usage': 'Fit takes one table.',
  'cli/fit/usage/remedy': '    thrum fit my.csv --response bees --family nb2 --fixed strip --random field',

  'cli/serve/usage': 'Serve takes one project.',
  'cli/serve/usage/remedy': '    thrum serve my-project.thrum\nor without a name where there is one project in this folder.',
  'cli/serve/port': 'A port is a whole number up to 65535, and not "{found}".',
  'cli/serve/port/remedy': 'Leave --port out, or write for example --port 4800.',
  'cli/serve/address': 'The desk is served on this machine, for you alone. Open this address in a browser:',
  'cli/serve/other-port': 'Port {wished} is taken; this is {port}.',
  'cli/serve/already': 'This project is served already. Open this address in a browser:',
  'cli/serve/end': 'Ctrl-C ends it.',
  'cli/serve/ended': 'Ended. The project is closed.',

  'cli/help/usage': 'Help takes one topic.',
  'cli/help/usage/remedy': '    thrum help\nor with the name of a command or a question behind it.',
  'cli/help/title': 'Thrum {version}: from timed counts of flower visitors to an answer whose design has been audited.',
  'cli/help/line/new': 'thrum new FILE.thrum: make a project',
  'cli/help/line/import': 'thrum import COUNTS.csv: bring a table of counts; shown first, then accepted',
  'cli/help/line/check': 'thrum check: what is missing or cannot be right in a project',
  'cli/help/line/settle': 'thrum settle: what waits for you; and to settle it, a cell at a time',
  'cli/help/line/correct': 'thrum correct FILE:LINE COLUMN VALUE: correct one cell, with a reason',
  'cli/help/line/withdraw': 'thrum withdraw FILE:LINE: take back a count, a file, or a correction',
  'cli/help/line/history': 'thrum history FILE:LINE: what was written in a row, and what became of it',
  'cli/help/line/forget': 'thrum forget observer NAME: forget a person, a place or a fact, in every copy',
  'cli/help/line/merge': 'thrum merge OTHER.thrum: take in what another copy of the project holds',
  'cli/help/line/restore': 'thrum restore FILE.thrum: list the backups of a project, or put one in place',
  'cli/help/line/ask': 'thrum ask QUESTION: put a question to a project',
  'cli/help/line/fit': 'thrum fit TABLE.csv: fit a model to any table, with fields and days drawn at random',
  'cli/help/line/serve': 'thrum serve: open the desk on this project in the browser of this machine',
  'cli/help/line/help': 'thrum help TOPIC: more about a command or a question',
  'cli/help/questions': 'Questions:',
  'cli/help/more':
    'The project is the only .thrum file in this folder, or the one named with --in. --json prints the machine form of anything. Exit code 0: done; 1: what was checked does not hold; 2: bad usage or bad input, and nothing was written.',
  'cli/help/value/text': 'TEXT',
  'cli/help/value/texts': 'TEXT,TEXT',
  'cli/help/value/date': 'YEAR-MONTH-DAY',
  'cli/help/value/number': 'NUMBER',
  'cli/help/ask-one': 'thrum ask {id} [options]',
  'cli/help/conditions':
    'Conditions are written like crop=cherry, season!=2031, date>=2031-07-20 or stage<=67; a|b means either. Lists are parted by commas.',
  'cli/help/option/in': '--in FILE.thrum: the project, where more than one lies in this folder',
  'cli/help/option/plan': '--plan VISITS.csv: of a table of planned visits (one line a watch), before anything is counted',
  'cli/help/option/figure':
    '--figure FILE.svg or FILE.png: draw the answer; where it has nothing to draw, no file is written and the command ends with 2',
  'cli/help/option/figure-look': '--figure-look light|dark: for paper (as without it) or for a dark screen',
  'cli/help/option/figure-width':
    '--figure-width NUMBER: width of the page in pixels of a drawing, 1280 without it; 390 suits a phone',
  'cli/help/option/receipt': '--receipt FOLDER: write the rows and an R script that recomputes the answer',
  'cli/help/option/seed': '--seed TEXT: seed of anything drawn at random; the same seed gives the same answer',
  'cli/help/option/brief': '--brief: the headline, what may be said, and the cautions only',
  'cli/help/option/json': '--json: the machine form',
  'cli/help/command/new': 'thrum new FILE.thrum [--title TEXT]\nMakes an empty project in one file.',
  'cli/help/command/import':
    'thrum import COUNTS.csv [--in FILE.thrum] [--mapping FILE.json] [--accept]\nReads a table of timed counts, proposes what its columns are, and shows what\neach row becomes. Nothing counts until it is accepted. The mapping is kept\nbeside the table as COUNTS.csv.mapping.json; change it there, or say here:\n  --minutes 10            every watch lasted ten minutes\n  --area 20               every watched plot had 20 m2\n  --unit individuals      what a number counts: individuals, visits or snapshot\n  --absent none-seen      in a long table: a kind without a row was looked for\n                          and not seen (or not-looked-for, or not-known)\n  --crop, --season, --observer TEXT   the same for every row\n  --year 2031             for dates written without a year\n  --assigned "strip=at random"\n                          how the levels of something came to the fields\n  --effort "not recorded"\n                          nobody wrote down how long they watched: shares only\nA table of the same name (or --mends NAME) is taken as a mended version: its\nrows are matched, changed cells become corrections, and only new rows are added.\n  --key field,plot,date   the columns that together name a watch\n  --withdraw-missing      rows that are no longer in it are withdrawn\n  --separate              it is another table, though it has the name of one',
  'cli/help/command/check':
    'thrum check [FILE.thrum]\nSays what is missing or cannot be right, with the lines that show it and the\ncure. Ends with 1 if something blocks.',
  'cli/help/command/settle':
    'thrum settle [--in FILE.thrum]\nLists cells that wait for a person (a range, a dash, a lower limit), rows that\nwait as a whole, and corrections that contradict each other.\nthrum settle FILE:LINE COLUMN VALUE\nSettles one: a number, missing (it was counted, and the number is gone), or\nnot-looked-for. COLUMN is a kind or a column:\n    thrum settle counts.csv:5 "honey bee" 3',
  'cli/help/command/correct':
    'thrum correct FILE:LINE COLUMN VALUE --reason TEXT [--in FILE.thrum]\nCorrects one cell of a count that was brought. COLUMN is a kind (its tally), a\ncolumn (minutes, date, stage, flowers, observer ...) or something compared. What\nwas written before stays, with who changed it, when and why. Several files of\none name are counts.csv@1, counts.csv@2. Instead of FILE:LINE the address of a\nrow or the id of a fact will do. Of two corrections that knew nothing of each\nother, a third decides.',
  'cli/help/command/withdraw':
    'thrum withdraw FILE:LINE [KIND] --reason TEXT [--in FILE.thrum]\nTakes back a count with its tallies, or the tally of one kind alone.\nthrum withdraw FILE --reason TEXT\nTakes back all rows of a file; it may then be brought again.\nthrum withdraw ID --reason TEXT\nTakes back a correction (what stood before stands again), a withdrawal, or any\nfact. Nothing is deleted.',
  'cli/help/command/history':
    'thrum history FILE:LINE [COLUMN] [--in FILE.thrum]\nTells how a row came, each correction of it with who, when and why, and what\nstands. The ids in brackets are for the command withdraw.',
  'cli/help/command/forget':
    'thrum forget observer "NAME" --because TEXT [--accept] [--in FILE.thrum]\nTakes a name out of everything in the project: tables, notes, corrections, the\nfiles as they came. What stands instead is the same in every copy. Shown first.\nthrum forget place FIELD --because TEXT    the point and outline of a field\nthrum forget fact ID --because TEXT        a fact, a row (FILE:LINE) or a file\nThe backups beside the project forget it too, and every copy that merges.',
  'cli/help/command/merge':
    'thrum merge OTHER.thrum [--in FILE.thrum]\nTakes in what another copy of the same project holds. The other copy is only\nread; do it the other way round too, and both hold the same.',
  'cli/help/command/restore':
    'thrum restore FILE.thrum\nLists its backups. One is made before the first writing of each day (from the\nsecond day on) as backups/NAME.YEAR-MONTH-DAY.thrum beside the project; the last\nseven are kept.\nthrum restore FILE.thrum --day YEAR-MONTH-DAY\nPuts that one in place. What stood there is kept as\nFILE.thrum.before-restore-..., and what it has and the backup has not comes back\nwith the command merge.',
  'cli/help/command/ask':
    'thrum ask QUESTION [options]\nPuts a question to a project. Its options are listed by:\n    thrum help QUESTION',
  'cli/help/command/fit':
    'thrum fit TABLE.csv --response COLUMN --family FAMILY [options]\nFits a model to any table. It describes; a comparison of whole fields is decided\nby the question what-differs. Lists are parted by commas; "A and B" joins columns.\n    thrum fit my.csv --response bees --family nb2 --fixed strip --random field\n  --family nb2            nb2, nb1 or poisson: counts; binomial or beta-binomial:\n                          shares; gaussian: measured numbers\n  --fixed "strip,strip and stage"\n                          what it hangs on; "strip and stage": what they do\n                          together, each by itself among it\n  --random "field,field and day"\n                          groups of rows that resemble each other\n  --slope "stage by field"  a slope of its own for each field; --slope-apart:\n                          drawn apart from the intercepts\n  --effort minutes        its log is added: rates; --offset COLUMN is added as it\n                          is; --trials COLUMN: the whole that shares are of\n  --zeros                 zeros of another origin, one chance for all rows; or\n                          --zeros-by COLUMNS\n  --levels "strip=none>sown"\n                          order of levels, the reference first; may be repeated\n  --as-levels year        numbers that are names\n  --compare strip         means and pairs; without it of every column of levels\n  --per 60                effort that means refer to; 1 without it\n  --by profile            limits by profile or bootstrap (--refits 1000) instead\n                          of wald\n  --without "field,stage"  what the likelihood loses without these\n  --nodes 15              quadrature; --reml: restricted likelihood of gaussian\n  --unchecked             leave out the checks, which take as long as 250 fits\n  --receipt FOLDER        rows and an R script; --seed TEXT; --brief\nEnds with 1 where no model can be fitted, and says why.',
  'cli/help/command/serve':
    'thrum serve [FILE.thrum] [--port NUMBER]\nServes the desk on this machine alone, and says its address; open it in a\nbrowser. Without a project in this folder, the desk offers to make one. The port\nis 4711 unless another is named, or the next free one. Ctrl-C ends it.',
  'cli/help/command/help': 'thrum help [TOPIC]\nTells more about a command or a question.',

  'cli/start/welcome':
    'Ostrel Vale, a demonstration project of an invented valley ({file}): four cherry orchards and four sunflower fields, half of them with a flower strip, 160 ten-minute counts over two seasons. Nothing in it is real. These are its main answers, with the verdicts they lead to.',
  'cli/start/next':
    'Ask it more:\n    thrum help what-differs\n    thrum ask what-differs --in {file} --between strip --worth 2\nYour own table:\n    thrum new my.thrum\n    thrum import counts.csv --in my.thrum',
}
