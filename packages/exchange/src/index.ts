// Bytes to a table of texts

// Names and words
export { plainName } from './cell/plain-name.ts'
export { shortened, shownOfCell } from './cell/shortened.ts'
export { type SheetToBring, sheetFacts, sheetId } from './facts/sheet-facts.ts'
export { type AnswerForm, type Asked, answerForm, isOpen, saidSoFar, withAnswer, withRole } from './mapping/answers.ts'
export type { Proposal, ProposalQuestion, ProposalReason } from './mapping/proposal.ts'
export { proposeMapping } from './mapping/propose-mapping.ts'
export { measureUnits, type Role, roles } from './mapping/roles.ts'
// What its columns are
export { type MappedColumn, type Mapping, mappingShape, parseMapping } from './mapping/shape.ts'
// Mended files, and single cells
export { asCorrection, cellTold, emptyCell, type MendedCell, sameCell } from './mended/cell.ts'
export { type CellDifference, compareRows, type MendedPlan } from './mended/compare-rows.ts'
export { type ForgottenKey, forgottenKeys } from './mended/forgotten-row.ts'
export { matchRows, type RowMatches } from './mended/match-rows.ts'
export { type NewTables, onlyNew } from './mended/only-new.ts'
export { cellOf, type FreshRows, freshRows, type HeldRows, type HeldTally, tallyLabel, writtenOf } from './mended/rows.ts'
export { missingWords, readTypedCell, type TypedCell, unitOfColumn } from './mended/typed-cell.ts'
// What a person sees, and what is kept
export { describeRead } from './preview/describe-read.ts'
export type { Encoding, LineEnds } from './read/decode-bytes.ts'
export { type PlainColumn, plainColumns } from './read/plain-columns.ts'
export { isReadByDetection, readSheet } from './read/read-sheet.ts'
export type { AsideLine, FileFacts, RefusedLine, Sheet } from './read/sheet.ts'
export type { Delimiter } from './read/split-cells.ts'
// What its rows become
export type { CountsRead, KindTotal, RowNote, ShownReading } from './rows/counts-read.ts'
export { readCounts } from './rows/read-counts.ts'
export { retoldReason } from './rows/retold-reason.ts'
export { words } from './words.en.ts'
export { words as wordsEs } from './words.es.ts'
