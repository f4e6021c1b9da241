import { readOnlyError } from '../errors.ts'
import type { ProjectLog } from '../port.ts'
import { createAppend } from './append-facts.ts'
import { createPutAttachment, readAttachmentRows } from './attachment-rows.ts'
import type { Connection } from './connection.ts'
import { readFactRows } from './fact-rows.ts'
import { createForgottenFacts } from './forgotten-facts.ts'
import { createForgottenFiles } from './forgotten-files.ts'
import { readDerivedRows, readPeerRows, writeDerivedRows, writePeerRows } from './side-rows.ts'

/** The port over one connection. A log for reading prepares no writing at all. */
export function createSqliteLog(connection: Connection): ProjectLog {
  return {
    access: connection.access,
    ...readFactRows(connection),
    ...readAttachmentRows(connection),
    ...readDerivedRows(connection),
    ...readPeerRows(connection),
    ...writers(connection),
    close: async () => {
      if (connection.access.mode === 'write') leaveOneFile(connection)
      connection.close()
    },
  }
}

type Writers = Pick<ProjectLog, 'append' | 'putAttachment' | 'keepDerived' | 'forgetDerived' | 'keepPeer'>

function writers(connection: Connection): Writers {
  const { access, file } = connection
  if (access.mode === 'read') {
    const refuse = () => Promise.reject(readOnlyError(file, access.because))
    return { append: refuse, putAttachment: refuse, keepDerived: refuse, forgetDerived: refuse, keepPeer: refuse }
  }
  const forgotten = createForgottenFacts(connection)
  const files = createForgottenFiles(connection, forgotten)
  return {
    append: createAppend(connection, forgotten, files),
    putAttachment: createPutAttachment(connection, files),
    ...writeDerivedRows(connection),
    ...writePeerRows(connection, forgotten),
  }
}

/**
 * Moves what stands in the file ending in -wal into the project. The last program to close does it anyway; done here too,
 * little is left beside the project while another still reads. A full disk or a reader in the way is no reason to fail:
 * the facts are safe where they are.
 */
function leaveOneFile({ db }: Connection): void {
  if (!db.isOpen) return
  try {
    db.exec('pragma wal_checkpoint(truncate)')
  } catch {
    return
  }
}
