import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { tanglesOf } from '../../src/index.ts'
import { ask } from '../asked.ts'
import { type CountRow, projectOfCounts } from '../project-of-counts.ts'
import { dayOf } from '../sound-project.ts'

/** Watches at both levels of every field, with readings that lean to one level, some of them missing. */
function leaningCounts(seed: string): readonly CountRow[] {
  const rng = createRng(seed)
  return Array.from({ length: 240 }, (_, k): CountRow => {
    const strip = k % 2
    const day = rng.below(6) + strip * rng.below(4)
    return {
      field: `field ${k % 5}`,
      strip: ['no', 'yes'][strip],
      date: dayOf(day),
      start: 600 + 30 * rng.below(5) + 30 * strip,
      minutes: [5, 10][rng.below(2)],
      stage: rng.below(12) === 0 ? undefined : 61 + Math.floor(day / 2),
      temperature: 18 + rng.below(8) + strip,
      observer: rng.below(20) === 0 ? undefined : `observer ${(rng.below(3) + strip) % 3}`,
      tallies: { bee: 3 },
    }
  })
}

describe('counts that read alike, taken together', () => {
  it.each(['a', 'b', 'c'])('identity: tangles are those of the counts one by one (%s)', (seed) => {
    const snapshot = projectOfCounts({ counts: leaningCounts(seed) })
    const { design, tangles } = ask(snapshot, { between: 'strip' })
    expect(design.structure).toBe('within-fields')
    const together = tanglesOf(snapshot, design, 0)
    expect(together.found.map(({ nuisances }) => nuisances.join())).toEqual(
      expect.arrayContaining(['date', 'stage', 'hour', 'temperature', 'observer', 'date,stage']),
    )
    expect(together.found.length).toBe(tangles.found.length)
    together.found.forEach((own, k) => {
      const { inflation, ...rest } = tangles.found[k] ?? { inflation: Number.NaN }
      expect(own).toEqual({ ...rest, inflation: own.inflation })
      // Sums of 240 terms in another order: some hundred units in the last place, made greater by the inflation itself.
      expect(Math.abs(own.inflation - inflation)).toBeLessThan(1e-10 * inflation)
    })
    expect(together).toMatchObject({ unchecked: tangles.unchecked, lost: tangles.lost })
    expect(Math.max(...together.found.map(({ inflation }) => inflation))).toBeGreaterThan(1.1)
  })

  it('identity: levels on days of their own are lost, and lie apart, either way', () => {
    const counts = leaningCounts('apart').map((row) => ({ ...row, date: dayOf(row.strip === 'yes' ? 9 : 1) }))
    const snapshot = projectOfCounts({ counts })
    const { design } = ask(snapshot, { between: 'strip', levels: ['no', 'yes'] })
    const within = { ...design, structure: 'within-fields' as const }
    for (const from of [0, Number.POSITIVE_INFINITY]) {
      const date = tanglesOf(snapshot, within, from).found.find(({ nuisances }) => nuisances.join() === 'date')
      expect(date).toMatchObject({ inflation: Number.POSITIVE_INFINITY, apart: true })
    }
  })
})
