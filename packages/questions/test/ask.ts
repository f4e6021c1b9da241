import { type Answer, modelWords, type OptionsOf, type OptionsSpec, type Snapshot } from '@thrum/model'
import { createRng, type Saying, type SayingValue, ThrumError, type Words } from '@thrum/model/ground'
import { surveyWords } from '@thrum/survey'
import { IntlMessageFormat } from 'intl-messageformat'
import { isDesignSound, type Question, questionsWords, whatDiffers, whoVisits } from '../src/index.ts'

const words: Words = { ...modelWords, ...surveyWords, ...questionsWords }

/** A sentence in English. Fails where a text is missing, a blank is not filled, or a number in it is none. */
export function said(saying: Saying): string {
  const text = words[saying.id]
  if (text === undefined) throw new Error(`no words for ${saying.id}`)
  const fill = (value: SayingValue): string | number => {
    if (typeof value === 'string') return value
    if (typeof value === 'number') {
      if (!Number.isFinite(value)) throw new Error(`${saying.id} holds ${value}`)
      return value
    }
    return Array.isArray(value) ? value.map((own: Saying) => said(own)).join(', ') : said(value as Saying)
  }
  const values = Object.fromEntries(Object.entries(saying.values).map(([name, value]) => [name, fill(value)]))
  const sentence = String(new IntlMessageFormat(text, 'en', undefined, { ignoreTag: true }).format(values))
  if (/NaN|undefined|null|∞/u.test(sentence)) throw new Error(`${saying.id} reads: ${sentence}`)
  return sentence
}

function isSaying(value: object): value is Saying {
  return Object.keys(value).join() === 'id,values' && typeof (value as { id?: unknown }).id === 'string'
}

/** Every sentence in an answer, whole: those inside another are part of it. */
export function sentences(value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(sentences)
  if (typeof value !== 'object' || value === null) return []
  return isSaying(value) ? [said(value)] : Object.values(value).flatMap(sentences)
}

async function run<S extends OptionsSpec>(
  question: Question<S>,
  snapshot: Snapshot,
  options: OptionsOf<S>,
  seed: string,
): Promise<Answer> {
  const work = {
    rng: createRng(seed),
    version: '0.0.0',
    signal: { aborted: false },
    breathe: () => Promise.resolve(),
  }
  const answer = await question.run(snapshot, options, work)
  // Whatever a test asks, all of the answer can be said.
  sentences(answer)
  return answer
}

export const whatDiffersIn = (
  snapshot: Snapshot,
  options: OptionsOf<typeof whatDiffers.options>,
  seed = 'test',
): Promise<Answer> => run(whatDiffers, snapshot, options, seed)

export const whoVisitsIn = (
  snapshot: Snapshot,
  options: OptionsOf<typeof whoVisits.options> = {},
  seed = 'test',
): Promise<Answer> => run(whoVisits, snapshot, options, seed)

export const isDesignSoundIn = (
  snapshot: Snapshot,
  options: OptionsOf<typeof isDesignSound.options>,
  seed = 'test',
): Promise<Answer> => run(isDesignSound, snapshot, options, seed)

/** The code and the values of the error that a question ends with. */
export async function stoppedBy(asking: Promise<Answer>): Promise<{ readonly code: string; readonly values: Saying['values'] }> {
  try {
    await asking
  } catch (error) {
    if (error instanceof ThrumError) {
      said(error.saying)
      said(error.remedy)
      return { code: error.code, values: error.values }
    }
    throw error
  }
  throw new Error('expected an error, found an answer')
}

export const headlineIn = ({ headline }: Answer): string => said(headline)
export const canSay = ({ claims }: Answer): readonly string[] => claims.canSay.map(said)
export const cannotSay = ({ claims }: Answer): readonly string[] => claims.cannotSay.map(said)
