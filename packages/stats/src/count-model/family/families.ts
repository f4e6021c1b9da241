import { betaBinomial } from './beta-binomial.ts'
import { binomial } from './binomial.ts'
import type { Family, FamilyName } from './family.ts'
import { nb1 } from './nb1.ts'
import { nb2 } from './nb2.ts'
import { poisson } from './poisson.ts'

export const families: { readonly [name in FamilyName]: Family } = {
  poisson,
  nb1,
  nb2,
  binomial,
  'beta-binomial': betaBinomial,
}
