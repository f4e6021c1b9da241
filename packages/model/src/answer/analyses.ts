import type { Saying } from '../ground/index.ts'
import type { Interval } from './answer.ts'
import type { Verdict } from './verdict.ts'

/** One way in which a careful person might have analysed a comparison. */
export interface Analysis {
  /** Stable name inside its comparison: `as-asked`, `unadjusted`, `model`, `permutation` ... */
  readonly id: string
  readonly label: Saying
  /** The ratio; null where it gives none. */
  readonly value: number | null
  readonly interval: Interval | null
  /** What the verdict rule says of it alone; null where it gives no interval. */
  readonly verdict: Verdict | null
  /** In place of an interval: what a test found, or why the analysis could not be made. */
  readonly told: Saying | null
}

/** A comparison by each analysis that applies to it, as asked first. None of them changes its verdict. */
export interface ComparedAnalyses {
  /** What is compared with what. */
  readonly comparison: Saying
  /** Fields that each of them rests on, less what one leaves out. */
  readonly fields: number
  readonly analyses: readonly Analysis[]
  /** Whether another of them would have led to another verdict. */
  readonly hangs: boolean
  /** The same as a sentence. */
  readonly told: Saying
}
