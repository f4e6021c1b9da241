// Columns and the codec of batches
export {
  type Column,
  markAt,
  type NumberColumn,
  numberAt,
  numberColumn,
  rowsOf,
  type TextColumn,
  textAt,
  textColumn,
} from './columns/column.ts'
export { type ColumnHead, type NamedColumn, type PackedColumns, packColumns, unpackColumns } from './columns/codec.ts'
export { isCounted, isWithoutNumber, type Mark, type MarkName, mark, markName } from './columns/mark.ts'
// Facts
export { digestOfIds } from './facts/digest.ts'
export {
  addressOf,
  compareFacts,
  type Fact,
  type FactBody,
  factEnvelope,
  type Json,
  keptCopy,
  parseAddress,
  type RowAddress,
} from './facts/fact.ts'
export {
  amended,
  type Assignment,
  type BodyOf,
  cellSettled,
  type FactKind,
  factKinds,
  factorDescribed,
  fieldDescribed,
  hivesLookedFor,
  hivesPlaced,
  kindDescribed,
  planMade,
  projectDescribed,
  questionLookedAt,
  redacted,
  rowsBrought,
  sheetAccepted,
  sheetDiscarded,
  sheetRead,
  treatmentSet,
  withdrawn,
  worthSet,
} from './facts/kinds.ts'
export { createLogicalClock, type LogicalClock } from './facts/logical-clock.ts'
export { type Author, makeFact } from './facts/make-fact.ts'
export { type ReadFact, readFact } from './facts/read-fact.ts'
