// Columns and the codec of batches

// Answers
export type { Analysis, ComparedAnalyses } from './answer/analyses.ts'
export {
  type Answer,
  type Caution,
  type Estimate,
  evidenceShown,
  type Interval,
  type Method,
  type Recipe,
  type Reference,
  type Severity,
} from './answer/answer.ts'
export type { Figure, IntervalsFigure, RatesFigure, StripsFigure } from './answer/figure.ts'
export { type Verdict, verdicts } from './answer/verdict.ts'
export { type ColumnHead, type NamedColumn, type PackedColumns, packColumns, unpackColumns } from './columns/codec.ts'
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
export { isCounted, isWithoutNumber, type Mark, type MarkName, mark, markName, markNames } from './columns/mark.ts'
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
  type Assignment,
  amended,
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
  questionPinned,
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
export { isForgotten, spokenOf } from './facts/spoken-of.ts'
export { type CellHistory, type CellStep, type CorrectionsRead, isContested, readCorrections } from './fold/corrections.ts'
export { dayNumber, isoDate } from './fold/day.ts'
export { foldAsked, foldFacts, isAboutAsking } from './fold/fold-facts.ts'
export { countedSheets, sheetKinds } from './fold/sheets.ts'
// Options of questions, declared once
export type { Offer, OptionDeclaration, OptionsOf, OptionsSpec } from './options/declaration.ts'
export { optionsSchema, type RawOption, readOptions, splitList } from './options/read-options.ts'
export type {
  Conflict,
  Field,
  HivePlacement,
  HivesLookedFor,
  Kind,
  Look,
  Pin,
  Plan,
  Point,
  Sheet,
  Snapshot,
  Treatment,
  Worth,
} from './snapshot/snapshot.ts'
// Tables and the fold
export {
  type ColumnDeclaration,
  type CountingUnit,
  countingUnits,
  isTableName,
  type TableName,
  tableDeclarations,
} from './tables/declarations.ts'
export { declarationOf, findColumn, rowAddress, type Table } from './tables/table.ts'
// Words of this package
export { words as modelWords } from './words.en.ts'
export { words as modelWordsEs } from './words.es.ts'
