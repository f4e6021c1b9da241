import { request } from 'node:http'
import { join } from 'node:path'
import { openProject } from '@thrum/host'
import { fieldDescribed, makeFact } from '@thrum/model'
import { describe, expect, it, onTestFinished } from 'vitest'
import { offerShape, progressEvent, projectEvent } from '../../src/api/index.ts'
import { type Serving, serveDemonstration, serveEmpty } from '../serving.ts'
import { largeSheet } from '../sheets.ts'

interface Heard {
  readonly event: string
  readonly data: unknown
}

/** Listens as a page does. */
async function listen({ port, own }: Serving): Promise<{ next(event: string): Promise<unknown> }> {
  const heard: Heard[] = []
  let wake = Promise.withResolvers<void>()
  await new Promise<void>((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, method: 'POST', path: '/api/stream', headers: own }, (reply) => {
      expect([reply.statusCode, reply.headers['content-type']]).toEqual([200, 'text/event-stream; charset=utf-8'])
      let text = ''
      reply.setEncoding('utf8')
      reply.on('data', (part: string) => {
        text += part
        for (let end = text.indexOf('\n\n'); end >= 0; end = text.indexOf('\n\n')) {
          const { event = '', data = '' } = Object.fromEntries(
            text
              .slice(0, end)
              .split('\n')
              .map((line) => line.split(/: (.*)/su)),
          )
          heard.push({ event, data: JSON.parse(data) })
          text = text.slice(end + 2)
        }
        wake.resolve()
        wake = Promise.withResolvers()
      })
      reply.on('error', () => undefined)
      resolve()
    })
    asked.on('error', reject)
    asked.end()
    onTestFinished(() => void asked.destroy())
  })
  return {
    next: async (event) => {
      for (;;) {
        const at = heard.findIndex((own) => own.event === event)
        if (at >= 0) return heard.splice(at, 1)[0]?.data
        await wake.promise
      }
    },
  }
}

describe('the stream', () => {
  it('tells where facts came: from here, from another program, from another project', async () => {
    const serving = await serveEmpty()
    const { next } = await listen(serving)
    expect(await next('ping')).toEqual({})
    const first = projectEvent.parse(await next('project'))
    await serving.post('/api/fields', [{ field: 'Weir', crop: 'cherry' }])
    const second = projectEvent.parse(await next('project'))
    expect(second.digest).not.toBe(first.digest)

    const other = await openProject(join(serving.folder, 'own.thrum'), 'write')
    await other.log.append([makeFact(fieldDescribed, { field: 'Ings', crop: 'cherry' }, other.author)])
    await other.close()
    const third = projectEvent.parse(await next('project'))
    expect((await serving.get('/api/project')).json()).toMatchObject(third)

    await serving.post('/api/projects', { how: 'empty', title: 'Another' })
    expect(projectEvent.parse(await next('project')).digest).not.toBe(third.digest)
  })

  it('tells how far named work is', async () => {
    const serving = await serveEmpty()
    const { next } = await listen(serving)
    const offer = offerShape.parse((await serving.bring('large.csv', largeSheet(20_000))).json())
    const brought = serving.post(`/api/tables/${offer.table}/accept`, { mapping: offer.mapping, job: 'bring-1' })
    const told = progressEvent.parse(await next('progress'))
    expect(told).toMatchObject({ job: 'bring-1', unit: 'rows' })
    expect((await brought).status).toBe(200)
  })

  it('is for whoever has the key, as an answer to a request and never in an address', async () => {
    const { get, key } = await serveEmpty()
    expect((await get(`/api/stream?token=${key}`)).status).toBe(404)
  })
})

describe('stopping', () => {
  it('work that is named ends as cancelled, and what comes after it is answered', async () => {
    const { post, drop } = await serveDemonstration()
    expect((await drop('/api/jobs/never')).json()).toEqual({ cancelled: false })
    expect((await drop('/api/jobs/a%20b')).status).toBe(400)
    let stopped = 0
    // Whether it is still running when it is stopped is not ours to say: each try has another seed, and is work anew.
    for (let k = 0; k < 40 && stopped === 0; k++) {
      const job = `ask-${k}`
      const asked = post('/api/ask', { question: 'what-differs', options: { between: 'strip', worth: 2 }, seed: job, job })
      let cancelled = false
      let isOver = false
      void asked.then(() => {
        isOver = true
      })
      while (!cancelled && !isOver) cancelled = (await drop(`/api/jobs/${job}`)).json<{ cancelled: boolean }>().cancelled
      const reply = await asked
      if (reply.status === 200) continue
      stopped += 1
      expect([reply.status, reply.json<{ code: string }>().code]).toEqual([499, 'server/cancelled'])
    }
    expect(stopped).toBe(1)
    expect((await post('/api/ask', { question: 'who-visits', options: {} })).status).toBe(200)
  })

  it('an import that is stopped counts for nothing, and can be brought again', async () => {
    const { bring, post, drop, get } = await serveEmpty()
    const offer = offerShape.parse((await bring('large.csv', largeSheet(66_000))).json())
    const accept = () => post(`/api/tables/${offer.table}/accept`, { mapping: offer.mapping, job: 'bring' })
    const accepting = accept()
    while (!(await drop('/api/jobs/bring')).json<{ cancelled: boolean }>().cancelled);
    expect((await accepting).status).toBe(499)
    expect((await get('/api/project')).json()).toMatchObject({ counts: 0 })
    expect((await accept()).json()).toMatchObject({ state: 'accepted', counts: 66_000 })
  }, 120_000)
})
