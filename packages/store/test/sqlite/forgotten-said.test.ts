import {
  cellSettled,
  type Fact,
  makeFact,
  numberColumn,
  packColumns,
  rowsBrought,
  sheetRead,
  textColumn,
  withdrawn,
} from '@thrum/model'
import { sha256Hex } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { createProjectFile } from '../../src/sqlite/index.ts'
import { allFacts, amendment, author, forget, sheet } from '../facts.ts'
import { testPath } from '../folder.ts'

const row = 'spring-batch-0#1'
const said: readonly Fact[] = [
  amendment('said-correction', { of: row, column: 'observer', from: 'Orla Invented', to: 'Berno Madeup' }),
  makeFact(cellSettled, { of: row, column: 'tally', to: 'Orla Invented', mark: 'waiting' }, author(), { id: 'said-settlement' }),
  makeFact(withdrawn, { of: 'said-correction', reason: 'Orla Invented said so' }, author(), { id: 'said-withdrawal' }),
  makeFact(withdrawn, { of: 'said-withdrawal', reason: 'not Orla Invented' }, author(), { id: 'said-withdrawal-of-it' }),
]
const elsewhere = amendment('elsewhere', { of: 'spring-batch-0#0', column: 'observer', from: 'walker 0', to: 'walker 9' })

async function bodiesAfter(steps: readonly (readonly Fact[])[]): Promise<readonly unknown[]> {
  const log = await createProjectFile(testPath())
  for (const facts of [sheet('spring'), ...steps]) await log.append(facts)
  const bodies = (await allFacts(log)).filter(({ id }) => id.startsWith('said')).map(({ id, body }) => [id, body])
  expect((await log.factById('elsewhere'))?.body).toMatchObject({ to: 'walker 9' })
  await log.close()
  return bodies.sort()
}

describe('what is said of a forgotten row', () => {
  it('identity: is emptied in whatever order it comes, and what is said of that as well; of other rows nothing is', async () => {
    const first = await bodiesAfter([[elsewhere, ...said], [forget(row)]])
    expect(first).toEqual(said.map(({ id, body }) => [id, { of: body.of }]))
    expect(await bodiesAfter([[forget(row), elsewhere], said])).toEqual(first)
    expect(await bodiesAfter([[...said.slice(1), elsewhere], [forget(row)], said.slice(0, 1)])).toEqual(first)
    expect(await bodiesAfter([said.toReversed(), [elsewhere], [forget(row)]])).toEqual(first)
  })
})

describe('the file of a mended version', () => {
  /** A mended version whose second line is the row to be forgotten. */
  const held = (): readonly Fact[] => {
    const packed = packColumns([
      { name: 'line', column: numberColumn([2, 3]) },
      { name: 'source', column: textColumn(['spring-batch-0', 'spring-batch-0']) },
      { name: 'row', column: numberColumn([0, 1]) },
    ])
    const rows = { read: 2, accepted: 2, waiting: 0, refused: 0 }
    const read = { sheet: 'mended', file: 'spring.csv', fileHash: sha256Hex('mended'), bytes: 6, mapping: {}, rows, notes: [] }
    const body = { sheet: 'mended', table: 'heldLine', batch: 0, first: 0, rows: 2, columns: [...packed.heads] }
    return [
      makeFact(sheetRead, read, author(), { id: 'mended-read', subject: 'mended' }),
      makeFact(rowsBrought, body, author(), { id: 'mended-held', subject: 'mended', data: packed.data }),
    ]
  }

  it('goes where it holds a forgotten row that an earlier version brought, and only then', async () => {
    for (const [of, isKept] of [
      [row, false],
      ['spring-batch-0', false],
      ['spring-batch-0#2', true],
    ] as const) {
      const log = await createProjectFile(testPath())
      await log.append([...sheet('spring'), ...held()])
      await log.putAttachment('text/csv', [new TextEncoder().encode('mended')])
      await log.append([forget(of)])
      expect((await log.attachment(sha256Hex('mended'))) !== null).toBe(isKept)
      expect((await log.putAttachment('text/csv', [new TextEncoder().encode('mended')])).kept).toBe(isKept)
      await log.close()
    }
  })
})
