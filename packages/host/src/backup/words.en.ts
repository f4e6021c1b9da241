import type { Words } from '@thrum/model/ground'

/** What is said of backups, and of restoring one. */
export const backupWords: Words = {
  'host/backup/failed': 'No backup was made today in {folder} ({because}). What you do now is kept all the same.',
  'host/backup/in-the-making': 'another program may be making it right now',
  'host/backup/system': 'the system says: {what}',
  'host/restore/no-backup': 'There is no backup of {file} of the day {day}.',
  'host/restore/no-backup/remedy':
    'Nothing was changed. {count, plural, =0 {There is none at all; a backup is made at a day’s first writing.} other {There are backups of: {days}.}}',
  'host/restore/other-project': 'The backup of {file} of the day {day} is of another project, which had this name before.',
  'host/restore/other-project/remedy':
    'Nothing was changed. To have that project back, give {file} another name first, and then restore again.',
}
