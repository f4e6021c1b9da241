import { IntlMessageFormat } from 'intl-messageformat'
import { expect, it } from 'vitest'
import { nuisanceNames, surveyWords } from '../src/index.ts'

it.each(Object.keys(surveyWords))('%s is a text that can be read', (id) => {
  expect(() => new IntlMessageFormat(surveyWords[id] ?? '', 'en')).not.toThrow()
})

it('every nuisance has a name, readings and cures', () => {
  for (const name of nuisanceNames) {
    for (const id of ['nuisance', 'reading', 'reading/change', 'cure/between', 'cure/within'])
      expect(surveyWords[`survey/${id}/${name}`], `${id} ${name}`).toBeDefined()
  }
})

it('every refusal before a question starts says what to do', () => {
  const refusals = Object.keys(surveyWords).filter((id) => surveyWords[`${id}/remedy`] !== undefined)
  expect(refusals.length).toBeGreaterThanOrEqual(8)
})
