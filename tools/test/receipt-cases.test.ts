import { fitFamilies, questions } from '@thrum/questions'
import { expect, it } from 'vitest'
import { demonstrationCases } from '../verify-receipts/cases.ts'
import { extracts } from '../verify-receipts/extracts.ts'
import { tableFitCases } from '../verify-receipts/table-fits.ts'

it('receipts of every question are put to R, and of no other', () => {
  const cases = [...demonstrationCases, ...extracts.flatMap((extract) => extract.cases)]
  expect(new Set(cases.map(({ question }) => question))).toEqual(new Set(questions.map(({ id }) => id)))
})

it('receipts of fits of every family are put to R, with zeros of another origin, a slope, quadrature and nested groupings', () => {
  const words = tableFitCases.map((own) => own.words)
  expect(new Set(words.map(({ family }) => family))).toEqual(new Set(fitFamilies))
  const covers = [words.some((own) => own.zeros), words.some((own) => own.slope), words.some((own) => own.nodes)]
  expect([...covers, words.some((own) => own.random?.includes(' and '))]).toEqual([true, true, true, true])
})
