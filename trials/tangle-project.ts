// A made design as a project: plain rows, brought the way a file brings them.

import { isoDate, type Snapshot } from '@thrum/model'
import { type CountRow, projectOfCounts } from '../packages/survey/test/project-of-counts.ts'
import type { MadeDesign } from './tangle-designs.ts'
import type { Watch } from './tangle-score.ts'
import type { Day } from './tangle-watches.ts'

export const asked = 'margin'
/** Fields lie 5 km apart, so that nobody shares insects. */
const spacing = 5 / 111.195

export const dateOf = ({ day, year }: Day): string => isoDate(Date.UTC(year, 0, 1) / 86_400_000 + day - 1)

function rowOf(watch: Watch, k: number): CountRow {
  return {
    field: watch.field,
    crop: watch.block,
    [asked]: watch.level === 0 ? 'mown' : 'standing',
    date: dateOf(watch),
    start: Math.round(60 * watch.hour - watch.minutes / 2),
    minutes: watch.minutes,
    stage: watch.stage,
    temperature: watch.temperature,
    wind: 2,
    rain: 'none',
    cloud: 3,
    observer: watch.observer,
    position: watch.position,
    season: String(watch.year),
    unit: 'individuals',
    zeros: 'typed',
    // How many there were is nothing to the audit.
    tallies: { bee: 3 + ((7 * k) % 9) },
  }
}

/** The snapshot of a made design; with controls and between, the level is a field's; before/after alone has none. */
export function snapshotOf(design: MadeDesign): Snapshot {
  const names = [...new Set(design.watches.map(({ field }) => field))]
  return projectOfCounts({
    fields: names.map((field, k) => ({ field, latitude: 40 + spacing * k, longitude: 5 })),
    counts: design.watches.map(rowOf),
  })
}
