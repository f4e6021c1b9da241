import type { Saying } from '@thrum/model/ground'
import type { Role } from './roles.ts'
import type { Mapping } from './shape.ts'

/** Why a column is proposed as what. */
export interface ProposalReason {
  readonly header: string
  readonly as: Role
  readonly because: Saying
}

/** What a person has to decide; `proposed` is what the proposed mapping says for now, null where it says nothing. */
export interface ProposalQuestion {
  /** Header the question is about, or null for the whole file. */
  readonly header: string | null
  readonly asks: Saying
  readonly proposed: string | null
}

export interface Proposal {
  readonly mapping: Mapping
  readonly reasons: readonly ProposalReason[]
  readonly questions: readonly ProposalQuestion[]
}
