import { sha256Stream } from '@thrum/model/ground'
import { type Attachment, type AttachmentHead, type AttachmentPut, partSize } from '../port.ts'
import { type Connection, prepareQuery, type SqlRow } from './connection.ts'
import type { ForgottenFiles } from './forgotten-files.ts'

const headsInChunk = 500

export interface AttachmentRows {
  attachment(hash: string): Promise<Attachment | null>
  attachments(): AsyncIterable<readonly AttachmentHead[]>
}

function toHead(row: SqlRow): AttachmentHead {
  return { hash: row[0] as string, media: row[1] as string, size: row[2] as number }
}

export function readAttachmentRows(connection: Connection): AttachmentRows {
  const { db, read } = connection
  const byHash = prepareQuery(db, 'select hash, media, size from attachment where hash = ?')
  const after = prepareQuery(db, 'select hash, media, size from attachment where hash > ? order by hash limit ?')
  const part = prepareQuery(db, 'select bytes from attachment_part where hash = ? and part = ?')

  async function* parts(hash: string): AsyncGenerator<Uint8Array> {
    for (let number = 0; ; number++) {
      const row = await read(() => part.first(hash, number))
      if (row === undefined) return
      yield row[0] as Uint8Array
    }
  }

  return {
    attachment: (hash) =>
      read(() => {
        const row = byHash.first(hash)
        return row === undefined ? null : { ...toHead(row), parts: () => parts(hash) }
      }),
    async *attachments() {
      for (let cursor = ''; ; ) {
        const from = cursor
        const heads = (await read(() => after.all(from, headsInChunk))).map(toHead)
        const end = heads.at(-1)
        if (end === undefined) return
        cursor = end.hash
        yield heads
      }
    },
  }
}

/**
 * Puts a stream of bytes into the project. While it runs its parts wait in a temporary table of this connection, which
 * vanishes with it; they enter the project in one transaction, under the hash that is known only then.
 */
export function createPutAttachment(
  connection: Connection,
  forgotten: Pick<ForgottenFiles, 'mustGo'>,
): (media: string, bytes: AsyncIterable<Uint8Array> | Iterable<Uint8Array>) => Promise<AttachmentPut> {
  const { db, read, write } = connection
  db.exec('create table temp.coming (put integer, part integer, bytes blob, primary key (put, part))')
  const wait = db.prepare('insert into temp.coming (put, part, bytes) values (?, ?, ?)')
  const forget = db.prepare('delete from temp.coming where put = ?')
  // Two copies may call the same bytes differently; both keep the smaller name.
  const insertHead = db.prepare(
    'insert into attachment (hash, media, size) values (?, ?, ?) on conflict (hash) do update set media = min(media, excluded.media)',
  )
  const insertParts = db.prepare(
    'insert or ignore into attachment_part (hash, part, bytes) select ?, part, bytes from temp.coming where put = ? order by part',
  )
  const coming = prepareQuery(db, 'select bytes from temp.coming where put = ? order by part')
  const partsOf = function* (put: number): Generator<Uint8Array> {
    for (const [bytes] of coming.each(put)) yield bytes as Uint8Array
  }
  let puts = 0

  return async (media, bytes) => {
    const put = puts++
    const hash = sha256Stream()
    let size = 0
    let count = 0
    try {
      for await (const part of inParts(bytes)) {
        const number = count++
        hash.update(part)
        size += part.length
        await read(() => wait.run(put, number, part))
      }
      const head = { hash: hash.hex(), media, size }
      const kept = await write(() => {
        if (forgotten.mustGo(head.hash, head.media, () => partsOf(put))) return false
        insertHead.run(head.hash, head.media, head.size)
        insertParts.run(head.hash, put)
        return true
      })
      return { ...head, kept }
    } finally {
      await read(() => forget.run(put))
    }
  }
}

/** The same bytes in parts of `partSize`, the last one shorter. No bytes, no parts. */
async function* inParts(bytes: AsyncIterable<Uint8Array> | Iterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  let part = new Uint8Array(partSize)
  let filled = 0
  for await (const piece of bytes) {
    for (let taken = 0; taken < piece.length; ) {
      const now = Math.min(piece.length - taken, partSize - filled)
      part.set(piece.subarray(taken, taken + now), filled)
      taken += now
      filled += now
      if (filled === partSize) {
        yield part
        part = new Uint8Array(partSize)
        filled = 0
      }
    }
  }
  if (filled > 0) yield part.subarray(0, filled)
}
