// The questions

// Checks of a project, from every science
export { checkProject } from './check-project.ts'
// Checks of a fitted count model, said and drawn
export { checkName, checkSaying, checksSaying, suspectSaying } from './count-model-checks/check-sayings.ts'
export { suspectFigure } from './count-model-checks/suspect-figure.ts'
export { isDesignSound } from './is-design-sound/question.ts'
export type { Question, Work } from './question.ts'
export { findQuestion, questions } from './questions.ts'
// Receipts
export { csv } from './receipt/csv.ts'
export type { Receipt } from './receipt/receipt.ts'
// A model fitted to any table
export { type FitFamily, type FitWords, fitFamilies } from './table-fit/asked.ts'
export { type FitOutcome, fitTable } from './table-fit/fit-table.ts'
export type { FitColumn, FitTable } from './table-fit/table.ts'
export type {
  Limits,
  TableFit,
  TableFitted,
  ToldCaution,
  ToldCheck,
  ToldCoefficient,
  ToldComparison,
  ToldMean,
  ToldPair,
  ToldScatter,
  ToldWithout,
} from './table-fit/told.ts'
// The verdict rule
export { combineVerdicts, type LimitsAt, readVerdict, type VerdictAsked, type VerdictRead } from './verdict/read-verdict.ts'
export { whatDiffers } from './what-differs/question.ts'
export { whoVisits } from './who-visits/question.ts'
// Words of this package
export { words as questionsWords } from './words.en.ts'
export { words as questionsWordsEs } from './words.es.ts'
