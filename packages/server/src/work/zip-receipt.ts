import { answerJson } from '@thrum/report'
import { strToU8, zipSync } from 'fflate'
import type { Reply } from '../thread/protocol.ts'
import { say } from '../words/speakers.ts'
import type { Put } from './put-question.ts'

/** The earliest day that a zip can tell: the same receipt is the same bytes, whenever it is made. */
const noTime = new Date(1980, 0, 1)

/** The files of a receipt, as the terminal writes them into a folder, in one zip. */
export function receiptReply({ answer, snapshot, question }: Put): Reply {
  const { files } = question.receipt(snapshot, answer)
  const all = [...files, { name: 'answer.json', text: `${answerJson(answer, say)}\n` }]
  const body = zipSync(Object.fromEntries(all.map(({ name, text }) => [name, strToU8(text)])), { mtime: noTime })
  return { media: 'application/zip', body, file: `receipt-${question.id}.zip` }
}
