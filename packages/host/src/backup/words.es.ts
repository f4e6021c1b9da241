import type { Words } from '@thrum/model/ground'

/** What is said of backups, and of restoring one, in Spanish. */
export const backupWords: Words = {
  'host/backup/failed':
    'Hoy no se hizo copia de seguridad en {folder} ({because}). Lo que se haga ahora se guarda de todos modos.',
  'host/backup/in-the-making': 'puede que otro programa la esté haciendo en este momento',
  'host/backup/system': 'el sistema dice: {what}',
  'host/restore/no-backup': 'No hay copia de seguridad de {file} del día {day}.',
  'host/restore/no-backup/remedy':
    'No se cambió nada. {count, plural, =0 {No hay ninguna; se hace una copia de seguridad la primera vez que se escribe en un día.} other {Hay copias de seguridad de: {days}.}}',
  'host/restore/other-project': 'La copia de seguridad de {file} del día {day} es de otro proyecto, que antes tenía este nombre.',
  'host/restore/other-project/remedy':
    'No se cambió nada. Para recuperar ese proyecto, dar antes otro nombre a {file} y después restaurar de nuevo.',
}
