import type { Progress, Saying } from '@thrum/model/ground'
import type {
  AcceptBody,
  AskBody,
  CorrectionBody,
  FieldsDescribed,
  FigureBody,
  HistoryQuery,
  NewProject,
  OfferBody,
  PinBody,
  ReceiptBody,
  SettlingBody,
  WithdrawalBody,
} from '../api/index.ts'

/** Version of the messages between the thread that answers requests and the thread that works on the project. */
export const protocolVersion = 1

/** A table that was taken in: where its bytes lie, and the name it came with. */
export interface TableAt {
  readonly table: string
  readonly path: string
  readonly name: string
}

/** A page of the counts as it is asked for, lists already lists. */
export interface PageAsked {
  readonly offset: number
  readonly limit: number
  readonly sort: string | null
  readonly filters: readonly string[]
  /** Only these rows; null for all. */
  readonly addresses: readonly string[] | null
}

/** Everything that can be asked of the project, and what it is asked with. */
export interface Calls {
  readonly project: null
  readonly questions: null
  readonly ask: AskBody
  readonly asked: null
  readonly walk: null
  readonly pin: PinBody
  readonly receipt: ReceiptBody
  readonly figure: FigureBody
  readonly counts: PageAsked
  readonly history: HistoryQuery
  readonly correct: CorrectionBody
  readonly withdraw: WithdrawalBody
  readonly settle: SettlingBody
  readonly waiting: null
  readonly check: null
  readonly propose: TableAt
  readonly offer: TableAt & Pick<OfferBody, 'mapping' | 'options'>
  readonly accept: TableAt & Pick<AcceptBody, 'mapping' | 'options'>
  readonly dropTable: string
  readonly projects: null
  readonly make: NewProject
  readonly open: string
  readonly describeFields: FieldsDescribed
  /** Whether facts came since the last time; the state as an event, or null. */
  readonly watch: null
}
export type Method = keyof Calls

/** The project that is open now. `hash` tells whether two servers serve the same one, and nothing else of it. */
export interface OpenedProject {
  readonly path: string
  readonly hash: string
}

/** What a call came to: bytes ready to be sent, so that the thread that answers requests has nothing to work out. */
export interface Reply {
  readonly media: string
  readonly body: string | Uint8Array
  /** For what is saved as a file. */
  readonly file?: string
  /** Whether an answer was kept from before. */
  readonly kept?: boolean
  /** Where the call opened a project. */
  readonly opened?: OpenedProject
}

export type ToWorker =
  | { readonly kind: 'call'; readonly id: number; readonly method: Method; readonly params: unknown }
  | { readonly kind: 'cancel'; readonly id: number }
  | { readonly kind: 'close' }

export type FromWorker =
  | { readonly kind: 'ready'; readonly version: number; readonly opened: OpenedProject | null }
  /** The project could not be opened: nothing will be answered. */
  | { readonly kind: 'not-opened'; readonly code: string; readonly values: Saying['values'] }
  | { readonly kind: 'done'; readonly id: number; readonly reply: Reply }
  | { readonly kind: 'failed'; readonly id: number; readonly code: string; readonly values: Saying['values'] }
  | { readonly kind: 'progress'; readonly id: number; readonly progress: Progress }
  | { readonly kind: 'closed' }

/** What the worker is started with. */
export interface WorkerStart {
  readonly version: number
  /** The folder whose projects can be opened. */
  readonly folder: string
  /** Path of the project to open first; null for none. */
  readonly project: string | null
}
