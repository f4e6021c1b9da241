import { readdirSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { describe, expect, it } from 'vitest'
import { broughtShape, countsShape, type OfferTold, offerShape, projectShape, waitingShape } from '../../src/api/index.ts'
import { knock, serveEmpty } from '../serving.ts'
import { hugeNote, markup, messySheet, plainSheet, turned } from '../sheets.ts'

const offerOf = (reply: { readonly text: string }): OfferTold => offerShape.parse(JSON.parse(reply.text))
const folders = (): readonly string[] => readdirSync(tmpdir()).filter((name) => name.startsWith('thrum-tables-'))

describe('bringing a table', () => {
  it('is offered with reasons and what its rows become, accepted, and known from then on', async () => {
    const { bring, post, get } = await serveEmpty()
    const offer = offerOf(await bring('counts.csv', plainSheet()))
    expect(offer).toMatchObject({ file: 'counts.csv', state: 'new', refusal: null, counts: 32, tallies: 64, mended: null })
    expect(offer.rows).toEqual({ read: 32, accepted: 32, waiting: 0, refused: 0 })
    expect(offer.columns[0]).toEqual({
      header: 'field',
      samples: ['Field 1', 'Field 2', 'Field 3', 'Field 4', 'Field 5', 'Field 6'],
    })
    expect(offer.reasons.find(({ header }) => header === 'honey bee')?.because.text).toMatch(/\S/u)
    expect(offer.preview).toHaveLength(25)
    expect(offer.preview[0]).toMatchObject({ line: 2, state: 'accepted', because: [] })
    expect(offer.preview[0]?.cells[0]).toEqual({ header: 'field', written: 'Field 1', as: 'field' })
    expect(offer.preview[0]?.becomes).toEqual(
      expect.arrayContaining([
        { column: 'field', value: 'Field 1', isTally: false },
        { column: 'date', value: '2031-05-10', isTally: false },
        { column: 'start', value: '09:15', isTally: false },
        { column: 'honey bee', value: '3', isTally: true },
      ]),
    )
    expect((await get('/api/project')).json()).toMatchObject({ counts: 0 })

    const brought = await post(`/api/tables/${offer.table}/accept`, { mapping: offer.mapping })
    expect(broughtShape.parse(brought.json())).toMatchObject({ state: 'accepted', counts: 32, tallies: 64, kept: true })
    expect(projectShape.parse((await get('/api/project')).json())).toMatchObject({ counts: 32, tallies: 64 })
    expect((await post(`/api/tables/${offer.table}/accept`, { mapping: offer.mapping })).json()).toMatchObject({
      code: 'server/table/gone',
    })

    const again = offerOf(await bring('counts.csv', plainSheet()))
    expect(again.state).toBe('known')
    const known = await post(`/api/tables/${again.table}/accept`, { mapping: again.mapping })
    expect(broughtShape.parse(known.json())).toMatchObject({ state: 'known', counts: 0 })
  })

  it('with hostile names, cells that wait and a cell of a megabyte: texts stay texts, and what is shown is short', async () => {
    const { bring, post, get } = await serveEmpty()
    const reply = await bring(`${markup}\u202e.csv`, messySheet())
    const offer = offerOf(reply)
    expect(offer.file).toBe(`${markup}.csv`)
    expect(reply.headers['content-type']).toBe('application/json; charset=utf-8')
    expect(reply.bytes.length).toBeLessThan(60_000)
    expect(reply.text).not.toContain(hugeNote.slice(0, 1000))
    // Nobody writes a cell of a megabyte: its row is refused, and kept as it was written.
    expect(offer.rows).toMatchObject({ read: 5, refused: 1 })
    expect(offer.preview.find(({ line }) => line === 4)?.state).toBe('refused')
    expect(offer.rows.waiting).toBeGreaterThan(0)
    const waits = offer.preview.find(({ line }) => line === 5)
    expect(waits?.state).toBe('waiting')
    expect(waits?.because[0]?.text).toMatch(/\S/u)
    // A mark that turns the direction of writing is shown as what it is, or not at all.
    for (const { text } of offer.sentences) expect(text).not.toMatch(/[\u202a-\u202e]/u)

    const mapping = {
      ...offer.mapping,
      columns: (offer.mapping.columns as { header: string }[]).map((own) =>
        own.header === markup ? { ...own, as: 'tally', kind: markup } : own,
      ),
    }
    const edited = offerOf(await post(`/api/tables/${offer.table}/offer`, { mapping }))
    expect(edited).toMatchObject({ table: offer.table, state: 'new' })
    expect(edited.kinds.map(({ kind }) => kind)).toContain(markup)
    const brought = await post(`/api/tables/${offer.table}/accept`, { mapping })
    expect(broughtShape.parse(brought.json())).toMatchObject({ state: 'accepted', counts: 4 })

    const project = projectShape.parse((await get('/api/project')).json())
    expect(project.fields.map(({ name }) => name)).toContain(markup)
    expect(project.fields.map(({ name }) => name).join()).not.toContain('\u202e')
    expect(project.waiting).toBeGreaterThan(0)
    const page = countsShape.parse((await get(`/api/counts?filter=${encodeURIComponent('honey bee=waiting')}`)).json())
    expect(page.total).toBeGreaterThan(0)
    expect(turned).toContain('\u202e')

    const waiting = waitingShape.parse((await get('/api/waiting')).json())
    const [first] = waiting.cells
    expect(waiting.cells).toHaveLength(project.waiting)
    const settled = await post('/api/settlings', { row: first?.row, column: first?.column, value: '12' })
    expect(settled.status).toBe(200)
    expect(projectShape.parse((await get('/api/project')).json()).waiting).toBe(project.waiting - 1)
  })

  it('a mended file is matched: what differs is told, and becomes corrections', async () => {
    const { bring, post, get } = await serveEmpty()
    const first = offerOf(await bring('counts.csv', plainSheet()))
    await post(`/api/tables/${first.table}/accept`, { mapping: first.mapping })
    const lines = plainSheet().split('\n')
    const mended = [
      lines[0],
      lines[1]?.replace(',10,3,', ',10,5,'),
      ...lines.slice(2, -2),
      'Field 9,2031-06-01,9:15,walker 1,yes,10,4,1',
      '',
    ].join('\n')
    const offer = offerOf(await bring('counts.csv', mended))
    expect(offer.state).toBe('mended')
    expect(offer.mended).toMatchObject({ file: 'counts.csv', equal: 30, added: 1, gone: [{ row: 'counts.csv:33' }] })
    expect(offer.mended?.changed).toMatchObject([{ column: 'honey bee', from: '3', to: '5' }])
    const brought = await post(`/api/tables/${offer.table}/accept`, {
      mapping: offer.mapping,
      options: { withdrawMissing: true },
    })
    expect(broughtShape.parse(brought.json())).toMatchObject({ state: 'mended', corrections: 1, counts: 1, withdrawn: 1 })
    expect((await get('/api/project')).json()).toMatchObject({ counts: 32 })
    const separate = offerOf(await bring('counts.csv', `${mended}Field 10,2031-06-02,9:15,walker 1,yes,10,4,1\n`))
    const own = offerOf(
      await post(`/api/tables/${separate.table}/offer`, { mapping: separate.mapping, options: { separate: true } }),
    )
    expect([separate.state, own.state]).toEqual(['mended', 'new'])
  })

  it('what cannot be read under its mapping says why, and can be mended in place', async () => {
    const { bring, post } = await serveEmpty()
    const offer = offerOf(await bring('bare.csv', 'field,date,honey bee\nWeir,2031-05-10,3\nIngs,2031-05-11,4\n'))
    expect([offer.state, offer.refusal?.code]).toEqual(['refused', expect.stringMatching(/^exchange\//u)])
    expect(offer.refusal?.remedy).toMatch(/\S/u)
    const mapping = { ...offer.mapping, constants: { minutes: 10 } }
    expect(offerOf(await post(`/api/tables/${offer.table}/offer`, { mapping }))).toMatchObject({
      state: 'new',
      refusal: null,
      counts: 2,
    })
    expect((await post(`/api/tables/${offer.table}/accept`, { mapping: offer.mapping })).json()).toMatchObject({
      code: offer.refusal?.code,
    })
    expect((await post(`/api/tables/${offer.table}/offer`, { mapping: { version: 1 } })).json()).toMatchObject({
      code: 'exchange/mapping/misshapen',
    })
  })

  it('what is no table, or has no name, leaves nothing behind; a dropped one is gone', async () => {
    const before = folders()
    const { bring, drop, post, port, own, close } = await serveEmpty()
    const folder = folders().find((name) => !before.includes(name))
    const held = (): number => readdirSync(`${tmpdir()}/${folder}`).length
    for (const bytes of ['', Buffer.from('SQLite format 3\0'), Buffer.alloc(5000)])
      expect((await bring('a.csv', bytes)).status).toBe(422)
    for (const name of ['', '..', 'a/b.csv', 'C:\\b.csv', 'a\u0000.csv'])
      expect((await bring(name, plainSheet())).status, name).toBe(400)
    expect((await knock(port, 'POST', '/api/tables', { ...own, 'content-type': 'application/octet-stream' }, 'a')).status).toBe(
      400,
    )
    expect(held()).toBe(0)
    const { table, mapping } = offerOf(await bring('counts.csv', plainSheet()))
    expect(held()).toBe(1)
    expect((await drop(`/api/tables/${table}`)).json()).toEqual({ dropped: true })
    expect(held()).toBe(0)
    for (const reply of [await drop(`/api/tables/${table}`), await post(`/api/tables/${table}/offer`, { mapping })])
      expect([reply.status, reply.json<{ code: string }>().code]).toEqual([404, 'server/table/gone'])
    await bring('counts.csv', plainSheet())
    await close()
    expect(folders()).not.toContain(folder)
  })
})
