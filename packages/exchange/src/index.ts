// Bytes to a table of texts

// Names and words
export { plainName } from './cell/plain-name.ts'
export { type SheetToBring, sheetFacts, sheetId } from './facts/sheet-facts.ts'
export type { Proposal, ProposalQuestion, ProposalReason } from './mapping/proposal.ts'
export { proposeMapping } from './mapping/propose-mapping.ts'
export { measureUnits, type Role, roles } from './mapping/roles.ts'
// What its columns are
export { type MappedColumn, type Mapping, mappingShape, parseMapping } from './mapping/shape.ts'
// What a person sees, and what is kept
export { describeRead } from './preview/describe-read.ts'
export type { Encoding, LineEnds } from './read/decode-bytes.ts'
export { readSheet } from './read/read-sheet.ts'
export type { AsideLine, FileFacts, RefusedLine, Sheet } from './read/sheet.ts'
export type { Delimiter } from './read/split-cells.ts'
// What its rows become
export type { CountsRead, KindTotal, RowNote, ShownReading } from './rows/counts-read.ts'
export { readCounts } from './rows/read-counts.ts'
export { words } from './words.en.ts'
