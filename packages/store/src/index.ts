// What every database does

// What the store says
export type { FoundInstead, ReadingReason, StoreCode } from './errors.ts'
// Two copies become one
export { type Merged, mergeLogs } from './merge/merge-logs.ts'
export type {
  Access,
  Appended,
  Attachment,
  AttachmentHead,
  Derived,
  FactFilter,
  Peer,
  ProjectLog,
  StoredFact,
} from './port.ts'
export { partSize } from './port.ts'
export { words } from './words.en.ts'
