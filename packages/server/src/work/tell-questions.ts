import type { Project } from '@thrum/host'
import type { Offer, OptionDeclaration, Snapshot } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { type Question, questions } from '@thrum/questions'
import { allKinds, factorNames, resolveFactor } from '@thrum/survey'
import type { Desk } from './desk.ts'
import { measuredNames } from './measured-names.ts'
import { kindsByFrequency } from './tell-project.ts'

/** Options that the host fills in from the log; nobody types them. */
const filledIn: ReadonlySet<string> = new Set(['worthSet', 'looks'])

/** Conditions offered of one factor, and in all. */
const mostLevels = 12
const mostConditions = 200

function conditions(snapshot: Snapshot): readonly string[] {
  return factorNames(snapshot)
    .map((name) => ({ name, levels: resolveFactor(snapshot, name).levels }))
    .filter(({ levels }) => levels.length <= mostLevels)
    .flatMap(({ name, levels }) => levels.map((level) => `${name}=${level}`))
    .slice(0, mostConditions)
}

function offersOf(snapshot: Snapshot): { readonly [O in Offer]: readonly string[] } {
  const kinds = kindsByFrequency(snapshot).map(({ kind }) => snapshot.kinds[kind]?.name ?? '')
  const groups = snapshot.kinds.flatMap(({ group }) => (group === null ? [] : [group]))
  return {
    kinds: [...new Set([...kinds, ...groups, ...(kinds.length > 1 ? [allKinds] : [])])],
    fields: snapshot.fields.map(({ name }) => name),
    crops: resolveFactor(snapshot, 'crop').levels,
    seasons: resolveFactor(snapshot, 'season').levels,
    factors: [...new Set([...factorNames(snapshot), ...measuredNames(snapshot)])],
    // They hang on the factor that is asked between, and stand with it in the project.
    levels: [],
    conditions: conditions(snapshot),
    none: [],
  }
}

function optionTold(name: string, declared: OptionDeclaration, offers: { readonly [O in Offer]: readonly string[] }): unknown {
  const offer = declared.offers ?? 'none'
  return {
    name,
    type: declared.type,
    choices: declared.type === 'choice' ? declared.choices : null,
    above: declared.type === 'number' ? declared.above : null,
    offers: offer,
    offered: offers[offer],
    explained: saying(declared.explained),
  }
}

function questionTold({ id, options }: Question, offers: { readonly [O in Offer]: readonly string[] }): unknown {
  return {
    id,
    title: saying(`questions/${id}/title`),
    options: Object.entries(options)
      .filter(([name]) => !filledIn.has(name))
      .map(([name, declared]) => optionTold(name, declared, offers)),
  }
}

/** Every question with its options, and what this project offers for each. */
export async function tellQuestions(desk: Desk, project: Project): Promise<unknown> {
  const snapshot = await project.snapshot()
  return desk.once('questions', snapshot, () => {
    const offers = offersOf(snapshot)
    return questions.map((question) => questionTold(question, offers))
  })
}
