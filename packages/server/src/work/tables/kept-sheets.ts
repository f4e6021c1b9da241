import { readFileSync } from 'node:fs'
import { type Proposal, proposeMapping, readSheet, type Sheet } from '@thrum/exchange'
import { ThrumError } from '@thrum/model/ground'
import type { TableAt } from '../../thread/protocol.ts'

/** A table as it was read for its proposal. */
export interface KeptSheet {
  readonly bytes: Uint8Array
  readonly sheet: Sheet
  readonly proposal: Proposal
}

/** Tables read at once: a person looks at one, perhaps at another beside it. */
const mostSheets = 2

/** Tables that were read lately, so that an edited mapping does not read them again. */
export interface KeptSheets {
  /** @throws ThrumError exchange/... where the file cannot be read as a table, server/table/gone */
  read(at: TableAt): KeptSheet
  drop(table: string): void
}

function bytesOf({ path }: TableAt): Uint8Array {
  try {
    return readFileSync(path)
  } catch (cause) {
    throw new ThrumError('server/table/gone', {}, { cause })
  }
}

export function createKeptSheets(): KeptSheets {
  const all = new Map<string, KeptSheet>()
  return {
    read: (at) => {
      const known = all.get(at.table)
      if (known !== undefined) return known
      const bytes = bytesOf(at)
      const sheet = readSheet(bytes)
      const kept = { bytes, sheet, proposal: proposeMapping(sheet) }
      all.set(at.table, kept)
      for (const oldest of all.keys()) {
        if (all.size <= mostSheets) break
        all.delete(oldest)
      }
      return kept
    },
    drop: (table) => void all.delete(table),
  }
}
