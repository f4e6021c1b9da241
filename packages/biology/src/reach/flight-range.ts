import type { KindClass } from '../kind/kind-class.ts'

/**
 * How far apart two fields must lie before their insects count as different ones.
 *
 * Small bees and hover flies 300 m, bumble bees 1 km, honey bees 3 km. The rule is common practice; the distances behind it
 * are published: mean worker distances of 272 to 551 m for five bumble bees, maximum ranges of 150 to 600 m for 16 solitary
 * bees, mean danced distances of 493 m in spring and 2,156 m in summer for honey bees.
 *
 * @source Redhead J.W. et al. (2016) Ecol. Appl. 26, 726-739; Gathmann A., Tscharntke T. (2002) J. Anim. Ecol. 71, 757-764;
 *   Couvillon M.J., Schuerch R., Ratnieks F.L.W. (2014) PLoS ONE 9, e93495.
 */
const warningDistances: { readonly [kind in KindClass]: number } = {
  'honey-bee': 3000,
  'bumble-bee': 1000,
  'solitary-bee': 300,
  'hover-fly': 300,
  // Common practice, no source: no distance is at hand for these, so they take the shortest rule.
  butterfly: 300,
  beetle: 300,
  other: 300,
}

/** Below this, two fields are never independent, whatever the kind [m]. Common practice, no source. */
export const refusalDistance = 250

/** Whether whole fields this far apart may be taken as independent for a kind. */
export type Independence = 'independent' | 'within-range' | 'refused'

/** Fields nearer than this may share insects of the kind [m]. */
export function warningDistance(kind: KindClass): number {
  return warningDistances[kind]
}

/**
 * Whether two fields may share their insects.
 *
 * @param kind class of insect; take the furthest flier where a kind may hold several
 * @param distance edge to edge, 0 or more [m]
 * @returns `refused` below 250 m, `within-range` (warn) below the kind's warning distance, else `independent`
 */
export function independenceOf(kind: KindClass, distance: number): Independence {
  if (distance < refusalDistance) return 'refused'
  return distance < warningDistance(kind) ? 'within-range' : 'independent'
}
