// Makes the saved project of a release: node packages/store/test/projects/make-saved-project.ts
// It is made once, by the release whose name it bears, and never again: every later version must open it. What it was made
// from is invented. It holds one of each thing a person can do to a project, and the answer it gave is kept beside it.
import { rmSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { proposeMapping, readSheet } from '@thrum/exchange'
import {
  ask,
  bringCounts,
  bringMended,
  correctCell,
  createProject,
  forget,
  offerCounts,
  offerForget,
  offerMended,
  type Project,
  settleCell,
  version,
  withdraw,
} from '@thrum/host'
import { createLogicalClock, factorDescribed, fieldDescribed, hivesPlaced, kindDescribed, makeFact, planMade } from '@thrum/model'
import { unwatched } from '@thrum/model/ground'

const path = fileURLToPath(new URL(`${version}.thrum`, import.meta.url))
let now = Date.UTC(2031, 5, 10, 8)
const clock = { now: () => (now += 1000), monotonic: () => now, zone: () => 'UTC' }
const author = { by: 'walker', device: 'saved-project', clock: createLogicalClock(clock, 'saved-project') }

const fields = ['Weir', 'Ings', 'Oxlea', 'Mill', 'Tarn', 'Holm']
const strips = ['yes', 'no', 'yes', 'no', 'yes', 'no']
const people = ['Orla Invented', 'Berno Madeup']

/** Two days, two plots: a table of 24 watches whose numbers follow from their place in it. */
function table(change: (line: string, row: number) => string = (line) => line): Uint8Array {
  const rows = [4, 11].flatMap((day, d) =>
    fields.flatMap((field, f) =>
      ['edge', 'centre'].map((plot, p) => {
        const row = (d * fields.length + f) * 2 + p
        const honey = 6 + ((row * 7) % 9)
        const bumble = (strips[f] === 'yes' ? 6 : 2) + ((row * 5) % 4)
        const start = `${String(9 + (row % 6)).padStart(2, '0')}:10`
        return [
          field,
          plot,
          `2031-05-${String(day).padStart(2, '0')}`,
          start,
          10,
          63 + d,
          people[row % 2],
          strips[f],
          honey,
          bumble,
        ].join(',')
      }),
    ),
  )
  const lines = rows.map(change)
  return new TextEncoder().encode(
    `field,plot,date,start,minutes,stage,observer,strip,honey bee,bumble bee\n${lines.join('\n')}\n`,
  )
}

async function bring(project: Project, bytes: Uint8Array): Promise<void> {
  const mapping = { ...proposeMapping(readSheet(bytes)).mapping, assigned: { strip: 'at random' as const } }
  const offered = await offerCounts(bytes, mapping, unwatched)
  const mended = await offerMended(project, 'counts.csv', offered)
  if (mended.kind === 'mended') await bringMended(project, 'counts.csv', bytes, mended, {}, unwatched)
  else await bringCounts(project, 'counts.csv', bytes, offered, unwatched)
}

for (const side of ['', '-wal', '-shm']) rmSync(path + side, { force: true })
const project = await createProject(path, 'Ostrel Vale', author)
await project.log.append([
  ...fields.map((field, k) =>
    makeFact(
      fieldDescribed,
      { field, crop: 'sweet cherry', latitude: 12.1 + k / 20, longitude: 30 + k / 20, hectares: 2 },
      author,
    ),
  ),
  makeFact(kindDescribed, { kind: 'bumble bee', group: 'bumble bee' }, author),
  makeFact(factorDescribed, { factor: 'strip', assigned: 'at random' }, author),
  makeFact(hivesPlaced, { hives: 6, field: 'Weir', metres: 200, from: '2031-04-20' }, author),
  makeFact(planMade, { lastVisit: '2031-05-11', primaryKind: 'bumble bee' }, author),
])
await bring(
  project,
  table((line, row) => (row === 3 ? line.replace(/,\d+$/u, ',3-4') : row === 5 ? line.replace(/,\d+$/u, ',>20') : line)),
)
await settleCell(project, { row: 'counts.csv:5', column: 'bumble bee', value: '4' })
await correctCell(project, { row: 'counts.csv:2', column: 'honey bee', value: '9', reason: 'digits swapped' })
const twice = await withdraw(project, { row: 'counts.csv:9', reason: 'thought to be counted twice' })
await withdraw(project, { row: twice.fact, reason: 'it was not' })
await withdraw(project, { row: 'counts.csv:25', reason: 'rain began' })
// The mended file says a length and a stage anew, and has two watches more.
await bring(
  project,
  table((line, row) =>
    row === 10
      ? line.replace(',10,', ',12,')
      : row === 23
        ? `${line}\nWeir,edge,2031-05-18,10:10,10,65,Berno Madeup,yes,7,8\nIngs,edge,2031-05-18,11:10,10,65,Berno Madeup,no,9,3`
        : line,
  ),
)
await forget(project, await offerForget(project, { what: 'observer', name: 'Orla Invented', because: 'asked to' }))
await ask(project, 'what-differs', { between: 'strip', kinds: 'bumble bee', worth: '2' }, unwatched)
const { answer, snapshot } = await ask(project, 'who-visits', {}, unwatched)
const state = {
  version,
  digest: snapshot.digest,
  counts: snapshot.tables.count.rows,
  tallies: snapshot.tables.tally.rows,
  conflicts: snapshot.conflicts.length,
  worths: snapshot.worths.map(({ question, worth }) => ({ question, worth })),
  estimates: answer.estimates.map(({ id, value, interval, n }) => ({
    id,
    value,
    low: interval?.low ?? null,
    high: interval?.high ?? null,
    n,
  })),
}
writeFileSync(fileURLToPath(new URL(`${version}.who-visits.json`, import.meta.url)), `${JSON.stringify(state, null, 2)}\n`)
await project.close()
