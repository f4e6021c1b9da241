import type { Snapshot, Verdict } from '@thrum/model'
import { createRng, unwatched } from '@thrum/model/ground'
import { whatDiffers } from '@thrum/questions'
import type { PlantedQuestion } from '../packages/host/src/demonstration/planted-questions.ts'

/** What one seed answers to one planted question. */
export interface Found {
  /** Verdict of the kind that the contrast was planted for. */
  readonly verdict: Verdict
  /** null where the design blocks. */
  readonly ratio: number | null
  /** Codes of the findings that block, in the order of the alphabet. */
  readonly blockedBy: readonly string[]
}

/** Puts a planted question to a project as anybody would, and reads off the answer for the planted kind. */
export async function answerPlanted(snapshot: Snapshot, planted: PlantedQuestion): Promise<Found> {
  const work = { ...unwatched, rng: createRng('planted'), version: 'trial' }
  const answer = await whatDiffers.run(snapshot, planted.options, work)
  const estimate = answer.estimates.find(({ id, role }) => role === 'headline' && id.startsWith(`ratio/${planted.kind}/`))
  const blocking = answer.cautions.filter(({ severity }) => severity === 'block').map(({ code }) => code)
  const verdict = estimate?.verdict ?? answer.verdict ?? 'design-blocks'
  return {
    verdict,
    ratio: verdict === 'design-blocks' ? null : (estimate?.value ?? null),
    blockedBy: [...new Set(blocking)].sort(),
  }
}
