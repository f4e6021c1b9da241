import { type Fact, mark, rowsBrought, unpackColumns } from '@thrum/model'
import { sha256Hex } from '@thrum/model/ground'
import { describe, expect, it, onTestFinished } from 'vitest'
import { type ProjectLog, partSize } from '../src/index.ts'
import { allFacts, amendment, author, bytesOf, field, forget, forgetName, forgetPlace, sheet } from './facts.ts'
import { refusal } from './refusal.ts'

/** What every database behind the port must do. `open` gives an empty log. */
export function describePort(name: string, open: () => Promise<ProjectLog>): void {
  const emptyLog = async (): Promise<ProjectLog> => {
    const log = await open()
    onTestFinished(() => log.close())
    return log
  }

  describe(`${name}: facts`, () => {
    it('starts empty', async () => {
      const log = await emptyLog()
      expect(await log.factCount()).toBe(0)
      expect(await log.lastSeq()).toBe(0)
      expect(await allFacts(log)).toEqual([])
      expect(await log.factById('field-Weir')).toBeNull()
    })

    it('gives back what was put in, in order of arrival', async () => {
      const log = await emptyLog()
      const facts = [field('Weir'), ...sheet('spring'), { ...field('Älmhöhe 🌻'), kind: 'from-a-newer-version', v: 7 }]
      expect(await log.append(facts)).toEqual({ added: facts.map(({ id }) => id), replaced: [] })
      const held = await allFacts(log)
      expect(held.map(({ seq, ...fact }) => fact)).toEqual(facts)
      expect(held.map(({ seq }) => seq)).toEqual([1, 2, 3, 4, 5, 6])
      expect(await log.factById('spring-batch-1')).toEqual(held[3])
    })

    it('an append of nothing, and of the same again, changes nothing', async () => {
      const log = await emptyLog()
      const facts = sheet('spring')
      expect(await log.append([])).toEqual({ added: [], replaced: [] })
      await log.append(facts)
      expect(await log.append([...facts, ...facts])).toEqual({ added: [], replaced: [] })
      expect(await log.append([field('Weir'), field('Weir')])).toEqual({ added: ['field-Weir'], replaced: [] })
      expect(await log.lastSeq()).toBe(5)
    })

    it('keeps the smaller copy of one id, and cursors meet it again', async () => {
      const log = await emptyLog()
      const late = field('Weir', author('tablet', Date.UTC(2026, 5, 1)))
      const early = field('Weir', author('phone', Date.UTC(2026, 4, 1)))
      await log.append([late, field('Mill')])
      expect(await log.append([early])).toEqual({ added: [], replaced: ['field-Weir'] })
      expect(await log.append([late])).toEqual({ added: [], replaced: [] })
      expect(await log.factById('field-Weir')).toEqual({ ...early, seq: 3 })
      expect((await chunksOf(log.factsAfter(2))).flat().map(({ id }) => id)).toEqual(['field-Weir'])
    })

    it('reads after a cursor, by kind and by subject', async () => {
      const log = await emptyLog()
      await log.append([field('Weir'), ...sheet('spring'), field('Mill'), forget('Weir#0')])
      const ids = async (chunks: AsyncIterable<readonly Fact[]>) => (await chunksOf(chunks)).flat().map(({ id }) => id)
      expect(await ids(log.factsAfter(5))).toEqual(['field-Mill', 'forget-Weir#0'])
      expect(await ids(log.factsAfter(0, { kinds: ['field-described', 'redacted'] }))).toEqual([
        'field-Weir',
        'field-Mill',
        'forget-Weir#0',
      ])
      expect(await ids(log.factsAfter(0, { kinds: [] }))).toEqual([])
      expect(await ids(log.factsBySubject('spring'))).toEqual(sheet('spring').map(({ id }) => id))
      expect(await ids(log.factsBySubject('nobody'))).toEqual([])
    })

    it('reads in chunks, each bounded by number and by bytes, and sees what came meanwhile', async () => {
      const log = await emptyLog()
      const by = author()
      await log.append(Array.from({ length: 1001 }, (_, k) => field(`f${k}`, by)))
      expect((await chunksOf(log.factsAfter(0))).map((chunk) => chunk.length)).toEqual([500, 500, 1])
      const heavy = (k: number): Fact => ({ ...field(`heavy ${k}`, by), data: new Uint8Array(3_000_000).fill(k) })
      await log.append([heavy(1), heavy(2), heavy(3)])
      const sizes: number[] = []
      for await (const chunk of log.factsAfter(1001)) {
        if (sizes.length === 0) await log.append([field('last', by)])
        sizes.push(chunk.length)
      }
      expect(sizes).toEqual([2, 2])
    })

    it('refuses an append whole when one fact has no proper envelope', async () => {
      const log = await emptyLog()
      const odd = [
        { ...field('x'), at: 'yesterday' },
        { ...field('x'), id: 'short' },
        { ...field('x'), id: 'field-\ud800-half' },
        { ...field('x'), subject: 'zero\u0000' },
        { ...field('x'), v: 0 },
      ]
      for (const fact of odd) await refusal(log.append([field('Weir'), fact]), 'store/fact-misshapen')
      expect(await log.factCount()).toBe(0)
    })

    it('keeps texts of a body to the letter, half characters and zeros too', async () => {
      const log = await emptyLog()
      const fact = { ...field('Weir'), body: { note: 'zero \u0000, half \ud800, \u2028', deep: [{ b: 1, a: [null, -1e-300] }] } }
      await log.append([fact])
      expect((await log.factById(fact.id))?.body).toEqual(fact.body)
    })

    it('answers nothing after it was closed, and closing twice is no fault', async () => {
      const log = await emptyLog()
      await log.close()
      await log.close()
      await expect(log.append([field('Weir')])).rejects.toThrow('closed')
      await expect(log.factCount()).rejects.toThrow('closed')
    })
  })

  describe(`${name}: forgetting`, () => {
    it('empties what is to be forgotten, whichever comes first, and no copy brings it back', async () => {
      const log = await emptyLog()
      await log.append([field('Weir'), forget('field-Weir'), forget('field-Mill')])
      await log.append([field('Mill')])
      await log.append([field('Weir', author('phone', Date.UTC(2020, 1, 1)))])
      for (const id of ['field-Weir', 'field-Mill']) {
        expect(await log.factById(id)).toMatchObject({ id, body: {}, data: null })
      }
      expect(await log.factCount()).toBe(4)
    })

    it('empties single rows of a batch and their texts, and leaves the others', async () => {
      for (const order of ['before', 'after']) {
        const log = await emptyLog()
        const orders = [forget('spring-batch-1#1'), forget('spring-batch-1#0')]
        if (order === 'before') await log.append(orders)
        await log.append(sheet('spring'))
        if (order === 'after') await log.append(orders)
        const held = await log.factById('spring-batch-1')
        const body = rowsBrought.shape.parse(held?.body)
        const columns = unpackColumns({ heads: body.columns, rows: body.rows, data: held?.data ?? new Uint8Array() })
        expect(columns.map(({ column }) => column)).toEqual([
          { type: 'text', codes: Int32Array.of(-1, -1, -1), dictionary: [] },
          { type: 'number', values: Float64Array.of(Number.NaN, Number.NaN, 3), marks: Uint8Array.of(mark.lost, mark.lost, 0) },
        ])
        expect(await log.factById('spring-batch-0')).toMatchObject({ body: sheet('spring')[1]?.body })
      }
    })

    it('never forgets what must stay forgotten, nor that a sheet was accepted', async () => {
      const log = await emptyLog()
      await log.append([forget('field-Weir'), ...sheet('spring'), forget('forget-field-Weir'), forget('spring-accepted')])
      expect((await log.factById('forget-field-Weir'))?.body).toEqual({ of: 'field-Weir', because: 'asked to' })
      expect((await log.factById('spring-accepted'))?.body).toEqual({ sheet: 'spring', batches: 2 })
    })

    it('drops the caches, which may hold it too', async () => {
      const log = await emptyLog()
      await log.append([field('Weir')])
      await log.keepDerived('snapshot', { digest: 'd', bytes: Uint8Array.of(1) })
      await log.append([forget('field-Mill')])
      expect(await log.derived('snapshot')).not.toBeNull()
      await log.append([forget('field-Weir')])
      expect(await log.derived('snapshot')).toBeNull()
    })
  })

  describe(`${name}: forgetting names and places`, () => {
    const project = 'project-1'
    const person = 'Orla Invented'
    const orla = (by = author('desk')): Fact => forgetName(person, project, by)
    const everything = async (log: ProjectLog): Promise<string> => {
      const texts = (await allFacts(log)).map((fact) => JSON.stringify({ ...fact, data: null }))
      for await (const heads of log.attachments()) {
        for (const { hash } of heads) texts.push((await bytesOf((await log.attachment(hash))?.parts())).toString('latin1'))
      }
      return [...texts, JSON.stringify(await log.peers())].join('\n')
    }
    const told = (): readonly Fact[] => [
      ...sheet('spring'),
      { ...field('Weir'), by: 'orla invented', body: { field: 'Weir', note: 'asked ORLA  INVÉNTED, twice' } },
    ]

    it('a name goes wherever it stands, whichever comes first, and what stands instead is the same', async () => {
      const states: string[] = []
      for (const order of ['before', 'after']) {
        const log = await emptyLog()
        if (order === 'before') await log.append([orla()])
        await log.keepPeer({ id: 'p', name: 'phone of Orla Invented', key: 'k', sent: 0, received: 0 })
        await log.append(told())
        if (order === 'after') await log.append([orla()])
        const text = await everything(log)
        expect(text.toLowerCase()).not.toMatch(/orla|inv[eé]nted/u)
        states.push(
          text
            .replaceAll(/"seq":\d+,/gu, '')
            .split('\n')
            .sort()
            .join('\n'),
        )
        expect((await log.factById('field-Weir'))?.body.note).toMatch(/^asked observer withheld [0-9a-f]{6}, twice$/u)
      }
      expect(states[1]).toBe(states[0])
    })

    it('the fact that forgets a name does not hold it', async () => {
      expect(JSON.stringify(orla())).not.toMatch(/orla|invented/iu)
    })

    it('kinds, roles and the columns that a table declares are nobody’s name', async () => {
      const log = await emptyLog()
      await log.append([
        ...sheet('spring'),
        forgetName('observer', project, author('desk')),
        forgetName('tally', project, author('desk')),
      ])
      const body = rowsBrought.shape.parse((await log.factById('spring-batch-1'))?.body)
      expect(body.table).toBe('tally')
      await log.append([{ ...field('Rose'), kind: 'kind-described', body: { kind: 'rose chafer', note: 'Rose saw it' } }])
      await log.append([forgetName('Rose', project, author('desk'))])
      expect((await log.factById('field-Rose'))?.body).toMatchObject({ kind: 'rose chafer' })
      expect((await log.factById('field-Rose'))?.body.note).toMatch(/^observer withheld/u)
    })

    it('original files that hold it go, and are not kept again', async () => {
      const text = 'observer;remark\r\n1;mit Orla Invented gezählt\r\n'
      const encodings = [Buffer.from(text, 'utf8'), Buffer.from(text, 'latin1'), Buffer.from(`\ufeff${text}`, 'utf16le')]
      const acrossParts = Buffer.concat([Buffer.alloc(partSize - 5, 'x'), Buffer.from(' Orla Invented ')])
      for (const bytes of [...encodings, acrossParts]) {
        const log = await emptyLog()
        const other = await log.putAttachment('text/csv', [Buffer.from('observer\nnobody\n')])
        const { hash } = await log.putAttachment('text/csv', [bytes])
        await log.append([orla()])
        expect(await log.attachment(hash)).toBeNull()
        expect(await log.attachment(other.hash)).not.toBeNull()
        expect(await log.putAttachment('text/csv', [bytes])).toMatchObject({ hash, kept: false })
        expect(await log.attachment(hash)).toBeNull()
      }
    })

    it('a file goes with what was forgotten of its sheet, whatever it is written in', async () => {
      for (const what of [orla(), forget('spring-batch-0#0'), forget('spring-read')]) {
        for (const order of ['before', 'after']) {
          const log = await emptyLog()
          const { hash } = await log.putAttachment('application/zip', [Uint8Array.of(1, 2, 3)])
          if (order === 'before') await log.append([what])
          await log.append(sheet('spring', author(), hash))
          if (order === 'after') await log.append([what])
          expect(await log.attachment(hash)).toBeNull()
          expect((await log.putAttachment('application/zip', [Uint8Array.of(1, 2, 3)])).kept).toBe(false)
        }
      }
    })

    it('the exact place of a field goes, with what corrections say of it; its other properties stay', async () => {
      const place = { latitude: 12.3456789, longitude: 23.4567891, polygon: [[1, 2]] }
      const weir = { ...field('Weir'), body: { field: 'Weir', crop: 'sweet cherry', ...place } }
      const mill = { ...field('Mill'), body: { field: 'Mill', ...place } }
      const moved = amendment('place-moved', { of: weir.id, column: 'latitude', from: 12.3456789, to: 12.34 })
      const grown = amendment('field-grown', { of: weir.id, column: 'hectares', from: 2, to: 3 })
      const gone = forgetPlace('Weir')
      for (const order of [
        [weir, mill, moved, grown, gone],
        [gone, moved, grown, mill, weir],
        [moved, gone, weir, grown, mill],
      ]) {
        const log = await emptyLog()
        for (const fact of order) await log.append([fact])
        expect((await log.factById(weir.id))?.body).toEqual({ field: 'Weir', crop: 'sweet cherry' })
        expect((await log.factById(mill.id))?.body).toEqual(mill.body)
        expect((await log.factById('place-moved'))?.body).toMatchObject({ from: null, to: null })
        expect((await log.factById('field-grown'))?.body).toMatchObject({ from: 2, to: 3 })
      }
    })
  })

  describe(`${name}: attachments`, () => {
    it.each([0, 1, partSize - 1, partSize, partSize + 1, 3 * partSize])('keeps a file of %i bytes', async (size) => {
      const log = await emptyLog()
      const bytes = Uint8Array.from({ length: size }, (_, k) => (k * 7 + (k >> 11)) & 255)
      const { kept, ...head } = await log.putAttachment('text/csv', pieces(bytes, 70_001))
      expect(kept).toBe(true)
      expect(head).toEqual({ hash: sha256Hex(bytes), media: 'text/csv', size })
      const held = await log.attachment(head.hash)
      expect(held).toMatchObject(head)
      const parts: number[] = []
      for await (const part of held?.parts() ?? []) parts.push(part.length)
      expect(parts.every((part) => part <= partSize)).toBe(true)
      expect(held === null ? null : (await bytesOf(held.parts())).equals(bytes)).toBe(true)
    })

    it('keeps the same bytes once, under the smaller media type', async () => {
      const log = await emptyLog()
      await log.putAttachment('text/plain', [Uint8Array.of(1, 2)])
      await log.putAttachment('text/csv', [Uint8Array.of(1), Uint8Array.of(2)])
      await log.putAttachment('text/x', [Uint8Array.of(1, 2)])
      const heads = []
      for await (const chunk of log.attachments()) heads.push(...chunk)
      expect(heads).toEqual([{ hash: sha256Hex(Uint8Array.of(1, 2)), media: 'text/csv', size: 2 }])
    })

    it('takes several streams and facts at once', async () => {
      const log = await emptyLog()
      const files = [1, 2, 3].map((k) => new Uint8Array(partSize + k).fill(k))
      const slowly = async function* (bytes: Uint8Array) {
        for (const piece of pieces(bytes, 200_000)) {
          await log.append([field(`meanwhile ${bytes.length} ${piece.byteOffset}`)])
          yield piece
        }
      }
      const heads = await Promise.all(files.map((bytes) => log.putAttachment('image/jpeg', slowly(bytes))))
      for (const [k, head] of heads.entries()) {
        expect(sha256Hex(await bytesOf((await log.attachment(head.hash))?.parts()))).toBe(sha256Hex(files[k] ?? ''))
      }
      expect(await log.factCount()).toBe(18)
    })

    it('keeps nothing of a stream that fails', async () => {
      const log = await emptyLog()
      const broken = async function* () {
        yield new Uint8Array(partSize + 5)
        throw new Error('the stick was pulled out')
      }
      await expect(log.putAttachment('text/csv', broken())).rejects.toThrow('pulled out')
      expect(await chunksOf(log.attachments())).toEqual([])
      expect(await log.attachment('0'.repeat(64))).toBeNull()
    })
  })

  describe(`${name}: caches and peers`, () => {
    it('keeps, replaces and forgets what was worked out', async () => {
      const log = await emptyLog()
      await log.keepDerived('snapshot', { digest: 'a', bytes: Uint8Array.of(1) })
      await log.keepDerived('snapshot', { digest: 'b', bytes: Uint8Array.of(2, 3) })
      expect(await log.derived('snapshot')).toEqual({ digest: 'b', bytes: Uint8Array.of(2, 3) })
      await log.append([field('Weir')])
      await log.forgetDerived()
      expect(await log.derived('snapshot')).toBeNull()
      expect(await log.factCount()).toBe(1)
    })

    it('keeps who it was exchanged with, and how far', async () => {
      const log = await emptyLog()
      const phone = { id: 'phone-1', name: 'the blue phone', key: 'k', sent: 0, received: 0 }
      await log.keepPeer(phone)
      await log.keepPeer({ ...phone, id: 'phone-0' })
      await log.keepPeer({ ...phone, sent: 12, received: 40 })
      expect(await log.peers()).toEqual([
        { ...phone, id: 'phone-0' },
        { ...phone, sent: 12, received: 40 },
      ])
    })
  })
}

async function chunksOf<T>(chunks: AsyncIterable<readonly T[]>): Promise<(readonly T[])[]> {
  const list: (readonly T[])[] = []
  for await (const chunk of chunks) list.push(chunk)
  return list
}

function* pieces(bytes: Uint8Array, size: number): Generator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size)
}
