import {
  type Author,
  amended,
  type BodyOf,
  cellSettled,
  createLogicalClock,
  type Fact,
  type FactKind,
  fieldDescribed,
  kindDescribed,
  makeFact,
  numberColumn,
  packColumns,
  questionLookedAt,
  redacted,
  rowsBrought,
  sheetAccepted,
  sheetDiscarded,
  sheetRead,
  textColumn,
  withdrawn,
} from '@thrum/model'
import { type Rng, sha256Hex, unwatched } from '@thrum/model/ground'
import { forgottenName, mergeLogs, type ProjectLog } from '@thrum/store'

/** What can happen at a copy of a project. */
export const whats = [
  'field',
  'several',
  'sheet',
  'accepted sheet',
  'accept',
  'discard',
  'amend',
  'settle',
  'withdraw',
  'forget',
  'forget name',
  'forget place',
  'look',
  'stranger',
  'attach',
  'exchange',
] as const

/** Invented people who stand in the sheets of a history; a step `forget name` forgets one of them. */
export const people = ['Orla Invented', 'Berno Madeup', 'Ilse van der Nowhere'] as const

/** One thing that happens at one copy. `pick` chooses among what is there, or names what is new. */
export interface Step {
  readonly what: (typeof whats)[number]
  readonly copy: number
  readonly pick: number
}

/** A random history of `steps` things that happen at `copies` copies. */
export function drawHistory(rng: Rng, steps: number, copies: number): readonly Step[] {
  return Array.from({ length: steps }, () => ({
    what: whats[rng.below(whats.length)] ?? 'field',
    copy: rng.below(copies),
    pick: rng.below(1_000_000),
  }))
}

interface Copy {
  readonly log: ProjectLog
  readonly author: Author
  readonly newId: (what: string) => string
}

/** Lets a history happen. Each copy has a device and a clock of its own, an hour apart, that knows nothing of the others. */
export async function playHistory(steps: readonly Step[], logs: readonly ProjectLog[]): Promise<void> {
  const copies = logs.map((log, number): Copy => {
    const device = `device-${number}`
    let now = Date.UTC(2026, 4, 4, 9 + number)
    let facts = 0
    const clock = { now: () => (now += 60_000), monotonic: () => now, zone: () => 'UTC' }
    return {
      log,
      author: { by: `observer ${number}`, device, clock: createLogicalClock(clock, device) },
      newId: (what) => `${device}-${what}-${facts++}`,
    }
  })
  for (const step of steps) {
    const copy = copies[step.copy]
    if (copy === undefined) continue
    if (step.what === 'exchange') await mergeLogs(copy.log, logs[step.pick % logs.length] ?? copy.log, unwatched)
    else await happen(step, copy)
  }
}

async function happen({ what, pick }: Step, { log, author, newId }: Copy): Promise<void> {
  const make = <K extends FactKind>(kind: K, body: BodyOf<K>, subject: string): Fact =>
    makeFact(kind, body as never, author, { id: newId(kind.kind), subject })
  const sheet = `sheet-${pick % 4}`
  const known = await factsOf(log)
  const target = known[pick % Math.max(known.length, 1)]
  const row = known.filter(({ kind, data }) => kind === rowsBrought.kind && data !== null)[pick % 3]
  const cell = row === undefined ? target?.id : `${row.id}#${pick % 3}`
  const fieldName = `field ${pick % 7}`

  if (what === 'field') {
    const described = { field: fieldName, hectares: 1 + (pick % 9), latitude: 12.345, longitude: pick % 90 }
    await log.append([make(fieldDescribed, described, fieldName)])
  } else if (what === 'several') {
    const kinds = [0, 1, 2, 3, 4].map((k) => `kind ${(pick + k) % 11}`)
    await log.append(kinds.map((kind) => make(kindDescribed, { kind, group: 'bumble bee' }, kind)))
  } else if (what === 'sheet' || what === 'accepted sheet') {
    // One batch a transaction, as an import does it. The file is the same at every copy, and so are the ids.
    await log.putAttachment('text/csv', [new TextEncoder().encode(fileOf(pick % 4))])
    for (const fact of sheetFacts(pick % 4, author)) await log.append([fact])
    if (what === 'accepted sheet') await log.append([accepted(pick % 4, author)])
  } else if (what === 'accept') {
    if (known.some(({ id }) => id === `${sheet}-tally`)) await log.append([accepted(pick % 4, author)])
  } else if (what === 'discard') await log.append([make(sheetDiscarded, { sheet, reason: 'wrong file' }, sheet)])
  else if (what === 'look') {
    const looked = { question: 'what-differs', asked: 'strips', digest: 'd', verdict: null }
    await log.append([make(questionLookedAt, looked, 'what-differs')])
  } else if (what === 'forget name') {
    const name = forgottenName(people[pick % people.length] ?? '', 'project of the trial', 'observer')
    if (name !== null) await log.append([make(redacted, { name, because: 'asked to' }, 'names')])
  } else if (what === 'forget place') {
    await log.append([make(redacted, { place: fieldName, because: 'a rare nest' }, 'places')])
  } else if (what === 'stranger') {
    const stranger = make(fieldDescribed, { field: fieldName }, fieldName)
    await log.append([{ ...stranger, kind: 'from-a-newer-version', v: 4, body: { moths: pick } }])
  } else if (what === 'attach') await log.putAttachment('image/jpeg', [new Uint8Array(1 + (pick % 3000)).fill(pick & 255)])
  else if (cell === undefined || target === undefined) return
  else if (what === 'amend') await log.append([make(amended, amendment(known, cell, pick), cell)])
  else if (what === 'settle') await log.append([make(cellSettled, { of: cell, column: 'flowers', to: pick % 50 }, cell)])
  else if (what === 'withdraw')
    await log.append([make(withdrawn, { of: pick % 2 === 0 ? target.id : cell, reason: 'twice' }, cell)])
  else if (what === 'forget')
    await log.append([make(redacted, { of: pick % 2 === 0 ? target.id : cell, because: 'asked to' }, cell)])
}

async function factsOf(log: ProjectLog): Promise<readonly Fact[]> {
  const facts: Fact[] = []
  for await (const chunk of log.factsAfter(0)) facts.push(...chunk)
  return facts
}

/** A correction of a cell that follows the last one this copy knows of, or none. */
function amendment(known: readonly Fact[], of: string, pick: number): BodyOf<typeof amended> {
  const column = of.includes('#') ? 'flowers' : pick % 2 === 0 ? 'hectares' : 'latitude'
  const before = known.filter((fact) => fact.kind === amended.kind && fact.body.of === of).at(-1)
  const reason = pick % 5 === 0 ? `asked ${people[pick % people.length]}` : 'read again'
  return { of, column, after: pick % 3 === 0 ? null : (before?.id ?? null), from: 2, to: pick % 100, reason }
}

const fileOf = (number: number): string =>
  `field,observer,date,kind,tally\nfield ${number},${people[number % people.length]},2026-05-04,bumble bees,3\n`

function sheetFacts(number: number, author: Author): readonly Fact[] {
  const sheet = `sheet-${number}`
  const rows = { read: 3, accepted: 3, waiting: 0, refused: 0 }
  const file = fileOf(number)
  const read = { sheet, file: `${sheet}.csv`, fileHash: sha256Hex(file), bytes: file.length, mapping: {}, rows, notes: [] }
  const counts = packColumns([
    { name: 'field', column: textColumn([`field ${number}`, `field ${number}`, 'field 6']) },
    { name: 'key', column: textColumn(['a', 'b', 'c']) },
    { name: 'observer', column: textColumn([people[number % people.length] ?? null, null, people[0]]) },
    { name: 'latitude', column: numberColumn([12.3, 12.4, 12.5]) },
    { name: 'flowers', unit: '{flowers}', column: numberColumn([40, null, 12]) },
  ])
  const tallies = packColumns([
    { name: 'kind', column: textColumn(['kind 1', 'kind 2', 'kind 1']) },
    { name: 'count', unit: '1', column: numberColumn([0, 1, 2]) },
    { name: 'number', unit: '{individuals}', column: numberColumn([3, 0, number]) },
  ])
  const batch = (table: 'count' | 'tally', packed: typeof counts): Fact =>
    makeFact(
      rowsBrought,
      { sheet, table, batch: table === 'count' ? 0 : 1, first: 0, rows: 3, columns: [...packed.heads] },
      author,
      { id: `${sheet}-${table}`, subject: sheet, data: packed.data },
    )
  return [
    makeFact(sheetRead, read, author, { id: `${sheet}-read`, subject: sheet }),
    batch('count', counts),
    batch('tally', tallies),
  ]
}

function accepted(number: number, author: Author): Fact {
  const sheet = `sheet-${number}`
  return makeFact(sheetAccepted, { sheet, batches: 2 }, author, { id: `${sheet}-accepted`, subject: sheet })
}
