import { copyFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Answer } from '@thrum/model'
import { drawAnswer } from '@thrum/report'
import { unzipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type AskedTold, answerShape, askedShape, failureShape, pinnedShape, questionsShape } from '../../src/api/index.ts'
import { say } from '../../src/words/speakers.ts'
import { thrum } from '../cli.ts'
import { type Serving, serveDemonstration, untilAllEnd } from '../serving.ts'

const strips = { between: 'strip', kinds: 'bumble bee', worth: 2 }

// What is only looked at is looked at in one project.
let one: Serving
const { atEnd, end } = untilAllEnd()
beforeAll(async () => {
  one = await serveDemonstration(undefined, atEnd)
})
afterAll(end)

describe('asking', () => {
  it('gives what the terminal prints with --json, to the letter', async () => {
    const serving = await serveDemonstration()
    copyFileSync(join(serving.folder, 'vale.thrum'), join(serving.folder, 'copy.thrum'))
    for (const [question, options, words] of [
      ['who-visits', {}, []],
      ['what-differs', strips, ['--between', 'strip', '--kinds', 'bumble bee', '--worth', '2']],
      ['what-differs', { ...strips, worth: '1.5' }, ['--between', 'strip', '--kinds', 'bumble bee', '--worth', '1.5']],
      ['is-design-sound', { between: 'daypart', crop: ['sunflower'] }, ['--between', 'daypart', '--crop', 'sunflower']],
    ] as const) {
      const reply = await serving.post('/api/ask', { question, options })
      expect(reply.status).toBe(200)
      expect(reply.headers['content-type']).toBe('application/json; charset=utf-8')
      expect(reply.text).toBe(thrum(serving.folder, 'ask', question, ...words, '--in', 'copy.thrum', '--json'))
      answerShape.parse(reply.json())
    }
  }, 180_000)

  it('keeps an answer as long as it is the answer', async () => {
    const { post } = await serveDemonstration()
    const asked = async (options: object, seed?: string) => {
      const reply = await post('/api/ask', { question: 'what-differs', options, ...(seed === undefined ? {} : { seed }) })
      return [reply.headers['x-thrum-kept'], reply.text] as const
    }
    const first = await asked(strips)
    expect(first[0]).toBe('no')
    expect(await asked(strips)).toEqual(['yes', first[1]])
    expect((await asked(strips, 'another seed'))[0]).toBe('no')
    // S changed after looking has to be written down and said, however often it was asked before.
    expect((await asked({ ...strips, worth: 3 }))[0]).toBe('no')
    expect((await asked(strips))[0]).toBe('no')
    expect((await post('/api/fields', [{ field: 'Somewhere', crop: 'cherry' }])).status).toBe(200)
    expect((await asked(strips))[0]).toBe('no')
  })

  it('tells the questions with what this project offers', async () => {
    const { get } = one
    const told = questionsShape.parse((await get('/api/questions')).json())
    const differs = told.find(({ id }) => id === 'what-differs')
    const offered = (name: string) => differs?.options.find((own) => own.name === name)
    expect(told.map(({ id }) => id)).toEqual(['who-visits', 'what-differs', 'is-design-sound'])
    expect(offered('kinds')?.offered).toContain('all kinds')
    expect(offered('between')?.offered).toEqual(expect.arrayContaining(['strip', 'season', 'stage']))
    expect(offered('where')?.offered).toContain('crop=sunflower')
    expect(offered('worth')).toMatchObject({ type: 'number', above: 1, choices: null })
    expect(offered('worth')?.explained.text).toMatch(/\S/u)
    expect(differs?.options.map(({ name }) => name)).not.toContain('looks')
  })

  it('offers only what can be asked: every factor, by levels or by step', async () => {
    const { get, post } = one
    const { factors } = (await get('/api/project')).json<{
      readonly factors: readonly { readonly name: string; readonly levels: readonly string[]; readonly measured: boolean }[]
    }>()
    for (const { name, measured } of factors) {
      const options = { between: name, ...(measured ? { step: 2 } : {}) }
      const { code } = (await post('/api/ask', { question: 'is-design-sound', options })).json<{ readonly code?: string }>()
      expect(['survey/factor/unknown', 'survey/factor/not-measured'], name).not.toContain(code)
    }
    expect(factors.filter(({ measured }) => measured).length).toBeGreaterThan(0)
  })

  it('a failure has its code, values, text and remedy', async () => {
    const { post } = one
    for (const [body, status, code] of [
      [{ question: 'never', options: {} }, 404, 'host/no-such-question'],
      [{ question: 'who-visits', options: { never: '1' } }, 400, 'model/options/unknown'],
      [{ question: 'what-differs', options: { between: 'strip' } }, 422, /^questions\//u],
      [{ question: 'who-visits', options: { kinds: 'wasp' } }, 422, 'survey/kind/unknown'],
    ] as const) {
      const reply = await post('/api/ask', body)
      const failure = failureShape.parse(reply.json())
      expect(Object.keys(reply.json<object>())).toEqual(['code', 'values', 'text', 'remedy'])
      expect([reply.status, failure.code]).toEqual([status, typeof code === 'string' ? code : expect.stringMatching(code)])
      expect([failure.text, failure.remedy].every((text) => /\S/u.test(text))).toBe(true)
    }
  })

  it('remembers what was asked, pins it, and says where facts came since', async () => {
    const { get, post } = await serveDemonstration()
    const asked = async (): Promise<AskedTold> => askedShape.parse((await get('/api/asked')).json())
    expect(await asked()).toEqual([])
    await post('/api/ask', { question: 'what-differs', options: strips })
    await post('/api/ask', { question: 'is-design-sound', options: { between: 'daypart' } })
    const pinned = pinnedShape.parse(
      (await post('/api/pins', { question: 'what-differs', options: strips, pinned: true })).json(),
    )
    expect(pinned.pinned).toBe(true)
    const [latest] = (await asked()).filter(({ question }) => question === 'what-differs')
    expect(latest).toMatchObject({ asked: pinned.asked, looks: 1, worth: 2, pinned: true, stale: false, lastVerdict: 'shown' })
    expect(latest?.options).toEqual({ between: 'strip', kinds: ['bumble bee'], worth: 2 })
    expect(latest?.lastAt).toMatch(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/u)
    await post('/api/fields', [{ field: 'Somewhere', crop: 'cherry', hectares: 2, latitude: 47, longitude: -30 }])
    expect((await asked()).find(({ question }) => question === 'what-differs')?.stale).toBe(true)
    await post('/api/pins', { question: 'what-differs', options: strips, pinned: false })
    expect((await asked()).some((own) => own.pinned)).toBe(false)
  })

  it('gives the files of the receipt, the same bytes each time', async () => {
    const serving = await serveDemonstration()
    const { post, folder } = serving
    copyFileSync(join(folder, 'vale.thrum'), join(folder, 'copy.thrum'))
    const reply = await post('/api/receipt', { question: 'who-visits', options: {} })
    expect([reply.status, reply.headers['content-type']]).toEqual([200, 'application/zip'])
    const files = unzipSync(reply.bytes)
    expect(Object.keys(files).sort()).toEqual(['answer.json', 'counts.csv', 'receipt.R', 'shares.csv'])
    expect(Buffer.from(files['answer.json'] ?? []).toString()).toBe(
      thrum(folder, 'ask', 'who-visits', '--in', 'copy.thrum', '--json'),
    )
    expect((await post('/api/receipt', { question: 'who-visits', options: {} })).bytes).toEqual(reply.bytes)
  })

  it('draws an answer as the terminal draws it, whole or one figure, in both formats', async () => {
    const { post } = one
    const ask = { question: 'what-differs', options: strips }
    const draw = (more: object) => post('/api/figure', { ...ask, look: 'light', format: 'svg', ...more })
    const answer = (await post('/api/ask', ask)).json<Answer>()
    const whole = await draw({})
    expect(whole.headers['content-type']).toBe('image/svg+xml; charset=utf-8')
    expect(whole.text).toBe(drawAnswer(answer, { say, theme: 'light', width: 1280 }).svg)
    expect((await draw({ look: 'dark' })).text).not.toBe(whole.text)
    expect((await draw({ index: 0, width: 400 })).text).toMatch(/^<svg [^>]*width="400"/u)
    const png = await draw({ format: 'png', index: 0, width: 300 })
    expect([png.headers['content-type'], png.bytes.readUInt32BE(16)]).toEqual(['image/png', 600])
    const none = await draw({ index: 99 })
    expect([none.status, none.json<{ code: string }>().code]).toEqual([422, 'server/figure/none'])
  })
})
