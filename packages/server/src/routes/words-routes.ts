import { wordsParams, wordsShape } from '../api/words.ts'
import { wordsIn } from '../words/speakers.ts'
import type { App } from './desk-context.ts'
import { answers } from './send-reply.ts'

/** What can be said, so that a page says in its own language what came as an id with values. */
export function wordsRoutes(app: App): void {
  app.get(
    '/api/words/:language',
    { schema: { params: wordsParams, response: answers(wordsShape) } },
    async ({ params }) => wordsIn[params.language],
  )
}
