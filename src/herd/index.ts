/** From single pigs to the herd: honest denominators, exact intervals, and words that claim no more than they may. */
export type { HerdAnswer } from "./answers.ts";
export { TOO_FEW_DIFFER } from "./centre-intervals.ts";
export { checkHouseScales } from "./check-house-scales.ts";
export { type ClusterKind, clusterKey, clusterKinds, tooFewClusters } from "./clusters.ts";
export type { CombinedEstimate } from "./combined-estimates.ts";
export {
  accuracyWords,
  belowFalsePositives,
  type Corrected,
  fewPositives,
  type RightCount,
  type TestAccuracy,
} from "./corrected.ts";
export { type Estimate, sourcesOf } from "./estimate.ts";
export {
  type GroupDimension,
  type GroupOptions,
  groupDimensions,
  groupScores,
  type HerdReport,
  herdEstimates,
  highestLevel,
} from "./herd-estimates.ts";
export { herdIndices, type IndexResult, indexValue, predictedIndex } from "./herd-index.ts";
export type { HerdScores } from "./herd-scores.ts";
export { indicatorAnswer, withoutScore } from "./indicator-answer.ts";
export { checkIndicators } from "./indicators-and-scales.ts";
export { herdIntervals } from "./interval.ts";
export type { HerdOptions } from "./options.ts";
export { indicatorNamed, type PoolCount, type ResultCount } from "./result-counts.ts";
export { basisOf, reachOf } from "./selection-basis.ts";
export { type Share, shareOf } from "./share.ts";
export { standingOf } from "./standing.ts";
export {
  comparePlaces,
  type Dimension,
  dimensions,
  farmFolder,
  notRecorded,
  type Stratum,
  type StratumOfCases,
  strata,
} from "./strata.ts";
