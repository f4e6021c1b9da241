import { withTexts } from '@thrum/report'
import type { Reply } from '../thread/protocol.ts'
import { say } from '../words/speakers.ts'

export const jsonMedia = 'application/json; charset=utf-8'

/** A result as JSON: every sentence in it gets its text beside it. */
export function jsonReply(value: unknown): Reply {
  return { media: jsonMedia, body: JSON.stringify(withTexts(value, say)) }
}
