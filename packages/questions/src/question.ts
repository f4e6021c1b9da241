import type { Answer, OptionsOf, OptionsSpec, Snapshot, TableName } from '@thrum/model'
import type { LongWork, Rng } from '@thrum/model/ground'
import type { Receipt } from './receipt/receipt.ts'

/** What a question is handed beside the snapshot: randomness, the version that answers, and how to be stopped. */
export interface Work extends LongWork {
  readonly rng: Rng
  /** Version of Thrum, for the recipe. */
  readonly version: string
}

/** A question that can be put to a project. One folder each; `questions.ts` lists them. */
export interface Question<S extends OptionsSpec = OptionsSpec> {
  readonly id: string
  /** Tables it reads. */
  readonly needs: readonly TableName[]
  readonly options: S
  /**
   * @throws ThrumError where the question cannot be put to this project, saying what to do
   */
  run(snapshot: Snapshot, options: OptionsOf<S>, work: Work): Promise<Answer>
  /** Tidy rows and an R script that recomputes the headline from them; built only when asked for. */
  receipt(snapshot: Snapshot, answer: Answer): Receipt
}
