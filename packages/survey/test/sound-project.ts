import { isoDate } from '@thrum/model'
import type { CountRow, Project } from './project-of-counts.ts'

const kilometre = 1 / 111.195 // degrees of latitude on a sphere of 6,371 km
export const northOf = (metres: number) => ({ latitude: 40 + (metres / 1000) * kilometre, longitude: 5 })

/** 2031-05-05, the first day of counting. */
const firstDay = 22_404
export const dayOf = (k: number): string => isoDate(firstDay + k)

export interface SoundPlan {
  /** Fields in each of the two levels. */
  readonly arm?: number
  readonly visits?: number
}

/**
 * Fields of two levels ("no" and "yes" of `strip`) as a careful person would watch them: all on the same days, in fair weather,
 * before and after noon in turn, by two observers in turn, ten minutes each, far apart. The audit has nothing to say of it.
 */
export function soundProject({ arm = 6, visits = 4 }: SoundPlan = {}): Project & { readonly counts: readonly CountRow[] } {
  const fields = Array.from({ length: 2 * arm }, (_, k) => k)
  return {
    fields: fields.map((k) => ({ field: `field ${k}`, crop: 'cherry', ...northOf(5000 * k) })),
    counts: fields.flatMap((k) =>
      Array.from({ length: visits }, (_, visit) => ({
        field: `field ${k}`,
        strip: k < arm ? 'no' : 'yes',
        date: dayOf(3 * visit),
        start: (k + visit) % 2 === 0 ? '10:55' : '14:55',
        observer: `observer ${1 + (((k >> 1) + visit) % 2)}`,
        minutes: 10,
        flowers: 200,
        area: 2,
        stage: 62 + visit,
        temperature: 20,
        wind: 2,
        rain: 'none',
        cloud: 2,
        unit: 'individuals',
        zeros: 'typed',
        tallies: { bee: 4 + ((k + 3 * visit) % 5), fly: 2 + ((2 * k + visit) % 4) },
      })),
    ),
  }
}

/** The project with some of its counts changed. */
export function changed<P extends Project>(project: P, change: (row: CountRow, k: number) => Partial<CountRow>): P {
  return { ...project, counts: project.counts.map((row, k) => ({ ...row, ...change(row, k) })) }
}
