import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { knock, serveDemonstration, serveEmpty, testFolder } from '../serving.ts'

const page = { accept: 'text/html,*/*' }

describe('the desk', () => {
  it('is served as it was built, and its page for every address that looks like one', async () => {
    const desk = testFolder()
    mkdirSync(join(desk, 'assets'))
    writeFileSync(join(desk, 'index.html'), '<!doctype html><title>desk</title>')
    writeFileSync(join(desk, 'assets', 'main-1.js'), 'export {}')
    writeFileSync(join(desk, '.secret'), 'no')
    const { port } = await serveDemonstration(desk)
    const get = (path: string, headers: { readonly [name: string]: string } = page) => knock(port, 'GET', path, headers)
    for (const path of ['/', '/index.html', '/counts', '/asked/what-differs?x=1']) {
      const reply = await get(path)
      expect([reply.status, reply.text], path).toEqual([200, '<!doctype html><title>desk</title>'])
    }
    const script = await get('/assets/main-1.js')
    expect([script.status, script.text]).toEqual([200, 'export {}'])
    expect(String(script.headers['content-type'])).toMatch(/javascript/u)
    for (const path of ['/assets/never.js', '/.secret', '/api', '/api/never', '/package.json']) {
      const reply = await get(path)
      expect([401, 403, 404], path).toContain(reply.status)
      expect(reply.text, path).not.toContain('<title>')
    }
    expect((await get('/counts', { accept: 'application/json' })).status).toBe(404)
    expect((await knock(port, 'POST', '/counts', { ...page, origin: `http://127.0.0.1:${port}` })).status).toBe(404)
  })

  it('that was never built says how to build it', async () => {
    const folder = testFolder()
    const { port } = await serveDemonstration(join(folder, 'nothing'))
    for (const path of ['/', '/counts']) {
      const reply = await knock(port, 'GET', path, page)
      expect([reply.status, reply.headers['content-type']]).toEqual([200, 'text/html; charset=utf-8'])
      expect(reply.text).toContain('npm run build')
      expect(reply.text).not.toMatch(/<script|<style|<link|http/u)
    }
  })

  it('its key never stands in what is sent', async () => {
    const { port, key } = await serveEmpty()
    const reply = await knock(port, 'GET', '/', page)
    expect(JSON.stringify(reply.headers) + reply.text).not.toContain(key)
  })
})
