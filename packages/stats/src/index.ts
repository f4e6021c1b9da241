// Limits

// Counts and rates
export {
  type Dispersion,
  expectedAtOneRate,
  poissonDispersion,
  poissonInterval,
  poissonUpperLimit,
} from './count/poisson-interval.ts'
export { type RateRatio, rateRatioExact, type TwoCounts } from './count/rate-ratio.ts'
export { rateRatioMidP } from './count/rate-ratio-mid-p.ts'
export { type MeanRate, meanOfRates, ratioOfSums, type UnitRate, type UnitTotals } from './count/ratio-of-sums.ts'
// Models of counts
export type { Grouping, RandomSlope } from './count-model/effects/grouping.ts'
export type { FamilyName } from './count-model/family/family.ts'
export { fitCountModel } from './count-model/fit-count-model.ts'
export type {
  Coefficients,
  CountModel,
  CountModelFit,
  FittedCountModel,
  FitWarning,
  GroupEffects,
  ParameterName,
  SearchHistory,
  Suspect,
} from './count-model/model.ts'
export {
  type Bootstrap,
  type BootstrapTest,
  basicInterval,
  bootstrapCountModel,
  bootstrapLikelihoodRatio,
  percentileInterval,
} from './count-model-inference/bootstrap.ts'
export { type InformationCriteria, informationCriteria } from './count-model-inference/information-criteria.ts'
export { type LaplaceError, laplaceError } from './count-model-inference/laplace-error.ts'
export { type LikelihoodRatio, likelihoodRatio } from './count-model-inference/likelihood-ratio.ts'
export { type Profiled, type ProfileInterval, profileInterval } from './count-model-inference/profile-interval.ts'
export { type CountSimulator, countSimulator, type EffectsOfDraw } from './count-model-inference/simulate-counts.ts'
export { type WaldInterval, waldInterval } from './count-model-inference/wald-interval.ts'
// Distributions
export { betaQuantile, inverseLogit, logit, type UnitPoint } from './distribution/beta.ts'
export { binomialLogPmf, binomialPmf, binomialTails } from './distribution/binomial.ts'
export { chiSquareQuantile, chiSquareTails } from './distribution/chi-square.ts'
export { gammaQuantile } from './distribution/gamma.ts'
export { incompleteBeta } from './distribution/incomplete-beta.ts'
export { incompleteGamma } from './distribution/incomplete-gamma.ts'
export type { Law } from './distribution/law.ts'
export { logFactorial, logGamma } from './distribution/log-gamma.ts'
export { negativeBinomialLogPmf, negativeBinomialPmf, negativeBinomialTails } from './distribution/negative-binomial.ts'
export { type NoncentralHypergeometric, noncentralHypergeometric } from './distribution/noncentral-hypergeometric.ts'
export { normalCdf, normalMultiplier, normalQuantile, normalTails } from './distribution/normal.ts'
export { poissonLogPmf, poissonPmf, poissonTails } from './distribution/poisson.ts'
export { studentMultiplier, studentQuantile, studentTails, studentTwoSidedP } from './distribution/student.ts'
export type { Tail, Tails } from './distribution/tails.ts'
export type { Interval } from './interval.ts'
// Least squares
export type { AliasedColumn } from './least-squares/aliased.ts'
export { type ContrastInterval, contrastInterval } from './least-squares/contrast-interval.ts'
export {
  type Columns,
  type InflationProblem,
  inflation,
  partialR2,
  residualRange,
  residualsAfter,
  type TermInflation,
  varianceInflation,
} from './least-squares/inflation.ts'
export { type LeastSquaresFit, type LeastSquaresProblem, leastSquares, rankTolerance } from './least-squares/least-squares.ts'
export { columnOf, type Matrix, matrixOfColumns, matrixOfRows, matrixOfValues } from './least-squares/matrix.ts'
// Models of measured numbers
export { fitLinearMixed } from './linear-mixed/fit-linear-mixed.ts'
export { linearMixedContrast } from './linear-mixed/linear-mixed-contrast.ts'
export { type LevelModes, linearMixedModes } from './linear-mixed/linear-mixed-modes.ts'
export type {
  LinearMixedFit,
  LinearMixedFitted,
  LinearMixedModel,
  LinearMixedWarning,
  SlopeScatter,
} from './linear-mixed/model.ts'
// Checks of a fitted count model
export type { BinLabel } from './model-checks/bins.ts'
export { type Check, type CheckMade, type CheckVerdict, lookBelow, type Shown, suspectBelow } from './model-checks/check.ts'
export { type ChecksAsked, type Covariate, checkCountModel, type ModelChecks } from './model-checks/check-count-model.ts'
export {
  type AskedSum,
  type Influence,
  influenceOf,
  type LeftOut,
  type LeftOutBy,
  lookBeyond,
  mostRowsForAll,
  type SumWithout,
  suspectBeyond,
} from './model-checks/influence.ts'
export type { CheckSubject, NotLooked, ShownLabel } from './model-checks/look.ts'
export { mostDrawn, type SimulatedResiduals, simulatedResiduals } from './model-checks/simulated-residuals.ts'
export { type ModelSuspect, type SuspectVerdict, suspectsOf } from './model-checks/suspects.ts'
// Terms of a model, its means and contrasts
export type { ColumnValues, LevelColumn, ModelColumn, ModelColumns, NumberColumn } from './model-terms/columns.ts'
export {
  contrastsOf,
  type MeanContrast,
  type MeanContrasts,
  type Pair,
  type Pairs,
  type RatioTold,
} from './model-terms/contrasts.ts'
export { type ColumnPart, type DesignOutcome, type DesignTerm, designOf, type TermDesign } from './model-terms/design.ts'
export { type ColumnDf, dfOfSum, innerOuterDf } from './model-terms/inner-outer-df.ts'
export type { Estimates, NoScatter, NotEstimable, Telling, Told, ToldEstimate } from './model-terms/linear-sum.ts'
export {
  type Levels,
  type MarginalMean,
  type MarginalMeans,
  type MeansAsked,
  marginalMeans,
} from './model-terms/marginal-means.ts'
export { type Prediction, type Predictions, predictionsOf } from './model-terms/predictions.ts'
export type { Scale } from './model-terms/scale.ts'
export type { Term } from './model-terms/terms.ts'
// Several questions at once
export { holm, type VerdictLevels, verdictLevels } from './multiplicity/holm.ts'
export {
  type SimultaneousMultiplier,
  type SimultaneousProblem,
  simultaneousMultiplier,
} from './multiplicity/simultaneous-multiplier.ts'
// Permutation
export { type Arrangements, arrangementsWithin } from './permutation/arrangements.ts'
export {
  type PermutationEffort,
  type PermutationTest,
  type Reassignment,
  type SignFlips,
  smallestReassignmentP,
  testByReassignment,
  testBySignFlips,
} from './permutation/permutation-test.ts'
// Shares and odds
export {
  clopperPearsonInterval,
  goodmanIntervals,
  oddsExact,
  type ProportionInterval,
  wilsonInterval,
} from './proportion/binomial-intervals.ts'
export { binomialTwoSidedP } from './proportion/binomial-test.ts'
export { type OddsRatio, oddsRatioExact } from './proportion/odds-ratio.ts'
export { oddsOfShare, shareOfSums, type UnitParts, type UnitShare } from './proportion/share-of-sums.ts'
// Random draws
export { drawBinomial } from './random/binomial.ts'
export { drawGamma } from './random/gamma.ts'
export { drawNegativeBinomial } from './random/negative-binomial.ts'
export { drawNormal } from './random/normal.ts'
export { drawPoisson } from './random/poisson.ts'
export { shuffled } from './random/shuffle.ts'
// Contrasts of whole units
export {
  type BetweenFit,
  type BetweenRefusal,
  type BetweenUnits,
  baseColumns,
  betweenUnits,
  indicatorColumns,
} from './unit-contrast/between-units.ts'
export { contrastLimits, ratioOfContrast } from './unit-contrast/contrast-limits.ts'
export { logOdds, logRate } from './unit-contrast/log-rate.ts'
export {
  type ContrastSize,
  type CountedSize,
  floorWithEndlessMinutes,
  halfWidthAt,
  type UnitsNeeded,
  unitsNeeded,
  withMoreMinutes,
} from './unit-contrast/more-counting.ts'
export { type ThinnedCell, type ThinnedProblem, thinnedContrast } from './unit-contrast/thinned-contrast.ts'
export type { Contrast, ContrastFit, UnitColumns, UnitFit, UnitRefusal } from './unit-contrast/unit-fit.ts'
export { type UnitSlope, unitSlope } from './unit-contrast/unit-slope.ts'
export {
  type SlopesFit,
  unitDifferences,
  type WithinSlopes,
  type WithinUnits,
  withinSlopes,
  withinUnits,
} from './unit-contrast/within-units.ts'
