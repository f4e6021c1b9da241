// Classes of visitors

// Stages of bloom
export {
  areStagesFarApart,
  type BloomMark,
  bloomWindow,
  isOnScale,
  markBloomStage,
  stageGapAllowed,
} from './bloom/bloom-stage.ts'
export { classifyKind, type KindProposal } from './kind/classify-kind.ts'
export { type KindClass, kindClasses } from './kind/kind-class.ts'
// Places
export { edgeDistance, type Shape } from './place/edge-distance.ts'
export { earthRadius, greatCircleDistance, type Position } from './place/great-circle.ts'
// Flight range and hives
export { type Independence, independenceOf, refusalDistance, warningDistance } from './reach/flight-range.ts'
export { type ForagingSeason, foragingSeasonOf, foragingSeasons, honeyBeeRange } from './reach/foraging-season.ts'
export {
  type CountExposure,
  exposureOfField,
  exposureOfLevel,
  exposureRatio,
  findWithEveryRange,
  type HiveGroup,
  hiveExposure,
  type RangeFindings,
} from './reach/hive-exposure.ts'
// Weather and hours in which insects fly
export { beaufortOf, beaufortUpperBounds } from './sky/beaufort.ts'
export { type CountingHours, countingHoursOf, cucumberHours, generalHours, squashHours } from './sky/counting-hours.ts'
export { type ClockReading, equationOfTime, localSolarTime, type SolarTime } from './sky/solar-time.ts'
export {
  markWeatherWindow,
  type Rain,
  type WatchWeather,
  type WindowFinding,
  type WindowMark,
  type WindowRow,
} from './sky/weather-window.ts'
export {
  cloudAllowed,
  hot,
  sunEnough,
  tooColdForBumbleBees,
  warmEnough,
  warmEnoughWithSun,
  warmWhateverTheCloud,
  windAllowed,
  windMarginal,
} from './sky/window-thresholds.ts'
