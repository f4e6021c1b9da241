import { describe, expect, it } from 'vitest'
import { answerShape, countsShape, failureShape, wordsShape } from '../../src/api/index.ts'
import { serveDemonstration } from '../serving.ts'

describe('words', () => {
  it('hold everything the server can say, in each language, and in no other', async () => {
    const { get } = await serveDemonstration()
    const [en, es] = await Promise.all(
      ['en', 'es'].map(async (language) => wordsShape.parse((await get(`/api/words/${language}`)).json())),
    )
    expect(Object.keys(es ?? {}).toSorted()).toEqual(Object.keys(en ?? {}).toSorted())
    expect(es?.['server/door/token']).not.toBe(en?.['server/door/token'])
    const other = await get('/api/words/xx')
    expect([other.status, failureShape.parse(other.json()).code]).toEqual([400, 'server/request/misshapen'])
  })

  it('of a figure are of the language asked for; the machine form of an answer is of one', async () => {
    const { post } = await serveDemonstration()
    const strips = { kinds: ['bumble bee'], between: 'strip', worth: 2 }
    const asked = { question: 'what-differs', options: strips }
    const drawn = async (more: object) => (await post('/api/figure', { ...asked, look: 'light', format: 'svg', ...more })).text
    expect(await drawn({})).toContain('lang="en"')
    expect(await drawn({ language: 'es' })).toContain('lang="es"')
    const answer = answerShape.parse((await post('/api/ask', asked)).json()) as { readonly headline: { readonly text: string } }
    expect(await drawn({})).toContain(answer.headline.text.split(' ')[0])
  })

  it('of a declared column come as a sentence, and a kind as it is called', async () => {
    const { get } = await serveDemonstration()
    const { columns } = countsShape.parse((await get('/api/counts')).json())
    const titleOf = (name: string): unknown => columns.find((own) => own.name === name)?.title
    expect(titleOf('minutes')).toEqual({ id: 'server/column/minutes', values: {}, text: 'minutes watched' })
    expect(titleOf('bumble bee')).toBe('bumble bee')
  })
})
