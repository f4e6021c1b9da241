import { connect } from 'node:net'
import { networkInterfaces } from 'node:os'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { knock, type Serving, serveEmpty, untilAllEnd } from '../serving.ts'

const code = async (asked: Promise<{ readonly status: number; json<T>(): T }>): Promise<readonly [number, string]> => {
  const reply = await asked
  return [reply.status, reply.json<{ readonly code: string }>().code]
}

/** Whether anything listens at an address of this machine. */
const listens = (host: string, port: number): Promise<boolean> =>
  new Promise((resolve) => {
    const line = connect({ host, port })
    line.on('connect', () => {
      line.destroy()
      resolve(true)
    })
    line.on('error', () => resolve(false))
  })

// Nothing here gets through to the project: one server serves all.
let one: Serving
const { atEnd, end } = untilAllEnd()
beforeAll(async () => {
  one = await serveEmpty('My Vale', atEnd)
})
afterAll(end)

describe('the doors', () => {
  it('listens on loopback alone', async () => {
    const { port } = one
    expect(await listens('127.0.0.1', port)).toBe(true)
    const outer = Object.values(networkInterfaces())
      .flatMap((own) => own ?? [])
      .filter(({ internal, family }) => !internal && family === 'IPv4')
    for (const { address } of outer) expect(await listens(address, port), address).toBe(false)
    expect(await listens('127.0.0.2', port)).toBe(false)
  })

  it('answers under its own names only', async () => {
    const { port, key } = one
    const asked = (host: string) => knock(port, 'GET', '/api/project', { host, 'x-thrum-token': key })
    for (const host of [`127.0.0.1:${port}`, `localhost:${port}`]) expect((await asked(host)).status).toBe(200)
    for (const host of [
      'evil.example',
      `evil.example:${port}`,
      '127.0.0.1',
      'localhost',
      `127.0.0.1:${port + 1}`,
      `[::1]:${port}`,
    ])
      expect((await asked(host)).status, host).toBe(403)
    // The page itself and the ping are no exception.
    for (const path of ['/', '/ping', '/index.html'])
      expect((await knock(port, 'GET', path, { host: `evil.example:${port}` })).status, path).toBe(403)
  })

  it('a request with two hosts, or none, is refused', async () => {
    const { port, key } = one
    const raw = (head: string): Promise<string> =>
      new Promise((resolve, reject) => {
        const line = connect({ host: '127.0.0.1', port })
        let text = ''
        line.on('data', (part) => {
          text += String(part)
        })
        line.on('end', () => resolve(text.split('\r\n', 1)[0] ?? ''))
        line.on('error', reject)
        line.write(head)
      })
    const rest = `x-thrum-token: ${key}\r\nconnection: close\r\n\r\n`
    const own = `Host: 127.0.0.1:${port}\r\n`
    expect(await raw(`GET /api/project HTTP/1.1\r\n${own}Host: evil.example\r\n${rest}`)).toMatch(/ 40[03] /u)
    expect(await raw(`GET /api/project HTTP/1.1\r\n${rest}`)).toMatch(/ 40[03] /u)
    expect(await raw(`GET /api/project HTTP/1.0\r\n${rest}`)).toMatch(/ 40[03] /u)
    expect(await raw(`GET /api/project HTTP/1.1\r\n${own}${rest}`)).toMatch(/ 200 /u)
  })

  it('another page may neither write nor read', async () => {
    const { port, key, base } = one
    const asked = (method: string, headers: { readonly [name: string]: string }) =>
      code(
        knock(
          port,
          method,
          method === 'POST' ? '/api/ask' : '/api/project',
          { 'x-thrum-token': key, 'content-type': 'application/json', ...headers },
          method === 'POST' ? '{"question":"who-visits","options":{}}' : undefined,
        ),
      )
    const foreign = [403, 'server/door/origin']
    for (const origin of [
      'https://evil.example',
      'null',
      `http://127.0.0.1:${port + 1}`,
      `https://127.0.0.1:${port}`,
      `http://localhost:${port}`,
    ]) {
      expect(await asked('POST', { origin }), origin).toEqual(foreign)
      expect(await asked('GET', { origin }), origin).toEqual(foreign)
    }
    expect(await asked('POST', {})).toEqual(foreign)
    for (const site of ['cross-site', 'same-site']) {
      expect(await asked('GET', { 'sec-fetch-site': site })).toEqual(foreign)
      expect(await asked('POST', { 'sec-fetch-site': site, origin: base })).toEqual(foreign)
    }
    for (const site of ['same-origin', 'none'])
      expect((await knock(port, 'GET', '/api/project', { 'x-thrum-token': key, 'sec-fetch-site': site })).status).toBe(200)
  })

  it('the key of this run opens, and no other', async () => {
    const { port, key, base } = one
    const refused = [401, 'server/door/token']
    const other = await serveEmpty()
    for (const token of [undefined, '', 'wrong', other.key, key.slice(1), `${key}a`, key.toUpperCase()]) {
      const headers = { origin: base, ...(token === undefined ? {} : { 'x-thrum-token': token }) }
      expect(await code(knock(port, 'GET', '/api/project', headers)), token).toEqual(refused)
      expect(await code(knock(port, 'GET', '/api/openapi.json', headers)), token).toEqual(refused)
      expect(await code(knock(port, 'POST', '/api/stream', headers)), token).toEqual(refused)
      expect(await code(knock(port, 'GET', '/api/nothing', headers)), token).toEqual(refused)
    }
    // It is not taken from an address.
    expect(await code(knock(port, 'GET', `/api/project?token=${key}&key=${key}`, { origin: base }))).toEqual(refused)
    expect(key).toMatch(/^[\w-]{43}$/u)
  })

  it('reads no form, no multipart, no plain text', async () => {
    const { port, own } = one
    for (const [type, body] of [
      ['application/x-www-form-urlencoded', 'question=who-visits'],
      ['multipart/form-data; boundary=x', '--x\r\ncontent-disposition: form-data; name="a"\r\n\r\n1\r\n--x--\r\n'],
      ['text/plain', '{"question":"who-visits","options":{}}'],
      ['text/plain;charset=utf-8', '{}'],
      ['application/octet-stream', '{}'],
      ['application/xml', '<a/>'],
    ] as const) {
      for (const path of ['/api/ask', '/api/corrections', '/api/projects'])
        expect(await code(knock(port, 'POST', path, { ...own, 'content-type': type }, body)), `${path} ${type}`).toEqual([
          415,
          'server/request/media-type',
        ])
    }
    for (const type of ['text/plain', 'multipart/form-data; boundary=x', 'application/json'])
      expect((await knock(port, 'POST', '/api/tables?name=a.csv', { ...own, 'content-type': type }, '{}')).status, type).toBe(415)
  })

  it('no path climbs or hides a sign', async () => {
    const { port, own } = one
    for (const path of [
      '/../package.json',
      '/assets/../../package.json',
      '/%2e%2e/package.json',
      '/.%2E/package.json',
      '/..%2fpackage.json',
      '/%5c..%5cpackage.json',
      '/..\\package.json',
      '/a%00.html',
      '//evil.example/',
      '/./index.html',
      '/%zz',
      '/%',
      '/%c0%ae%c0%ae/package.json',
    ]) {
      expect([400, 404], path).toContain((await knock(port, 'GET', path, { accept: 'text/html' })).status)
      expect([400, 404], path).toContain((await knock(port, 'GET', `/api${path}`, own)).status)
    }
  })

  it('a body has a size, and is JSON', async () => {
    const { port, own } = one
    const json = { ...own, 'content-type': 'application/json' }
    const large = JSON.stringify({ question: 'who-visits', options: {}, more: 'x'.repeat(2_000_000) })
    expect(await code(knock(port, 'POST', '/api/ask', json, large))).toEqual([413, 'server/request/too-large'])
    for (const body of ['{', '', '{"__proto__":{"a":1}}'])
      expect(await code(knock(port, 'POST', '/api/ask', json, body)), body).toEqual([400, 'server/request/not-json'])
    expect(await code(knock(port, 'POST', '/api/ask', json, '{"question":1}'))).toEqual([400, 'server/request/misshapen'])
    expect(await code(knock(port, 'POST', '/api/ask', json, '{"question":"who-visits","options":{},"more":1}'))).toEqual([
      400,
      'server/request/misshapen',
    ])
    const told = { ...own, 'content-type': 'application/octet-stream', 'content-length': String(2 ** 29) }
    expect((await knockHead(port, '/api/tables?name=a.csv', told)).status).toBe(413)
  })

  it('every reply has the headers, a refusal too', async () => {
    const serving = one
    const { port, base } = serving
    const replies = [
      await serving.get('/api/project'),
      await serving.get('/api/nothing'),
      await knock(port, 'GET', '/api/project', { origin: base }),
      await knock(port, 'GET', '/', { host: 'evil.example' }),
      await knock(port, 'GET', '/'),
      await knock(port, 'GET', '/..%2f'),
    ]
    for (const { headers } of replies) {
      const policy = String(headers['content-security-policy'])
        .split(';')
        .map((part) => part.trim())
      expect(policy.sort()).toEqual(
        [
          "default-src 'none'",
          "script-src 'self'",
          "style-src 'self' 'unsafe-inline'",
          "img-src 'self' data: blob:",
          "font-src 'self'",
          "connect-src 'self'",
          "worker-src 'self'",
          "manifest-src 'self'",
          "base-uri 'none'",
          "form-action 'none'",
          "frame-ancestors 'none'",
        ].sort(),
      )
      expect(headers).toMatchObject({
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'no-referrer',
        'cross-origin-opener-policy': 'same-origin',
        'cross-origin-embedder-policy': 'require-corp',
        'cross-origin-resource-policy': 'same-origin',
      })
      expect(headers['strict-transport-security']).toBeUndefined()
      expect(headers['access-control-allow-origin']).toBeUndefined()
    }
    for (const { headers } of replies.slice(0, 3)) expect(headers['cache-control']).toBe('no-store')
  })

  it('whoever has no key learns that it is Thrum, and a hash', async () => {
    const told = (await knock(one.port, 'GET', '/ping')).json<{ readonly [key: string]: unknown }>()
    expect(told).toEqual({ thrum: true, project: expect.stringMatching(/^[0-9a-f]{64}$/u) })
  })
})

/** A request of which only the head is sent. */
async function knockHead(port: number, path: string, headers: { readonly [name: string]: string }) {
  const { request } = await import('node:http')
  return await new Promise<{ readonly status: number }>((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, method: 'POST', path, headers }, (reply) => {
      resolve({ status: reply.statusCode ?? 0 })
      reply.resume()
      asked.destroy()
    })
    asked.on('error', reject)
    asked.write('a')
  })
}
