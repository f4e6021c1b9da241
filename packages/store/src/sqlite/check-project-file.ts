import { sha256Stream, ThrumError } from '@thrum/model/ground'
import { takeTurn } from './connection.ts'
import { lookAtFile } from './look-at-file.ts'
import { openDatabase, requireSound } from './open-database.ts'
import { openProjectFile } from './open-project-file.ts'

export interface FileCheck {
  readonly facts: number
  readonly attachments: number
}

/**
 * Reads a project from end to end: every page and index, every fact, every attachment against its hash.
 *
 * @throws ThrumError store/damaged, store/attachment-damaged, and what opening throws
 */
export async function checkProjectFile(file: string): Promise<FileCheck> {
  const look = lookAtFile(file)
  await takeTurn(() => {
    const db = openDatabase(look, 'read', file)
    try {
      requireSound(db, file, 'integrity_check')
    } finally {
      db.close()
    }
  }, file)
  const log = await openProjectFile(file, { mode: 'read' })
  try {
    let facts = 0
    let attachments = 0
    for await (const chunk of log.factsAfter(0)) facts += chunk.length
    for await (const heads of log.attachments()) {
      for (const { hash } of heads) {
        const digest = sha256Stream()
        for await (const part of (await log.attachment(hash))?.parts() ?? []) digest.update(part)
        if (digest.hex() !== hash) throw new ThrumError('store/attachment-damaged', { hash })
        attachments += 1
      }
    }
    return { facts, attachments }
  } finally {
    await log.close()
  }
}
