import {
  amended,
  type BodyOf,
  cellSettled,
  type Fact,
  isForgotten,
  type Json,
  parseAddress,
  type redacted,
  rowsBrought,
  sheetRead,
  withdrawn,
} from '@thrum/model'
import { createNames, type Forgetting, forgettingOf, type Names, withoutForgotten, withoutSaying } from '@thrum/store'
import type { Project } from '../project/project.ts'
import type { CorrectedProject } from './corrected-project.ts'
import { filesWithRows } from './forgotten-facts.ts'

/** Where something stands that is to be forgotten: so many rows of a column of a table, or so many facts of a kind. */
export interface StandsIn {
  readonly where: string
  readonly column: string | null
  readonly number: number
}

/** Where in a project something stands that is to be forgotten. */
export interface Standing {
  readonly standsIn: readonly StandsIn[]
  /** Kinds, crops and the like that hold the same words: they are no person and stay. */
  readonly stays: readonly string[]
  /** Files as they came that will be dropped, as far as can be told beforehand. */
  readonly files: readonly string[]
}

interface Head {
  readonly name: string
  readonly dictionary?: readonly string[]
}

const headsOf = (fact: Fact): readonly Head[] =>
  fact.kind === rowsBrought.kind && Array.isArray(fact.body.columns) ? (fact.body.columns as unknown as readonly Head[]) : []

/** Corrections, settlements and withdrawals of a log: to know what each speaks of. */
async function speakingFacts(project: Project): Promise<ReadonlyMap<string, Fact>> {
  const speaking = new Map<string, Fact>()
  for await (const facts of project.log.factsAfter(0, { kinds: [amended.kind, cellSettled.kind, withdrawn.kind] })) {
    for (const fact of facts) speaking.set(fact.id, fact)
  }
  return speaking
}

/** Everything in a log that changes when it is forgotten, counted by where it stands. */
export async function whereItStands(
  { project, sheets }: CorrectedProject,
  redactions: readonly BodyOf<typeof redacted>[],
): Promise<Standing> {
  const forgetting = forgettingOf(redactions as unknown as { readonly [key: string]: Json }[])
  const names = createNames(redactions.flatMap(({ name }) => name ?? []))
  const named = new Set(redactions.flatMap(({ of }) => of ?? []))
  const rows = Map.groupBy([...named].map(parseAddress), ({ fact }) => fact)
  const speaking = await speakingFacts(project)
  const isGone = (address: string): boolean =>
    isForgotten(
      address,
      (of) => named.has(of),
      (id) => speaking.get(id),
    )
  const standsIn = new Map<string, StandsIn>()
  const stays = new Set<string>()
  const touched = new Set<string>()
  const add = (where: string, column: string | null, number: number): void => {
    const key = `${where}/${column}`
    standsIn.set(key, { where, column, number: (standsIn.get(key)?.number ?? 0) + number })
  }
  for await (const facts of project.log.factsAfter(0)) {
    for (const fact of facts) {
      const left = withoutForgotten(
        isGone(fact.id) ? withoutSaying(fact) : fact,
        (rows.get(fact.id) ?? []).map(({ row }) => row),
        forgetting,
      )
      for (const word of headsOf(fact).flatMap(({ dictionary }) => dictionary ?? [])) {
        if (isLeft(word, names, left)) stays.add(word)
      }
      if (left === fact) continue
      if (fact.kind === sheetRead.kind || fact.kind === rowsBrought.kind) touched.add(String(fact.body.sheet))
      tellChange(fact, left, forgetting, add)
    }
  }
  const files = sheets.filter(({ sheet }) => touched.has(sheet)).map(({ file }) => file)
  return {
    standsIn: [...standsIn.values()],
    stays: [...stays],
    files: [...new Set([...files, ...filesWithRows(sheets, isGone)])],
  }
}

function isLeft(word: string, names: Names | null, left: Fact): boolean {
  if (names === null || names.without(word) === word) return false
  return headsOf(left).some(({ dictionary }) => dictionary?.includes(word) === true)
}

function tellChange(
  fact: Fact,
  left: Fact,
  { names }: Forgetting,
  add: (where: string, column: string | null, number: number) => void,
): void {
  const table = fact.body.table
  if (fact.kind !== rowsBrought.kind || typeof table !== 'string' || names === null) add(fact.kind, null, 1)
  else {
    for (const { name, dictionary = [] } of headsOf(fact)) {
      const changed = dictionary.filter((word) => names.without(word) !== word)
      const isTaken = changed.some((word) => !(headsOf(left).find((own) => own.name === name)?.dictionary ?? []).includes(word))
      if (isTaken) add(table, name, changed.length)
    }
  }
}
