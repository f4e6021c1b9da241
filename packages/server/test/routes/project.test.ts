import { readdirSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import {
  checkShape,
  correctionShape,
  countsShape,
  fieldsShape,
  historyShape,
  openedShape,
  projectShape,
  projectsShape,
  waitingShape,
  withdrawalShape,
} from '../../src/api/index.ts'
import { thrum } from '../cli.ts'
import { serveDemonstration, serveEmpty, serveNothing } from '../serving.ts'

describe('the project', () => {
  it('is told at a glance', async () => {
    const { get } = await serveDemonstration()
    const told = projectShape.parse((await get('/api/project')).json())
    expect(told).toMatchObject({
      file: 'vale.thrum',
      mode: 'write',
      because: null,
      counts: 160,
      seasons: ['2031', '2032'],
      demonstration: true,
      waiting: 0,
      contested: 0,
      unfinishedSheets: [],
      version: '0.1.0',
    })
    expect(told.fields).toHaveLength(8)
    expect(told.fields.every(({ counts }) => counts === 20)).toBe(true)
    expect(told.kinds.map(({ count }) => count)).toEqual(told.kinds.map(({ count }) => count).toSorted((a, b) => b - a))
    expect(told.kinds[0]).toMatchObject({ name: 'bumble bee', class: 'bumble-bee' })
    expect(told.factors.find(({ name }) => name === 'strip')).toEqual({
      name: 'strip',
      levels: ['no strip', 'strip'],
      measured: false,
    })
    expect(told.plan?.lastVisit).toMatch(/^2032-/u)
  })

  it('of one’s own is no demonstration, and says its title', async () => {
    const { get } = await serveEmpty('Öland <b>Vale</b>')
    expect(projectShape.parse((await get('/api/project')).json())).toMatchObject({
      title: 'Öland <b>Vale</b>',
      demonstration: false,
      counts: 0,
      kinds: [],
    })
  })

  it('its check is that of the terminal', async () => {
    const { get, folder } = await serveDemonstration()
    const told = checkShape.parse((await get('/api/check')).json())
    const printed = JSON.parse(thrum(folder, 'check', 'vale.thrum', '--json'))
    expect(told).toEqual(printed)
  })

  it('fields are described, and come on the map', async () => {
    const { get, post } = await serveEmpty()
    const fields = [
      { field: 'Weir', crop: 'cherry', hectares: 2.5, latitude: 47.5, longitude: -30 },
      { field: 'Ings', crop: 'sunflower' },
    ]
    expect(fieldsShape.parse((await post('/api/fields', fields)).json()).facts).toHaveLength(2)
    const told = projectShape.parse((await get('/api/project')).json())
    expect(told.crops.toSorted()).toEqual(['cherry', 'sunflower'])
    expect(told.fields.find(({ name }) => name === 'Weir')).toMatchObject({
      point: { latitude: 47.5 },
      hectares: 2.5,
      described: true,
    })
    for (const wrong of [
      [],
      [{ field: 'Weir' }],
      [{ field: 'Weir', crop: 'cherry', latitude: 91 }],
      [{ field: 'W', crop: 'c', more: 1 }],
    ])
      expect((await post('/api/fields', wrong)).status, JSON.stringify(wrong)).toBe(400)
  })
})

describe('projects of the folder', () => {
  it('the first one is made where there is none', async () => {
    const { get, post, folder } = await serveNothing()
    const refused = await get('/api/project')
    expect([refused.status, refused.json<{ code: string }>().code]).toEqual([409, 'server/no-project'])
    expect(projectsShape.parse((await get('/api/projects')).json())).toEqual({ files: [] })
    const made = openedShape.parse((await post('/api/projects', { how: 'empty', title: '../My "Vale"' })).json())
    expect(made).toEqual({ file: 'my-vale.thrum', title: '../My "Vale"' })
    expect((await get('/api/project')).json()).toMatchObject({ file: 'my-vale.thrum' })
    expect(readdirSync(folder)).toContain('my-vale.thrum')
  })

  it('nothing is written over; what is made is open; another can be opened by its name', async () => {
    const { get, post, folder } = await serveEmpty()
    for (const file of ['vale.thrum', 'vale-2.thrum'])
      expect((await post('/api/projects', { how: 'empty', title: 'Vale' })).json()).toMatchObject({ file })
    const demonstration = openedShape.parse((await post('/api/projects', { how: 'demonstration' })).json())
    expect(demonstration.file).toBe('ostrel-vale.thrum')
    expect((await get('/api/project')).json()).toMatchObject({ demonstration: true, counts: 160 })
    expect(projectsShape.parse((await get('/api/projects')).json()).files).toEqual([
      { file: 'ostrel-vale.thrum', open: true },
      { file: 'own.thrum', open: false },
      { file: 'vale-2.thrum', open: false },
      { file: 'vale.thrum', open: false },
    ])
    expect(openedShape.parse((await post('/api/open', { file: 'own.thrum' })).json())).toEqual({
      file: 'own.thrum',
      title: 'My Vale',
    })
    expect((await get('/api/project')).json()).toMatchObject({ file: 'own.thrum' })
    expect(readdirSync(folder).filter((name) => name.endsWith('.thrum'))).toHaveLength(4)
  })

  it('a name is no path, and a file that cannot be opened leaves the open one open', async () => {
    const { get, post, folder } = await serveEmpty()
    for (const file of ['../own.thrum', '/etc/passwd', 'a/own.thrum', 'own.thrum\u0000', 'own', ''])
      expect((await post('/api/open', { file })).status, file).toBe(400)
    expect((await post('/api/open', { file: 'never.thrum' })).json()).toMatchObject({ code: 'server/open/no-such-file' })
    symlinkSync('/etc/hostname', join(folder, 'other.thrum'))
    expect((await post('/api/open', { file: 'other.thrum' })).status).toBe(422)
    expect((await get('/api/project')).json()).toMatchObject({ file: 'own.thrum' })
  })
})

describe('counts', () => {
  it('come in pages, as columns', async () => {
    const { get } = await serveDemonstration()
    const page = countsShape.parse((await get('/api/counts?offset=150&limit=100')).json())
    expect([page.total, page.offset, page.rows.length, page.lines.length]).toEqual([160, 150, 10, 10])
    for (const { values, marks } of page.columns) expect([values.length, marks?.length ?? 10]).toEqual([10, 10])
    const only = countsShape.parse(
      (await get(`/api/counts?addresses=${encodeURIComponent(page.rows[3] ?? '')}&addresses=x`)).json(),
    )
    expect(only.rows).toEqual([page.rows[3]])
    const filtered = countsShape.parse(
      (
        await get(
          `/api/counts?filter=${encodeURIComponent('crop=sunflower')}&filter=${encodeURIComponent('honey bee>30')}&sort=-date`,
        )
      ).json(),
    )
    expect(filtered.total).toBeGreaterThan(0)
    expect(new Set(filtered.columns.find(({ name }) => name === 'crop')?.values)).toEqual(new Set(['sunflower']))
    expect((await get('/api/counts?filter=never%3D1')).json()).toMatchObject({ code: 'server/counts/no-such-column' })
    for (const wrong of ['limit=0', 'limit=100000', 'offset=-1', 'more=1'])
      expect((await get(`/api/counts?${wrong}`)).status, wrong).toBe(400)
  })

  it('are corrected, withdrawn, and told', async () => {
    const { get, post } = await serveDemonstration()
    const page = countsShape.parse((await get('/api/counts?limit=2')).json())
    const [row = '', second = ''] = page.rows
    const before = page.columns.find(({ name }) => name === 'honey bee')?.values[0]
    const corrected = correctionShape.parse(
      (await post('/api/corrections', { row, column: 'honey bee', value: '77', reason: 'read again' })).json(),
    )
    expect(corrected).toMatchObject({ from: String(before), to: '77', column: 'honey bee' })
    const withdrawn = withdrawalShape.parse((await post('/api/withdrawals', { row: second, reason: 'twice' })).json())
    expect(withdrawn.what).toBe('count')
    const after = countsShape.parse((await get('/api/counts?limit=2')).json())
    expect(after.total).toBe(159)
    expect(after.columns.find(({ name }) => name === 'honey bee')?.values[0]).toBe(77)
    const history = historyShape.parse((await get(`/api/history?row=${encodeURIComponent(row)}`)).json())
    expect(history.cells[0]).toMatchObject({ column: 'honey bee', stands: '77' })
    expect(history.sentences.map(({ text }) => text).join(' ')).toMatch(/walker corrected honey bee to 77 on .*"read again"/u)
    const gone = historyShape.parse((await get(`/api/history?row=${encodeURIComponent(second)}`)).json())
    expect([gone.stands, gone.sentences.at(-1)?.id]).toEqual([false, 'server/history/gone'])
    expect((await get('/api/history?row=never')).json()).toMatchObject({ code: 'host/row/unknown' })
    expect((await post('/api/corrections', { row, column: 'honey bee', value: '1', reason: ' ' })).json()).toMatchObject({
      code: 'host/correct/no-reason',
    })
    expect((await post('/api/settlings', { row, column: 'honey bee', value: '1' })).json()).toMatchObject({
      code: 'host/settle/not-waiting',
    })
    expect(waitingShape.parse((await get('/api/waiting')).json())).toEqual({ cells: [], rows: [], contested: [] })
  })
})

describe('the description', () => {
  it('is OpenAPI 3.1, names every route, and leads nowhere', async () => {
    const { get } = await serveEmpty()
    const reply = await get('/api/openapi.json')
    const told = reply.json<{ readonly openapi: string; readonly paths: { readonly [path: string]: object } }>()
    expect(told.openapi).toBe('3.1.0')
    expect(
      Object.entries(told.paths)
        .flatMap(([path, of]) => Object.keys(of).map((method) => `${method} ${path}`))
        .toSorted(),
    ).toEqual(
      [
        'get /api/project',
        'get /api/projects',
        'post /api/projects',
        'post /api/open',
        'post /api/fields',
        'get /api/check',
        'get /api/questions',
        'post /api/ask',
        'get /api/asked',
        'get /api/walk',
        'post /api/pins',
        'post /api/receipt',
        'post /api/figure',
        'get /api/counts',
        'get /api/history',
        'post /api/corrections',
        'post /api/withdrawals',
        'post /api/settlings',
        'get /api/waiting',
        'get /api/words/{language}',
        'post /api/tables',
        'post /api/tables/{table}/offer',
        'post /api/tables/{table}/accept',
        'delete /api/tables/{table}',
        'post /api/stream',
        'delete /api/jobs/{job}',
      ].toSorted(),
    )
    const refs = [...reply.text.matchAll(/"\$ref":"#\/([^"]+)"/gu)].map((match) => match[1] ?? '')
    for (const ref of refs) {
      const found = ref.split('/').reduce<unknown>((at, part) => (at as { [part: string]: unknown } | undefined)?.[part], told)
      expect(found, ref).toBeDefined()
    }
  })
})
