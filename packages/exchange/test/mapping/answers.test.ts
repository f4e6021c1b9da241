import {
  type Asked,
  answerForm,
  isOpen,
  type Mapping,
  parseMapping,
  saidSoFar,
  withAnswer,
  withRole,
  words,
} from '@thrum/exchange'
import { describe, expect, it } from 'vitest'

const mapping: Mapping = {
  version: 1,
  shape: 'wide',
  columns: [
    { header: 'Field', as: 'field' },
    { header: 'Temp', as: 'temperature', unit: 'degF' },
    { header: 'Honey bees', as: 'tally', kind: 'honey bee', means: { lots: null } },
    { header: 'strip', as: 'factor' },
    { header: 'total', as: 'ignore' },
  ],
  constants: { unit: 'individuals' },
}
/** Every question that a table can raise, with a column it can be about. */
const asked: readonly Asked[] = Object.keys(words)
  .filter((id) => id.startsWith('exchange/ask/'))
  .map((id) => {
    const headers: { readonly [end: string]: string } = {
      unit: 'Temp',
      dash: 'Honey bees',
      blank: 'Honey bees',
      assigned: 'strip',
    }
    const end = id.slice('exchange/ask/'.length)
    const isOfFile = ['effort', 'effort-noted', 'area-noted', 'counting-unit', 'absent'].includes(end)
    return { id, header: isOfFile ? null : (headers[end] ?? 'total') }
  })

describe('what a table leaves open', () => {
  it.each(asked)('$id can be answered, and the mapping with each answer is one', (own) => {
    const form = answerForm(own, mapping)
    const answers = form?.is === 'words' ? form.words : form === null ? [] : [form.above + 1, form.most]
    expect(answers.length).toBeGreaterThan(1)
    for (const answer of answers) {
      const put = withAnswer(own, mapping, answer)
      expect(parseMapping(put)).toEqual(put)
      expect(saidSoFar(own, put)).toBe(answer)
    }
  })

  it('an answer changes nothing else, and can be taken back', () => {
    const dash: Asked = { id: 'exchange/ask/dash', header: 'Honey bees' }
    const none = withAnswer(dash, mapping, 'none-seen')
    expect(none.columns[2]).toMatchObject({ kind: 'honey bee', means: { lots: null, '-': 0, '–': 0 } })
    expect(withAnswer(dash, none, 'waits')).toEqual(mapping)
    const effort: Asked = { id: 'exchange/ask/effort', header: null }
    const unknown = withAnswer(effort, withAnswer(effort, mapping, 10), 'not recorded')
    expect(unknown).toEqual({ ...mapping, effort: 'not recorded' })
    expect(withAnswer(effort, unknown, 10)).toEqual({ ...mapping, constants: { unit: 'individuals', minutes: 10 } })
  })

  it('of a column that is left out only that is asked', () => {
    expect(isOpen({ id: 'exchange/ask/assigned', header: 'strip' }, mapping)).toBe(true)
    expect(isOpen({ id: 'exchange/ask/assigned', header: 'strip' }, withRole(mapping, 3, 'ignore'))).toBe(false)
    expect(isOpen({ id: 'exchange/ask/unknown', header: 'total' }, mapping)).toBe(true)
  })

  it('a column taken for something else loses what was said of it before', () => {
    expect(withRole(mapping, 1, 'note').columns[1]).toEqual({ header: 'Temp', as: 'note' })
  })
})
