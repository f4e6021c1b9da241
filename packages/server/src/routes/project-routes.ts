import { checkShape } from '../api/counts.ts'
import { fieldsBody, fieldsShape, newProjectBody, openBody, openedShape, projectShape, projectsShape } from '../api/project.ts'
import type { App, DeskContext } from './desk-context.ts'
import { answers, sendReply } from './send-reply.ts'

/** The project at a glance, its fields, its checks; and other projects of the folder. */
export function projectRoutes(app: App, { thread, onOpened }: DeskContext): void {
  app.get('/api/project', { schema: { response: answers(projectShape) } }, async (_, reply) =>
    sendReply(reply, await thread.call('project', null)),
  )
  app.get('/api/projects', { schema: { response: answers(projectsShape) } }, async (_, reply) =>
    sendReply(reply, await thread.call('projects', null)),
  )
  app.post('/api/projects', { schema: { body: newProjectBody, response: answers(openedShape) } }, async ({ body }, reply) => {
    const made = await thread.call('make', body)
    onOpened()
    return sendReply(reply, made)
  })
  app.post('/api/open', { schema: { body: openBody, response: answers(openedShape) } }, async ({ body }, reply) => {
    const opened = await thread.call('open', body.file)
    onOpened()
    return sendReply(reply, opened)
  })
  app.post('/api/fields', { schema: { body: fieldsBody, response: answers(fieldsShape) } }, async ({ body }, reply) =>
    sendReply(reply, await thread.call('describeFields', body)),
  )
  app.get('/api/check', { schema: { response: answers(checkShape) } }, async (_, reply) =>
    sendReply(reply, await thread.call('check', null)),
  )
}
