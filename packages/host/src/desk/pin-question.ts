import { makeFact, questionPinned, type RawOption, readOptions } from '@thrum/model'
import { canonicalJson } from '@thrum/model/ground'
import { type Project, requireWritable } from '../project/project.ts'
import { requireQuestion } from '../question/ask.ts'
import { askedKey } from '../question/asked-key.ts'

/** A question as it is kept at hand, or let go. */
export interface PinAsked {
  readonly question: string
  readonly options: { readonly [name: string]: RawOption | undefined }
  readonly pinned: boolean
}

/**
 * Pins a question with its options, or lets it go. What is so already is not written again.
 *
 * @returns the key of what is asked
 * @throws ThrumError model/options/..., host/no-such-question, host/read-only
 */
export async function pinQuestion(project: Project, { question, options, pinned }: PinAsked): Promise<string> {
  requireWritable(project)
  const read = readOptions(requireQuestion(question).options, options) as { [name: string]: string | number | string[] }
  const asked = askedKey(read)
  const { pins } = await project.snapshot()
  const known = pins.find((own) => own.question === question && own.asked === asked)
  const isSo = pinned ? known !== undefined && canonicalJson(known.options) === canonicalJson(read) : known === undefined
  if (!isSo) await project.log.append([makeFact(questionPinned, { question, asked, options: read, pinned }, project.author)])
  return asked
}
