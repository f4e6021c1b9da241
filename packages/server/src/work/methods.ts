import { basename } from 'node:path'
import { correctCell, historyOfRow, type Project, requireWritable, settleCell, whatWaits, withdraw } from '@thrum/host'
import { pinQuestion } from '@thrum/host/desk'
import { fieldDescribed, makeFact } from '@thrum/model'
import type { LongWork } from '@thrum/model/ground'
import type { Calls, Method, Reply } from '../thread/protocol.ts'
import { askedBefore } from './asked-before.ts'
import type { Desk } from './desk.ts'
import { drawnReply } from './draw-figure.ts'
import { tellPage } from './grid/tell-page.ts'
import { makeProject, namedProject, tellProjects } from './project-files.ts'
import { putQuestion } from './put-question.ts'
import { jsonMedia, jsonReply } from './reply.ts'
import { acceptTable } from './tables/accept-table.ts'
import { offerTable, proposeTable } from './tables/offer-table.ts'
import { tellCheck } from './tell-check.ts'
import { historySentences } from './tell-history.ts'
import { tellProject } from './tell-project.ts'
import { tellQuestions } from './tell-questions.ts'
import { walkThrough } from './walk-through.ts'
import { createWatch } from './watch.ts'
import { receiptReply } from './zip-receipt.ts'

type Methods = { readonly [M in Method]: (desk: Desk, params: Calls[M], work: LongWork) => Promise<Reply> }

/** Something told of the open project as JSON. */
const told =
  <P>(tell: (desk: Desk, project: Project, params: P, work: LongWork) => Promise<unknown>) =>
  (desk: Desk, params: P, work: LongWork): Promise<Reply> =>
    desk.use(async (project) => jsonReply(await tell(desk, project, params, work)))

async function opening(desk: Desk, path: string): Promise<Reply> {
  const opened = await desk.switchTo(path)
  return await desk.use(async (project) => ({
    ...jsonReply({ file: basename(path), title: (await project.snapshot()).project?.title ?? '' }),
    opened,
  }))
}

const watch = createWatch()

/** Everything that can be asked of the project: one entry a question, the work itself in files of its own. */
export const methods: Methods = {
  project: told((desk, project) => tellProject(desk, project)),
  questions: told((desk, project) => tellQuestions(desk, project)),
  ask: (desk, body, work) =>
    desk.use(async (project) => {
      const { text, kept } = await putQuestion(desk, project, body, work)
      return { media: jsonMedia, body: text, kept }
    }),
  asked: told(async (_, project) => askedBefore(await project.snapshot())),
  walk: told(async (_, project) => walkThrough(await project.snapshot())),
  pin: told(async (_, project, { question, options, pinned }) => ({
    question,
    asked: await pinQuestion(project, { question, options, pinned }),
    pinned,
  })),
  receipt: (desk, body, work) =>
    desk.use(async (project) => {
      const put = await putQuestion(desk, project, body, work)
      return { ...receiptReply(put), kept: put.kept }
    }),
  figure: (desk, body, work) =>
    desk.use(async (project) => {
      const { answer, kept } = await putQuestion(desk, project, body, work)
      return { ...(await drawnReply(answer, body)), kept }
    }),
  counts: told((desk, project, asked) => tellPage(desk, project, asked)),
  history: told(async (_, project, asked) => {
    const history = await historyOfRow(project, asked)
    return { ...history, sentences: historySentences(history) }
  }),
  correct: told((_, project, asked) => correctCell(project, asked)),
  withdraw: told((_, project, { row, column, reason }) => withdraw(project, { row, kind: column, reason })),
  settle: told((_, project, asked) => settleCell(project, asked)),
  waiting: told((_, project) => whatWaits(project)),
  check: told((_, project) => tellCheck(project)),
  propose: told((desk, project, at, work) => proposeTable(desk, project, at, work)),
  offer: told((desk, project, asked, work) => offerTable(desk, project, asked, work)),
  accept: told((desk, project, asked, work) => desk.writing(() => acceptTable(desk, project, asked, work))),
  dropTable: async (desk, table) => {
    desk.sheets.drop(table)
    return jsonReply({ dropped: true })
  },
  projects: async (desk) => jsonReply(tellProjects(desk.folder, desk.opened()?.path ?? null)),
  make: async (desk, asked) => await opening(desk, await makeProject(desk.folder, asked)),
  open: (desk, file) => opening(desk, namedProject(desk.folder, file)),
  describeFields: told(async (_, project, fields) => {
    requireWritable(project)
    const facts = fields.map((field) => makeFact(fieldDescribed, field, project.author, { subject: field.field }))
    await project.log.append(facts)
    return { facts: facts.map(({ id }) => id) }
  }),
  watch: async (desk) => {
    if (desk.opened() === null || desk.isWriting()) return jsonReply(null)
    return await desk.use(async (project) => jsonReply(await watch(project)))
  },
}
