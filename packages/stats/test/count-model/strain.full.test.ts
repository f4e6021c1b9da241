import { describe, expect, it } from 'vitest'
import { strainFamilies } from '../../../../trials/strain-families.ts'
import { strainOnce } from '../../../../trials/strain-round.ts'

/** A fixed share of `npm run trial:strain`, whose whole result stands in docs/trials/strain.json. */
const sets = 12
const verdicts = ['fitted', 'all-zero', 'all-trials', 'separated', 'not-identifiable', 'not-converged']

describe('counts in which a search is known to fail', () => {
  it.each(strainFamilies.map((family) => [family.name, family] as const))(
    'identity: %s: a fit that an independent sum and three other starts confirm, or a verdict by name',
    (name, family) => {
      for (let set = 1; set <= sets; set++) {
        const end = strainOnce(family, `share/${name}/${set}`)
        expect(verdicts).toContain(end.verdict)
        expect(end.wrong, `${name}, set ${set}`).toEqual([])
      }
    },
    120_000,
  )
})
