// What counts can be told apart by, and which of them a question is about

// The audit
export { auditContrast, auditRates, auditRelativeCounts } from './audit/audit-contrast.ts'
export { type AuditInput, byGravity, type Finding, isBlocked } from './audit/finding.ts'
export { stagesApart } from './audit/outside-window.ts'
export { comfortableFields } from './audit/replication.ts'
export { notedFrom, nuisanceSaying } from './audit/tangled.ts'
// Checks of a project
export { checkCounts } from './check/check-counts.ts'
export { type AdjustedFor, nuisancesLeftOut, type UnitNuisance } from './contrast/adjustment.ts'
// Contrasts of whole fields
export { type Cell, cellsOf } from './contrast/cells.ts'
export {
  type FittedModel,
  type ModelContrast,
  type ModelFailure,
  type ModelInput,
  type ModelProblem,
  type ModelVariant,
  modelContrast,
  modelVariants,
  totalsOfPair,
} from './contrast/count-model.ts'
export {
  type FieldContrast,
  fieldContrast,
  fitFieldUnits,
  fitStanding,
  type PairContrast,
  type RefusedPair,
} from './contrast/field-contrast.ts'
export { leaveOutVisits, type WithoutVisit } from './contrast/leave-out-visits.ts'
export { leastFields, type Refusal } from './contrast/refusal.ts'
export type { Units } from './contrast/unit-values.ts'
// Designs
export { after, before, buildDesign, type ContrastAsked } from './design/build-design.ts'
export {
  type Design,
  type DesignField,
  type LeftOut,
  type Measure,
  type Measured,
  measures,
  type Structure,
} from './design/design.ts'
export { effortOf, watchedMinutes } from './design/effort.ts'
export { windowMark } from './design/window.ts'
export type { Factor, FactorAbout } from './factor/factor.ts'
export { type MeasuredScale, stepLength } from './factor/measured-factor.ts'
export { factorNames, resolveFactor } from './factor/resolve-factor.ts'
export { middleOfDay, type Nuisance, type NuisanceName, nuisanceNames, nuisancesOf } from './nuisance/nuisance.ts'
export { type FrameTable, frameTable, type Tangle, type Tangles, tanglesOf } from './nuisance/tangle.ts'
// Rates, shares and relative counts
export { dispersionHidden, dispersionWarned, type FieldRate, fieldRate, type RateData } from './rate/field-rates.ts'
export { rateData } from './rate/rate-data.ts'
export { type Condition, parseCondition } from './selection/condition.ts'
export { allKinds, classOf, type KindSet, kindSet, talliesOf, waitingTallies } from './selection/kind-set.ts'
export { type SelectedCounts, type Selection, selectCounts } from './selection/select-counts.ts'
export { type FieldShare, fieldShares, type RelativeCount, relativeCount, type ShareData } from './share/field-shares.ts'
export {
  againstTheRest,
  areSightingsOnly,
  type SharedCounts,
  sharedCounts,
  sharesOf,
  shareTallies,
} from './share/shared-counts.ts'
// Words of this package
export { words as surveyWords } from './words.en.ts'
export { words as surveyWordsEs } from './words.es.ts'
