// What every database does

// What the store says
export { type FoundInstead, type ReadingReason, remedyOf, type StoreCode } from './errors.ts'
export { type Forgetting, forgettingOf, withoutForgotten, withoutSaying } from './fact/forgetting.ts'
// What is forgotten
export { createNames, type ForgottenName, forgottenName, type Names } from './fact/forgotten-names.ts'
// Two copies become one
export { type Merged, mergeLogs } from './merge/merge-logs.ts'
export type {
  Access,
  Appended,
  Attachment,
  AttachmentHead,
  AttachmentPut,
  Derived,
  FactFilter,
  Peer,
  ProjectLog,
  StoredFact,
} from './port.ts'
export { partSize } from './port.ts'
export { words } from './words.en.ts'
export { words as wordsEs } from './words.es.ts'
