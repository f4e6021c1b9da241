import { questions } from '@thrum/questions'
import { expect, it } from 'vitest'
import { demonstrationCases } from '../verify-receipts/cases.ts'
import { extracts } from '../verify-receipts/extracts.ts'

it('receipts of every question are put to R, and of no other', () => {
  const cases = [...demonstrationCases, ...extracts.flatMap((extract) => extract.cases)]
  expect(new Set(cases.map(({ question }) => question))).toEqual(new Set(questions.map(({ id }) => id)))
})
