import type { RawOption, Snapshot } from '@thrum/model'
import { readOptions } from '@thrum/model'
import { canonicalJson } from '@thrum/model/ground'
import { version } from '../platform/version.ts'
import { judgeWorth, requireQuestion, usualSeed } from '../question/ask.ts'
import { askedKey } from '../question/asked-key.ts'

/** Where a question stands before it is put: what is asked, what the log adds to it, and what asking it would write. */
export interface AskingState {
  /** The same whatever S it is held against. */
  readonly asked: string
  /** Two askings with one key have one answer, to the letter. */
  readonly key: string
  /** True where asking would write down S or a look. */
  readonly writes: boolean
}

/** @throws ThrumError model/options/..., host/no-such-question */
export function askingState(
  snapshot: Snapshot,
  id: string,
  raw: { readonly [name: string]: RawOption | undefined },
  seed: string = usualSeed,
): AskingState {
  const question = requireQuestion(id)
  const options = readOptions(question.options, raw) as { readonly [name: string]: string | number | readonly string[] }
  const asked = askedKey(options)
  const isJudged = Object.hasOwn(question.options, 'worthSet')
  const { worth, afterLooking, isNew } = judgeWorth(snapshot, id, asked, options.worth as number | undefined)
  const looks = snapshot.looks.filter((own) => own.question === id && own.asked === asked).map(({ digest }) => digest)
  const earlier = new Set(looks.filter((digest) => digest !== snapshot.digest)).size
  return {
    asked,
    key: canonicalJson([
      snapshot.project?.id ?? '',
      snapshot.digest,
      id,
      options,
      isJudged ? [worth, worth === null ? false : afterLooking, earlier] : [],
      seed,
      version,
    ]),
    writes: isJudged && (isNew || !looks.includes(snapshot.digest)),
  }
}
