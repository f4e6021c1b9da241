import type { Answer } from '@thrum/model'

/** An answer as it was given. */
export interface KeptAnswer {
  readonly answer: Answer
  /** As it was sent: JSON in UTF-8. */
  readonly text: string
}

/** Answers kept at once, and letters of all of them together. */
const mostAnswers = 200
const mostLetters = 64 * 1024 * 1024

/** Answers of this run: the ones that were not asked for the longest go first. */
export interface KeptAnswers {
  find(key: string): KeptAnswer | undefined
  keep(key: string, kept: KeptAnswer): void
}

export function createKeptAnswers(): KeptAnswers {
  const all = new Map<string, KeptAnswer>()
  let letters = 0
  const drop = (key: string): void => {
    letters -= all.get(key)?.text.length ?? 0
    all.delete(key)
  }
  return {
    find: (key) => {
      const found = all.get(key)
      if (found !== undefined) {
        all.delete(key)
        all.set(key, found)
      }
      return found
    },
    keep: (key, kept) => {
      drop(key)
      all.set(key, kept)
      letters += kept.text.length
      for (const oldest of all.keys()) {
        if (all.size <= mostAnswers && letters <= mostLetters) break
        drop(oldest)
      }
    },
  }
}
