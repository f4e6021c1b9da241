import type { Fact } from '@thrum/model'
import type { Saying } from '@thrum/model/ground'

/** A fact as a log holds it. `seq` is this log's own order of arrival: a cursor and nothing else. */
export interface StoredFact extends Fact {
  readonly seq: number
}

/** Whether a log takes new facts, and if not, why. */
export type Access = { readonly mode: 'write' } | { readonly mode: 'read'; readonly because: Saying }

/** What an append did. Ids that stand in neither list were known already, to the letter. */
export interface Appended {
  readonly added: readonly string[]
  /** Known ids of which the copy that came was the one to keep. They have a new `seq`, so that cursors meet them again. */
  readonly replaced: readonly string[]
}

export interface FactFilter {
  /** Only facts of these kinds. */
  readonly kinds?: readonly string[]
}

/** A file as it came: SHA-256 of its bytes in lower-case hexadecimal, its media type, its size [byte]. */
export interface AttachmentHead {
  readonly hash: string
  readonly media: string
  readonly size: number
}

export interface Attachment extends AttachmentHead {
  /** The bytes in order, at most 1 MiB a part. */
  parts(): AsyncIterable<Uint8Array>
}

/** What became of a file that was to be kept. */
export interface AttachmentPut extends AttachmentHead {
  /** False where it holds what is forgotten here: then nothing of it was kept. */
  readonly kept: boolean
}

/** Somebody this log was exchanged with: up to which of our `seq` they have all, up to which of theirs we have all. */
export interface Peer {
  readonly id: string
  readonly name: string
  readonly key: string
  readonly sent: number
  readonly received: number
}

/** Something worked out from the facts of one digest. It can be worked out again. */
export interface Derived {
  readonly digest: string
  readonly bytes: Uint8Array
}

/** Bytes of one part of an attachment. */
export const partSize = 1_048_576

/**
 * What every database behind Thrum does, and all it does: it keeps facts, attachments, cursors and caches, and understands
 * none of them. Facts are appended, never edited; two exceptions are part of the contract:
 *
 * - Of two copies of one id the smaller (`at`, `device`) is kept, with a fixed order where these are equal.
 * - What a `redacted` fact names is taken out, whichever of the two comes first: a fact, a row of a batch, a person's name
 *   wherever it stands, the exact place of a field. An original file that holds it is not kept.
 *
 * Chunks are at most 500 facts or about 4 MiB, and nothing is locked between two of them.
 *
 * @throws ThrumError `store/…` from every member: busy, disk-full, write-failed, damaged, read-only, fact-misshapen
 */
export interface ProjectLog {
  readonly access: Access

  /** All of these facts or none, on disk when the promise resolves. Doing it twice equals doing it once. */
  append(facts: readonly Fact[]): Promise<Appended>
  /** Facts with a `seq` above the cursor, in order of `seq`, up to what is there when the last chunk is read. */
  factsAfter(seq: number, filter?: FactFilter): AsyncIterable<readonly StoredFact[]>
  factById(id: string): Promise<StoredFact | null>
  factsBySubject(subject: string): AsyncIterable<readonly StoredFact[]>
  factCount(): Promise<number>
  /** The greatest `seq`; 0 in an empty log. */
  lastSeq(): Promise<number>

  /** Keeps a file whole or not at all. No lock is held while the stream runs. The same bytes twice are kept once. */
  putAttachment(media: string, bytes: AsyncIterable<Uint8Array> | Iterable<Uint8Array>): Promise<AttachmentPut>
  attachment(hash: string): Promise<Attachment | null>
  attachments(): AsyncIterable<readonly AttachmentHead[]>

  derived(key: string): Promise<Derived | null>
  keepDerived(key: string, derived: Derived): Promise<void>
  /** Drops every cache. Loses nothing. */
  forgetDerived(): Promise<void>

  peers(): Promise<readonly Peer[]>
  /** Adds a peer, or takes its new name, key and cursors. */
  keepPeer(peer: Peer): Promise<void>

  close(): Promise<void>
}
