import { english, spanish } from '@thrum/host'
import { type LongWork, type Saying, type SayingValue, ThrumError, type Words } from '@thrum/model/ground'
import { createSpeaker, type Language, type Speaker, spokenLanguage, withTexts, wrap } from '@thrum/report'
import { words as serverWords, wordsEs as serverWordsEs } from '@thrum/server/words'
import { words } from '../words.en.ts'
import { words as wordsEs } from '../words.es.ts'

/** What a command is handed: where to speak, in which form, and how it is stopped. */
export interface Terminal {
  readonly say: Speaker
  readonly isJson: boolean
  /** True where a person sits before it and can be asked. */
  readonly isInteractive: boolean
  /** Folder in which a project is looked for where none is named. */
  readonly here: string
  readonly work: LongWork
  /** A line of the result. */
  print(text: string): void
  /** The result in the machine form; printed only with --json. */
  json(value: unknown): void
  /** Something told on the way, beside the result. */
  note(text: string): void
  ask(question: string): Promise<string>
  /** Waits until the person, or the system, ends the program: for what goes on until then, that is the usual end. */
  untilStopped(): Promise<void>
}

/** Words of everything this program can say, by language. */
export const wordsIn: { readonly [language in Language]: Words } = {
  en: { ...english, ...serverWords, ...words },
  es: { ...spanish, ...serverWordsEs, ...wordsEs },
}

/** The ids of everything that can be said are those of the English words. */
export const allWords = wordsIn.en

/** The language of the person: THRUM_LANGUAGE, else that of the system. */
export function personsLanguage(environment: { readonly [name: string]: string | undefined }): Language {
  const said = ['THRUM_LANGUAGE', 'LC_ALL', 'LC_MESSAGES', 'LANG'].map((name) => environment[name] ?? '')
  return spokenLanguage(said.filter((own) => own !== '').slice(0, 1))
}

/** What is printed of one name, cell or list: beyond that nobody reads. The machine form has the values whole. */
const manner = { longest: 1_000, longestWord: 300, shell: process.platform === 'win32' ? 'windows' : 'posix' } as const

/** Commands stand at the start of a line, alone or behind four blanks. */
const commandsIn = /^( {4})?thrum (?=[a-z])/gmu
/** Letters that are the same in a message text and in a shell. */
const plainName = /^[\w./\\:~-]+$/u

/** A speaker that writes commands as the program was called (`./thrum`), so that they can be copied as they stand. */
export function speaker(called = 'thrum', language: Language = 'en'): Speaker {
  const own = wordsIn[language]
  if (called === 'thrum' || !plainName.test(called)) return createSpeaker(own, language, manner)
  const told = Object.entries(own).map(([id, text]) => [id, text.replace(commandsIn, `$1${called} `)])
  return createSpeaker(Object.fromEntries(told), language, manner)
}

/** The values of an error as a person types them: options with their dashes as they are typed. */
export function failureLines(error: ThrumError, say: Speaker): readonly string[] {
  const remedy: Saying = { ...error.remedy }
  return [...wrap(say(error.saying)), ...wrap(say(remedy))]
}

export function failureJson(error: ThrumError, say: Speaker): unknown {
  const values: { readonly [name: string]: SayingValue } = error.values
  return { error: { code: error.code, values: withTexts(values, say), text: say(error.saying), remedy: say(error.remedy) } }
}

/**
 * The machine form as text. Control codes and marks of direction that JSON leaves as they are stand escaped: it may be read
 * on a screen, and means the same.
 */
export function jsonText(value: unknown): string {
  return JSON.stringify(value, null, 2).replace(
    /[\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/gu,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
}

/** How a failure of the program itself is told: what it was, and that nothing is lost. */
export function mishap(error: unknown): ThrumError {
  const what = error instanceof Error ? `${error.name}: ${error.message}` : String(error)
  return new ThrumError('cli/mishap', { what }, { cause: error })
}
