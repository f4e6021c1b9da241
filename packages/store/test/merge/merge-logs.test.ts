import { type Fact, keptCopy } from '@thrum/model'
import { type Progress, sha256Hex, unwatched } from '@thrum/model/ground'
import { describe, expect, it, onTestFinished } from 'vitest'
import { mergeLogs, type ProjectLog, partSize } from '../../src/index.ts'
import { createProjectFile } from '../../src/sqlite/index.ts'
import { allFacts, author, bytesOf, field, forget, sheet } from '../facts.ts'
import { testPath } from '../folder.ts'
import { refusal } from '../refusal.ts'

async function logOf(...facts: Fact[]): Promise<ProjectLog> {
  const log = await createProjectFile(testPath())
  onTestFinished(() => log.close())
  await log.append(facts)
  return log
}

const idsOf = async (log: ProjectLog): Promise<readonly string[]> => (await allFacts(log)).map(({ id }) => id)
const nothing = { added: 0, replaced: 0, attachments: 0, heldBack: 0 }

describe('mergeLogs', () => {
  it('takes what is missing, once', async () => {
    const into = await logOf(field('Weir'))
    const from = await logOf(field('Mill'), field('Weir'))
    expect(await mergeLogs(into, from, unwatched)).toEqual({ ...nothing, added: 1 })
    expect(await mergeLogs(into, from, unwatched)).toEqual(nothing)
    expect(await idsOf(into)).toEqual(['field-Weir', 'field-Mill'])
    expect(await idsOf(from)).toEqual(['field-Mill', 'field-Weir'])
  })

  it('takes nothing from an empty log, from itself, and everything into an empty one', async () => {
    const log = await logOf(field('Weir'), ...sheet('spring'))
    expect(await mergeLogs(log, await logOf(), unwatched)).toEqual(nothing)
    expect(await mergeLogs(log, log, unwatched)).toEqual(nothing)
    expect(await mergeLogs(await logOf(), log, unwatched)).toEqual({ ...nothing, added: 5 })
  })

  it('both sides keep the same copy of a sheet that both brought', async () => {
    const early = sheet('spring', author('phone', Date.UTC(2026, 4, 1)))
    const late = sheet('spring', author('tablet', Date.UTC(2026, 4, 2)))
    const one = await logOf(...early)
    const two = await logOf(...late)
    expect(await mergeLogs(one, two, unwatched)).toEqual(nothing)
    expect(await mergeLogs(two, one, unwatched)).toEqual({ ...nothing, replaced: 4 })
    const copies = async (log: ProjectLog) =>
      (await allFacts(log)).map(({ seq, ...fact }) => fact).sort((a, b) => (a.id < b.id ? -1 : 1))
    expect(await copies(two)).toEqual(await copies(one))
    for (const [k, fact] of early.entries()) expect(keptCopy(fact, late[k] ?? fact)).toBe(fact)
  })

  it('holds back sheets that neither side accepted, with their files', async () => {
    const file = new TextEncoder().encode('field,tally\n')
    const [read, first, second, accepted] = sheet('spring', author(), sha256Hex(file)) as [Fact, Fact, Fact, Fact]
    const from = await logOf(read, first, second, field('Mill'))
    await from.putAttachment('text/csv', [file])
    const photo = await from.putAttachment('image/jpeg', [Uint8Array.of(1)])
    const into = await logOf()
    expect(await mergeLogs(into, from, unwatched)).toEqual({ added: 1, replaced: 0, attachments: 1, heldBack: 3 })
    expect(await idsOf(into)).toEqual(['field-Mill'])
    expect(await into.attachment(photo.hash)).not.toBeNull()
    await from.append([accepted])
    expect(await mergeLogs(into, from, unwatched)).toEqual({ added: 4, replaced: 0, attachments: 1, heldBack: 0 })
    // The acceptance comes last: a sheet never counts before it is whole.
    expect((await idsOf(into)).at(-1)).toBe('spring-accepted')
  })

  it('never leaves half a sheet counted when it is stopped, in whatever order the facts lie', async () => {
    const by = author()
    const [read, first, second, accepted] = sheet('spring', by) as [Fact, Fact, Fact, Fact]
    const fields = Array.from({ length: 600 }, (_, k) => field(`f${k}`, by))
    const from = await logOf(accepted, first, ...fields, read, second)
    const into = await logOf()
    const signal = { aborted: false }
    const stopping = {
      signal,
      onProgress: ({ done }: Progress) => {
        signal.aborted = done >= 500
      },
      breathe: () => Promise.resolve(),
    }
    await mergeLogs(into, from, stopping).catch(() => undefined)
    expect(await into.factById('spring-batch-0')).not.toBeNull()
    expect(await into.factById('spring-batch-1')).toBeNull()
    expect(await into.factById('spring-accepted')).toBeNull()
    await mergeLogs(into, from, unwatched)
    expect(await into.factCount()).toBe(604)
  })

  it('takes the batches of a sheet that only the other side accepted', async () => {
    const [read, first, second, accepted] = sheet('spring', author('tablet', Date.UTC(2026, 4, 2))) as [Fact, Fact, Fact, Fact]
    const earlier = sheet('spring', author('phone', Date.UTC(2026, 4, 1))).slice(0, 2)
    const into = await logOf(read, first, second, accepted)
    expect(await mergeLogs(into, await logOf(...earlier), unwatched)).toEqual({ ...nothing, replaced: 2 })
  })

  it('what was forgotten on one side is forgotten on both, in either direction', async () => {
    for (const direction of ['there', 'back']) {
      const knowing = await logOf(field('Weir'), ...sheet('spring'), forget('field-Weir'), forget('spring-batch-0#1'))
      const unknowing = await logOf(field('Weir'), ...sheet('spring'))
      if (direction === 'there') await mergeLogs(unknowing, knowing, unwatched)
      else await mergeLogs(knowing, unknowing, unwatched)
      const log = direction === 'there' ? unknowing : knowing
      expect((await log.factById('field-Weir'))?.body).toEqual({})
      expect(JSON.stringify((await log.factById('spring-batch-0'))?.body)).not.toContain('Orla Invented')
      expect(JSON.stringify((await log.factById('spring-batch-1'))?.body)).toContain('Orla Invented')
    }
  })

  it('brings attachments whole, and refuses one that is not what its hash says', async () => {
    const bytes = Uint8Array.from({ length: 2 * partSize + 9 }, (_, k) => k & 255)
    const from = await logOf()
    const { hash } = await from.putAttachment('text/csv', [bytes])
    const into = await logOf()
    expect(await mergeLogs(into, from, unwatched)).toEqual({ ...nothing, attachments: 1 })
    expect((await bytesOf((await into.attachment(hash))?.parts())).equals(bytes)).toBe(true)
    const lying: ProjectLog = {
      ...from,
      attachment: async () => ({
        hash,
        media: 'text/csv',
        size: 1,
        parts: async function* () {
          yield Uint8Array.of(1)
        },
      }),
    }
    const other = await logOf()
    await refusal(mergeLogs(other, lying, unwatched), 'store/attachment-damaged')
    expect(await other.attachment(sha256Hex(Uint8Array.of(1)))).toBeNull()
  })

  it('tells how far it is, and when it is stopped is finished by doing it again', async () => {
    const by = author()
    const from = await logOf(...Array.from({ length: 1200 }, (_, k) => field(`f${k}`, by)), ...sheet('spring', by))
    const into = await logOf()
    const told: Progress[] = []
    const signal = { aborted: false, reason: new Error('stopped by hand') }
    const stopping = {
      signal,
      onProgress: (progress: Progress) => {
        told.push(progress)
        signal.aborted = progress.done >= 500
      },
      breathe: () => Promise.resolve(),
    }
    await expect(mergeLogs(into, from, stopping)).rejects.toBe(signal.reason)
    expect(await into.factCount()).toBe(500)
    expect(told.at(-1)).toEqual({ done: 500, total: 1204, unit: 'fact' })
    expect(await mergeLogs(into, from, unwatched)).toEqual({ ...nothing, added: 704 })
  })
})
