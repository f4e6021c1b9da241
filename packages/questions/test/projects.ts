import type { BodyOf, Fact, planMade, Snapshot } from '@thrum/model'
import { type CountRow, factsOfCounts, type Project, projectOfCounts } from '../../survey/test/project-of-counts.ts'
import { soundProject } from '../../survey/test/sound-project.ts'

/** Scatter of fields on the log scale, the same pattern in each level and with mean nought: chosen, not drawn. */
const pattern = [-1, 1, -0.4, 0.4, -1.3, 1.3, 0.7, -0.7]

export interface MadeKind {
  /** How many times as many with a strip. */
  readonly ratio: number
  /** Insects in one watch without a strip, before scatter. */
  readonly mean?: number
  /** Scatter of the fields on the log scale. */
  readonly scatter?: number
}

export interface StripAsked {
  /** Fields in each level. */
  readonly arm?: number
  readonly kinds: { readonly [kind: string]: MadeKind }
  readonly assigned?: 'at random' | 'chosen' | 'not known'
  readonly plan?: BodyOf<typeof planMade>
  /** Changes each row of counts, after its tallies were made. */
  readonly change?: (row: CountRow, k: number) => Partial<CountRow>
}

const visits = 4

/**
 * Fields without and with a strip, watched as a careful person would, with counts made up so that the interval of the
 * contrast is known beforehand: the ratio is planted, the scatter is a pattern. Nothing is drawn at random.
 */
export function stripCounts({ arm = 6, kinds, assigned, plan, change }: StripAsked): Project {
  const sound = soundProject({ arm, visits })
  const counts = sound.counts.map((row, k): CountRow => {
    const field = Math.floor(k / visits)
    const treated = field >= arm
    const place = field % arm
    const tallies = Object.fromEntries(
      Object.entries(kinds).map(([kind, { ratio, mean = 20, scatter = 0.1 }], own) => [
        kind,
        Math.round(mean * (treated ? ratio : 1) * Math.exp(scatter * (pattern[(place + own) % pattern.length] ?? 0))),
      ]),
    )
    return { ...row, tallies }
  })
  const levels = sound.fields ?? []
  return {
    ...sound,
    counts: change === undefined ? counts : counts.map((row, k) => ({ ...row, ...change(row, k) })),
    ...(assigned === undefined
      ? {}
      : {
          treatments: levels.map(({ field }, k) => ({ factor: 'strip', level: k < arm ? 'no' : 'yes', field, assigned })),
        }),
    ...(plan === undefined ? {} : { plan }),
  }
}

export const stripProject = (asked: StripAsked): Snapshot => projectOfCounts(stripCounts(asked))
export const stripFacts = (asked: StripAsked): readonly Fact[] => factsOfCounts(stripCounts(asked))
