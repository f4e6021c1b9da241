import { isDesignSound } from './is-design-sound/question.ts'
import type { Question } from './question.ts'
import { whatDiffers } from './what-differs/question.ts'
import { whoVisits } from './who-visits/question.ts'

/** Every question there is. A new one is one folder and one line here. */
export const questions: readonly Question[] = [whoVisits, whatDiffers, isDesignSound] as readonly Question[]

export function findQuestion(id: string): Question | undefined {
  return questions.find((question) => question.id === id)
}
