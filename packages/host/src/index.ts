// A project, open
export { checkProjectFile } from '@thrum/store/sqlite'
// Backups
export { type BackupTold, listBackups, type Restored, restoreBackup } from './backup/restore.ts'
// Correcting, withdrawing, settling, looking back
export { type CorrectionAsked, type CorrectionMade, correctCell, shown } from './corrections/correct.ts'
export {
  type ForgetAsked,
  type ForgetPlan,
  type Forgettable,
  type Forgotten,
  forget,
  forgettable,
  offerForget,
} from './corrections/forget.ts'
export { historyOfRow, type RowHistory, type ToldCell, type ToldStep, type ToldWithdrawal } from './corrections/history.ts'
export {
  type ContestedCell,
  settleCell,
  type ToSettle,
  type WaitingCell,
  type WaitingRow,
  whatWaits,
} from './corrections/settle.ts'
export type { StandsIn } from './corrections/where-it-stands.ts'
export { type WithdrawalMade, type WithdrawnWhat, withdraw } from './corrections/withdraw.ts'
// Bringing counts
export { bringCounts, type CountsBrought, type CountsOffered, offerCounts } from './counts/bring-counts.ts'
// The demonstration
export { demonstrationFacts } from './demonstration/demonstration-facts.ts'
export { type PlantedQuestion, plantedQuestions } from './demonstration/planted-questions.ts'
// Words
export { english } from './english.ts'
// Figures as pixels
export { toPng } from './figure/to-png.ts'
// Mended files
export { bringMended, type MendedBrought } from './mended/bring-mended.ts'
export { earlierMapping, type MendedOffer, type MendedOptions, type MendedOr, offerMended } from './mended/offer-mended.ts'
// Planning
export { planSnapshot } from './plan/plan-snapshot.ts'
// The platform
export { localAuthor } from './platform/person.ts'
export { systemClock } from './platform/system-clock.ts'
export { version } from './platform/version.ts'
export { createDemonstration } from './project/demonstration-project.ts'
export { mergeProject, type ProjectsMerged } from './project/merge-projects.ts'
export { createProject, factsOf, type OpenProject, openProject, type Project, requireWritable } from './project/project.ts'
// Asking
export { type Asking, ask, askSnapshot, judgeWorth, requireQuestion, usualSeed } from './question/ask.ts'
// Words in Spanish
export { spanish } from './spanish.ts'
