import { describe, expect, it } from 'vitest'
import { poissonInterval } from '../../src/count/poisson-interval.ts'
import { expectRelative } from '../near.ts'
import { cell, referenceTable } from '../reference-table.ts'

describe('poissonInterval', () => {
  it('oracle: 0 to 28,010 at four levels (R poisson.test)', () => {
    for (const row of referenceTable('classical-tests/poisson-interval')) {
      const got = poissonInterval(cell(row, 'count'), cell(row, 'level'))
      if (row.count === 0) expect(got.lower).toBe(0)
      else expectRelative(got.lower, cell(row, 'lower'), 1e-11, JSON.stringify(row))
      expectRelative(got.upper, cell(row, 'upper'), 1e-11, JSON.stringify(row))
    }
  })
})
