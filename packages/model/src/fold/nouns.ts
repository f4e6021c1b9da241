import type { Fact } from '../facts/fact.ts'
import {
  type Assignment,
  factorDescribed,
  fieldDescribed,
  hivesLookedFor,
  hivesPlaced,
  kindDescribed,
  planMade,
  projectDescribed,
  treatmentSet,
} from '../facts/kinds.ts'
import type { Field, Kind, Point, Snapshot } from '../snapshot/snapshot.ts'
import { dayNumber } from './day.ts'
import type { ReadLog } from './read-log.ts'

/** Changes the body of a single fact by the corrections that name it. */
export type Corrected = <B>(fact: Fact, body: B) => B

const pointOf = (body: { latitude?: number | undefined; longitude?: number | undefined }): Point | null =>
  body.latitude === undefined || body.longitude === undefined ? null : { latitude: body.latitude, longitude: body.longitude }
const dayOf = (date: string | undefined): number | null => (date === undefined ? null : dayNumber(date))

function fieldsOf(log: ReadLog, corrected: Corrected, mentioned: Iterable<string>): readonly Field[] {
  const fields = new Map<string, Field>()
  for (const { fact, body: written } of log.of(fieldDescribed)) {
    const body = corrected(fact, written)
    const known = fields.get(body.field)
    fields.set(body.field, {
      name: body.field,
      crop: body.crop ?? known?.crop ?? null,
      cultivar: body.cultivar ?? known?.cultivar ?? null,
      point: pointOf(body) ?? known?.point ?? null,
      polygon: body.polygon ?? known?.polygon ?? null,
      hectares: body.hectares ?? known?.hectares ?? null,
      address: fact.id,
    })
  }
  for (const name of mentioned) {
    if (!fields.has(name)) {
      fields.set(name, { name, crop: null, cultivar: null, point: null, polygon: null, hectares: null, address: null })
    }
  }
  return [...fields.values()]
}

function kindsOf(log: ReadLog, corrected: Corrected, mentioned: Iterable<string>): readonly Kind[] {
  const kinds = new Map<string, Kind>()
  for (const { fact, body: written } of log.of(kindDescribed)) {
    const body = corrected(fact, written)
    const known = kinds.get(body.kind)
    kinds.set(body.kind, {
      name: body.kind,
      taxon: body.taxon ?? known?.taxon ?? null,
      group: body.group ?? known?.group ?? null,
      address: fact.id,
    })
  }
  for (const name of mentioned) if (!kinds.has(name)) kinds.set(name, { name, taxon: null, group: null, address: null })
  return [...kinds.values()]
}

/** Everything but the rows of tables: what people described, placed, set and planned. */
export function foldNouns(
  log: ReadLog,
  corrected: Corrected,
  mentioned: { readonly fields: Iterable<string>; readonly kinds: Iterable<string> },
): Pick<Snapshot, 'project' | 'fields' | 'kinds' | 'treatments' | 'assigned' | 'hives' | 'hivesLookedFor' | 'plan'> {
  const project = log.of(projectDescribed).at(-1)
  const plan = log.of(planMade).at(-1)
  const planBody = plan === undefined ? null : corrected(plan.fact, plan.body)
  const assigned = new Map<string, Assignment>()
  const treatments = log.of(treatmentSet).map(({ fact, body: written }) => {
    const body = corrected(fact, written)
    assigned.set(body.factor, body.assigned)
    return {
      factor: body.factor,
      level: body.level,
      field: body.field ?? null,
      plot: body.plot ?? null,
      from: dayOf(body.from),
      to: dayOf(body.to),
      assigned: body.assigned,
      address: fact.id,
    }
  })
  for (const { factor, assigned: how } of treatments) if (how !== assigned.get(factor)) assigned.set(factor, 'not known')
  for (const { fact, body: written } of log.of(factorDescribed)) {
    const body = corrected(fact, written)
    assigned.set(body.factor, body.assigned)
  }
  return {
    project: project === undefined ? null : { id: project.body.project, title: corrected(project.fact, project.body).title },
    fields: fieldsOf(log, corrected, mentioned.fields),
    kinds: kindsOf(log, corrected, mentioned.kinds),
    treatments,
    assigned,
    hives: log.of(hivesPlaced).map(({ fact, body: written }) => {
      const body = corrected(fact, written)
      return {
        hives: body.hives,
        point: pointOf(body),
        field: body.field ?? null,
        metres: body.metres ?? null,
        from: dayOf(body.from),
        to: dayOf(body.to),
        address: fact.id,
      }
    }),
    hivesLookedFor: log.of(hivesLookedFor).map(({ fact, body: written }) => {
      const body = corrected(fact, written)
      return { field: body.field, result: body.result, from: dayOf(body.from), to: dayOf(body.to), address: fact.id }
    }),
    plan:
      plan === undefined || planBody === null
        ? null
        : {
            lastVisit: dayOf(planBody.lastVisit),
            primaryKind: planBody.primaryKind ?? null,
            block: planBody.block ?? null,
            at: plan.fact.at,
            address: plan.fact.id,
          },
  }
}
