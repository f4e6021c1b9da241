// A project, open
export { checkProjectFile } from '@thrum/store/sqlite'
// Correcting, withdrawing, settling, looking back
export { type CorrectionAsked, type CorrectionMade, correctCell } from './corrections/correct.ts'
export { historyOfRow, type RowHistory, type ToldCell, type ToldStep, type ToldWithdrawal } from './corrections/history.ts'
export {
  type ContestedCell,
  settleCell,
  type ToSettle,
  type WaitingCell,
  type WaitingRow,
  whatWaits,
} from './corrections/settle.ts'
export { type WithdrawalMade, type WithdrawnWhat, withdraw } from './corrections/withdraw.ts'
// Bringing counts
export { bringCounts, type CountsBrought, type CountsOffered, offerCounts } from './counts/bring-counts.ts'
// The demonstration
export { demonstrationFacts } from './demonstration/demonstration-facts.ts'
export { type PlantedQuestion, plantedQuestions } from './demonstration/planted-questions.ts'
// Words
export { english } from './english.ts'
// Planning
export { planSnapshot } from './plan/plan-snapshot.ts'
// The platform
export { localAuthor } from './platform/person.ts'
export { systemClock } from './platform/system-clock.ts'
export { version } from './platform/version.ts'
export { createDemonstration } from './project/demonstration-project.ts'
export { createProject, factsOf, openProject, type Project, requireWritable } from './project/project.ts'
// Asking
export { type Asking, ask, askSnapshot, judgeWorth, requireQuestion, usualSeed } from './question/ask.ts'
