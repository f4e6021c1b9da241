import { ask, type Project, requireQuestion } from '@thrum/host'
import { askingState } from '@thrum/host/desk'
import type { Answer, Snapshot } from '@thrum/model'
import type { LongWork } from '@thrum/model/ground'
import type { Question } from '@thrum/questions'
import { answerJson } from '@thrum/report'
import type { OptionsAsked } from '../api/question.ts'
import { say } from '../words/speakers.ts'
import type { Desk } from './desk.ts'

export interface QuestionPut {
  readonly question: string
  readonly options: OptionsAsked
  readonly seed?: string | undefined
}

export interface Put {
  readonly answer: Answer
  readonly snapshot: Snapshot
  readonly question: Question
  /** What the terminal prints with --json, to the letter. */
  readonly text: string
  readonly kept: boolean
}

/**
 * Puts a question to the project, or gives the answer that was kept. What asking writes down (S, a look) is written as the
 * terminal does it: where there is something to write, the question is put anew.
 *
 * @throws ThrumError what `ask` of the host throws
 */
export async function putQuestion(
  desk: Desk,
  project: Project,
  { question: id, options, seed }: QuestionPut,
  work: LongWork,
): Promise<Put> {
  const before = askingState(await project.snapshot(), id, options, seed)
  const mayWrite = project.access.mode === 'write'
  const known = before.writes && mayWrite ? undefined : desk.answers.find(before.key)
  if (known !== undefined) {
    return { ...known, snapshot: await project.snapshot(), question: requireQuestion(id), kept: true }
  }
  const { answer, snapshot, question } = await ask(project, id, options, work, seed)
  const text = `${answerJson(answer, say)}\n`
  // Facts may have come while it was worked out: kept is what was answered, under the state it was answered from.
  const { key } = askingState(snapshot, id, options, seed)
  if (answer.receipt.digest === snapshot.digest) desk.answers.keep(key, { answer, text })
  return { answer, snapshot, question, text, kept: false }
}
