import {
  dayNumber,
  type Fact,
  fieldDescribed,
  hivesLookedFor,
  hivesPlaced,
  isoDate,
  kindDescribed,
  planMade,
  projectDescribed,
  treatmentSet,
} from '@thrum/model'
import { type Rng, sha256Hex } from '@thrum/model/ground'
import { shuffled } from '@thrum/stats'
import { crops, hivesMovedOn, lastVisit } from './calendar.ts'
import type { FactWriter } from './fact-writer.ts'
import { outlineOf, plantedFields } from './places.ts'
import { cherryHives, hiveMove, plantedKinds, primaryKind } from './planted-truths.ts'

export const demonstrationTitle = 'Ostrel Vale (demonstration; invented)'

/** Factor and levels of the flower strips, the reference first. */
export const stripFactor = 'strip'
export const stripLevels = ['no strip', 'strip'] as const
/** Day on which the strips were sown. */
const sownOn = '2030-09-16'

/** Two fields of each crop, by lot, get a flower strip. For each of `plantedFields` whether it is one of them. */
export function drawStrips(rng: Rng): readonly boolean[] {
  const withStrip = crops.flatMap((crop) =>
    shuffled(
      rng.fork(crop),
      plantedFields.flatMap((field, k) => (field.crop === crop ? [k] : [])),
    ).slice(0, 2),
  )
  return plantedFields.map((_, k) => withStrip.includes(k))
}

/** When hives stand near the fields: cherry's all the time, sunflower's from well before its bloom until after it. */
const hiveStays = {
  'sweet cherry': [{ ...cherryHives, from: '2031-03-01', to: '2032-10-31' }],
  sunflower: [
    { hives: hiveMove.hives, metres: hiveMove.metresBefore, from: '2031-06-25', to: '2031-08-12' },
    {
      hives: hiveMove.hives,
      metres: hiveMove.metresBefore,
      from: '2032-06-22',
      to: isoDate(dayNumber(hivesMovedOn) - 1),
    },
    { hives: hiveMove.hives, metres: hiveMove.metresAfter, from: hivesMovedOn, to: '2032-08-09' },
  ],
} as const

/** What people describe, set, place and plan: the single facts of the valley. */
export function plantedNouns(seed: string, write: FactWriter, strips: readonly boolean[]): readonly Fact[] {
  const project = sha256Hex(`ostrel vale/${seed}`)
  return [
    write.one(projectDescribed, { project, title: demonstrationTitle }, project),
    write.one(
      planMade,
      { lastVisit, primaryKind, note: 'Strips against no strip for bumble bees decides; all else is asked beside.' },
      project,
    ),
    ...plantedFields.map((field) =>
      write.one(
        fieldDescribed,
        {
          field: field.name,
          crop: field.crop,
          cultivar: field.cultivar,
          ...field.point,
          polygon: outlineOf(field),
          hectares: field.hectares,
        },
        field.name,
      ),
    ),
    ...plantedKinds.map(({ name, taxon, group }) =>
      write.one(kindDescribed, taxon === null ? { kind: name, group } : { kind: name, taxon, group }, name),
    ),
    ...plantedFields.map(({ name }, k) =>
      write.one(
        treatmentSet,
        { factor: stripFactor, level: stripLevels[strips[k] ? 1 : 0], field: name, from: sownOn, assigned: 'at random' },
        name,
      ),
    ),
    ...plantedFields.flatMap(({ name, crop }) =>
      hiveStays[crop].flatMap(({ hives, metres, from, to }) => [
        write.one(hivesPlaced, { hives, field: name, metres, from, to, owner: 'known' }, name),
        write.one(hivesLookedFor, { field: name, result: 'counted', from, to }, name),
      ]),
    ),
  ]
}
