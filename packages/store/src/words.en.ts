import type { Words } from '@thrum/model/ground'
import type { FoundInstead, ReadingReason, StoreCode } from './errors.ts'

type Said = StoreCode | ReadingReason
type StoreWords = { readonly [id in Said | `${Said}/remedy` | FoundInstead]: string }

const storeWords: StoreWords = {
  // Opening and creating
  'store/no-such-file': 'There is no file {file}.',
  'store/no-such-file/remedy': 'Check the name and the folder. A new project is made so:\n    thrum new my-project.thrum',
  'store/not-a-project': '{file} is not a Thrum project: {found}.',
  'store/not-a-project/remedy':
    'Nothing was changed. Open a file ending in .thrum; a table of counts is brought in so:\n    thrum import counts.csv --in my-project.thrum',
  'store/found/empty': 'the file is empty',
  'store/found/folder': 'it is a folder',
  'store/found/other-database': 'it is a database of another program',
  'store/found/other-file': 'it is some other kind of file',
  'store/exists': '{file} is there already.',
  'store/exists/remedy': 'Nothing was changed. Choose another name, or move the file away first.',
  'store/same-file': '{file} can’t be copied onto itself.',
  'store/same-file/remedy': 'Nothing was changed. Choose another name for the copy.',
  'store/folder-missing': 'There is no folder {folder}.',
  'store/folder-missing/remedy': 'Make the folder first, or choose another.',
  'store/folder-protected': 'The folder {folder} takes no new files.',
  'store/folder-protected/remedy': 'Choose a folder you may write in, or ask its owner for the right to.',
  'store/unreadable': '{file} may not be read.',
  'store/unreadable/remedy': 'Ask the owner of the file for the right to read it.',
  'store/newest-out-of-reach':
    '{file} was not closed by the program that wrote it last. Its newest facts lie beside it, in the file ending in -wal, and can’t be taken up from a place that takes no writing.',
  'store/newest-out-of-reach/remedy':
    'Copy the file together with the one ending in -wal into a folder of your own, and open that copy.',
  'store/damaged': '{file} is damaged: {what}.',
  'store/damaged/remedy':
    'Nothing was changed. Keep the file, and open a backup instead. Facts that another copy or a phone holds come back by a merge.',
  'store/older-layout':
    '{file} has the older layout {found}; this version reads layout {known} and would have to write to the file to lift it.',
  'store/older-layout/remedy':
    'Open it once for writing (a backup is made beside it first), or copy it to a folder you may write in.',
  'store/layout-unreadable': '{file} has layout {found}; this version knows layout {known} and can’t read that one.',
  'store/layout-unreadable/remedy': 'Nothing was changed. Open it with the version of Thrum that wrote it, or a newer one.',

  // Why it takes no writing
  'store/read/asked': 'it was opened for reading',
  'store/read/asked/remedy': 'Open it for writing.',
  'store/read/file-protected': 'the file is protected against writing',
  'store/read/file-protected/remedy': 'Make the file writable, or work on a copy; a copy is brought back by a merge.',
  'store/read/folder-protected': 'its folder takes no writing, and a project being written needs a file beside it',
  'store/read/folder-protected/remedy': 'Copy the project to a folder you may write in; a copy is brought back by a merge.',
  'store/read/newer-layout': 'it was written by a newer Thrum (layout {found}; this version knows layout {known})',
  'store/read/newer-layout/remedy': 'Install the newer Thrum to write in it.',

  // Writing
  'store/read-only': 'Nothing was written to {file}: {because}.',
  'store/read-only/remedy': 'What is there can still be read. {remedy}',
  'store/busy':
    'Another program has been writing to {file} for {seconds, plural, one {# second} other {# seconds}} without a pause.',
  'store/busy/remedy':
    'Nothing was written and nothing is lost. Wait until it has finished, or close it, then do the last step again.',
  'store/in-use': 'Another program has {file} open.',
  'store/in-use/remedy': 'Nothing was changed. Close the other program, then do it again.',
  'store/disk-full': 'Nothing more could be written to {file}: the disk is full, or a quota is used up.',
  'store/disk-full/remedy': 'All earlier facts are safe and can be read. Make room, then do the last step again.',
  'store/write-failed': 'The disk reported a fault while {file} was being used: {what}.',
  'store/write-failed/remedy':
    'The last step may not have been kept; do it again. If the disk or stick is failing, make a copy of the project elsewhere first.',
  'store/fact-misshapen': 'The fact {id} can’t be kept: {where} {what}.',
  'store/fact-misshapen/remedy': 'Nothing was written. This is a mistake in the program that made the fact; please report it.',
  'store/too-large': 'Something was too large to be kept in {file}.',
  'store/too-large/remedy': 'Nothing was written. Split the file, and bring its parts one after the other.',

  // Copies
  'store/attachment-damaged': 'The attached file {hash} is damaged: its bytes are not those that were kept.',
  'store/attachment-damaged/remedy': 'Bring the original file again; the facts that came from it are not touched by this.',
  'store/backup-unsound': 'The copy of {file} did not pass its check: {what}.',
  'store/backup-unsound/remedy':
    'The copy was removed and the project left as it was. Try another disk, and have the project checked.',
}

export const words: Words = storeWords
