import {
  type Author,
  amended,
  createLogicalClock,
  type Fact,
  fieldDescribed,
  makeFact,
  numberColumn,
  packColumns,
  redacted,
  rowsBrought,
  sheetAccepted,
  sheetRead,
  textColumn,
} from '@thrum/model'
import { type Clock, sha256Hex } from '@thrum/model/ground'
import { forgottenName, type ProjectLog, type StoredFact } from '../src/index.ts'

/** A clock that a test owns: a second passes between two looks. */
export function testClock(start = Date.UTC(2026, 4, 4, 9)): Clock {
  let now = start
  return { now: () => (now += 1000), monotonic: () => now, zone: () => 'UTC' }
}

export function author(device = 'tablet', start?: number): Author {
  return { by: 'observer 1', device, clock: createLogicalClock(testClock(start), device) }
}

/** A field whose id follows from its name, so that a test can name the fact. */
export function field(name: string, by: Author = author(), hectares = 2): Fact {
  return makeFact(fieldDescribed, { field: name, crop: 'sweet cherry', hectares }, by, { id: `field-${name}`, subject: name })
}

export function forget(of: string, by: Author = author()): Fact {
  return makeFact(redacted, { of, because: 'asked to' }, by, { id: `forget-${of}`, subject: of })
}

/** Forgets a person: the fact holds a hash, not the name. */
export function forgetName(name: string, project: string, by: Author = author()): Fact {
  const forgotten = forgottenName(name, project, 'observer')
  if (forgotten === null) throw new Error(`${name} is no name`)
  return makeFact(redacted, { name: forgotten, because: 'asked to' }, by, { id: `forget-${forgotten.hash}` })
}

export function forgetPlace(place: string, by: Author = author()): Fact {
  return makeFact(redacted, { place, because: 'asked to' }, by, { id: `forget-place-${place}` })
}

/** A correction with nothing said but what a test needs. */
export function amendment(
  id: string,
  body: { readonly of: string; readonly column: string; readonly from: string | number; readonly to: string | number },
  by: Author = author(),
): Fact {
  return makeFact(amended, { ...body, after: null, reason: 'read again' }, by, { id, subject: body.of })
}

/** A small sheet as an import writes it: read, two batches of three rows, and its acceptance at the end. */
export function sheet(name: string, by: Author = author(), fileHash = sha256Hex(name)): readonly Fact[] {
  const rows = { read: 6, accepted: 6, waiting: 0, refused: 0 }
  const read = { sheet: name, file: `${name}.csv`, fileHash, bytes: 120, mapping: {}, rows, notes: [] }
  const batch = (number: number): Fact => {
    const packed = packColumns([
      { name: 'observer', column: textColumn([`walker ${number}`, 'Orla Invented', null]) },
      { name: 'tally', unit: 'insects', column: numberColumn([number, null, 3]) },
    ])
    return makeFact(
      rowsBrought,
      { sheet: name, table: 'tally', batch: number, first: 3 * number, rows: 3, columns: [...packed.heads] },
      by,
      { id: `${name}-batch-${number}`, subject: name, data: packed.data },
    )
  }
  return [
    makeFact(sheetRead, read, by, { id: `${name}-read`, subject: name }),
    batch(0),
    batch(1),
    makeFact(sheetAccepted, { sheet: name, batches: 2 }, by, { id: `${name}-accepted`, subject: name }),
  ]
}

export async function allFacts(log: ProjectLog): Promise<readonly StoredFact[]> {
  const facts: StoredFact[] = []
  for await (const chunk of log.factsAfter(0)) facts.push(...chunk)
  return facts
}

export async function bytesOf(parts: AsyncIterable<Uint8Array> | undefined): Promise<Buffer> {
  const list: Uint8Array[] = []
  for await (const part of parts ?? []) list.push(part)
  return Buffer.concat(list)
}
