import {
  type Answer,
  makeFact,
  type OptionsOf,
  type OptionsSpec,
  questionLookedAt,
  type RawOption,
  readOptions,
  type Snapshot,
  worthSet,
} from '@thrum/model'
import { createRng, type LongWork, ThrumError } from '@thrum/model/ground'
import { findQuestion, type Question, questions } from '@thrum/questions'
import { version } from '../platform/version.ts'
import type { Project } from '../project/project.ts'
import { askedKey } from './asked-key.ts'

/** Seed of an answer where none was given. The same seed, data and options give the same answer. */
export const usualSeed = 'thrum'

/** @throws ThrumError host/no-such-question, naming those there are */
export function requireQuestion(id: string): Question {
  const question = findQuestion(id)
  if (question === undefined)
    throw new ThrumError('host/no-such-question', { id, known: questions.map((own) => own.id).join(', ') })
  return question
}

interface OptionValues {
  readonly [name: string]: string | number | readonly string[] | undefined
}

interface Judged {
  /** S for this asking: given now, else as it was set before. */
  readonly worth: number | null
  /** True if S was set, or changed, after the question had been looked at. */
  readonly afterLooking: boolean
  /** True if it is new and should be written down. */
  readonly isNew: boolean
}

/** What is known of S for one question asked: it is set once, kept as a dated fact, and a late change is said. */
export function judgeWorth(snapshot: Snapshot, question: string, asked: string, given: number | undefined): Judged {
  const mine = <T extends { readonly question: string; readonly asked: string }>(list: readonly T[]): readonly T[] =>
    list.filter((own) => own.question === question && own.asked === asked)
  const set = mine(snapshot.worths)
  const looks = mine(snapshot.looks)
  const last = set.at(-1)
  const firstLook = looks[0]
  const isNew = given !== undefined && given !== last?.worth
  const worth = given ?? last?.worth ?? null
  const afterLooking = firstLook !== undefined && (isNew || (last !== undefined && last.at > firstLook.at))
  return { worth, afterLooking, isNew }
}

/** With how many other states of the data the same was asked before. */
function earlierLooks(snapshot: Snapshot, question: string, asked: string): number {
  const digests = snapshot.looks.filter((own) => own.question === question && own.asked === asked).map(({ digest }) => digest)
  return new Set(digests.filter((digest) => digest !== snapshot.digest)).size
}

/** What the host knows of a question put before; each is filled in where the question declares it, and nowhere else. */
export function fromLog(declared: OptionsSpec, { worth, afterLooking }: Judged, earlier: number): OptionValues {
  const declares = (name: string): boolean => Object.hasOwn(declared, name)
  return {
    ...(declares('worthSet') && worth !== null ? { worth, worthSet: afterLooking ? 'after-looking' : 'before-looking' } : {}),
    ...(declares('looks') && earlier > 0 ? { looks: earlier } : {}),
  }
}

export interface Asking {
  readonly answer: Answer
  readonly snapshot: Snapshot
  readonly question: Question
}

type Options = OptionsOf<OptionsSpec> & OptionValues

const answerTo = (question: Question, snapshot: Snapshot, options: Options, work: LongWork, seed: string): Promise<Answer> =>
  question.run(snapshot, options, { ...work, rng: createRng(seed), version })

/**
 * Puts a question to a project. S, where the question has one, is taken from the options or from what was set before. In a
 * project that may be written it is written down that the answer was looked at.
 *
 * @throws ThrumError model/options/..., questions/..., survey/..., host/no-such-question
 */
export async function ask(
  project: Project,
  id: string,
  raw: { readonly [name: string]: RawOption | undefined },
  work: LongWork,
  seed: string = usualSeed,
): Promise<Asking> {
  const question = requireQuestion(id)
  const options = readOptions(question.options, raw) as Options
  const snapshot = await project.snapshot()
  const asked = askedKey(options)
  const earlier = earlierLooks(snapshot, id, asked)
  const hasWorth = Object.hasOwn(question.options, 'worthSet')
  const judged = judgeWorth(snapshot, id, asked, options.worth as number | undefined)
  const filled: Options = { ...options, ...fromLog(question.options, judged, earlier) }
  const answer = await answerTo(question, snapshot, filled, work, seed)
  if (project.access.mode === 'write')
    await writeDown(project, snapshot, { id, asked, answer, newWorth: hasWorth && judged.isNew ? judged.worth : null })
  return { answer, snapshot, question }
}

/** Puts a question to a snapshot that is no project: a plan. Nothing is written. */
export async function askSnapshot(
  snapshot: Snapshot,
  id: string,
  raw: { readonly [name: string]: RawOption | undefined },
  work: LongWork,
  seed: string = usualSeed,
): Promise<Asking> {
  const question = requireQuestion(id)
  const options = readOptions(question.options, raw) as Options
  const answer = await answerTo(question, snapshot, options, work, seed)
  return { answer, snapshot, question }
}

interface Looked {
  readonly id: string
  readonly asked: string
  readonly answer: Answer
  readonly newWorth: number | null
}

async function writeDown(project: Project, snapshot: Snapshot, { id, asked, answer, newWorth }: Looked): Promise<void> {
  const { author, log } = project
  const looked = snapshot.looks.some((own) => own.question === id && own.asked === asked && own.digest === answer.receipt.digest)
  await log.append([
    ...(newWorth === null ? [] : [makeFact(worthSet, { question: id, asked, worth: newWorth }, author)]),
    // One look at one state of the data is written once.
    ...(looked
      ? []
      : [makeFact(questionLookedAt, { question: id, asked, digest: answer.receipt.digest, verdict: answer.verdict }, author)]),
  ])
}
