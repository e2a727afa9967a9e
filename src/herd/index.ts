/** From single pigs to the herd: honest denominators, exact intervals, and words that claim no more than they may. */

export type { Answer } from "./answer.ts";
export { checkHouseScales } from "./check-scales.ts";
export { type ClusterKind, clusterKey, clusterKinds, tooFewClusters } from "./clusters.ts";
export type { CombinedEstimate, CombinedGroup } from "./combine.ts";
export {
  accuracyWords,
  belowFalsePositives,
  type Corrected,
  fewPositives,
  type RightCount,
  type TestAccuracy,
} from "./corrected.ts";
export { type Estimate, sourcesOf } from "./estimate.ts";
export { type GroupDimension, type GroupOptions, groupDimensions, groupScores } from "./group-scores.ts";
export type { HeadCount } from "./head-count.ts";
export { type HerdReport, herdEstimates, highestLevel } from "./herd-estimates.ts";
export { herdIndices, type IndexResult } from "./herd-index.ts";
export type { HerdOptions } from "./herd-options.ts";
export type { GradeShare, HerdScores } from "./herd-scores.ts";
export { indexValue } from "./index-value.ts";
export { indicatorAnswer } from "./indicator-answer.ts";
export type { ClusterResult, IntervalMethod } from "./interval.ts";
export { oneSidedLimit } from "./one-sided-limit.ts";
export { predictedIndex } from "./predicted-index.ts";
export { checkIndicators } from "./questions.ts";
export type { CentreInterval, SeverityIntervals } from "./severity.ts";
export {
  basisOf,
  type Dimension,
  dimensions,
  farmFolder,
  type Stratum,
  type StratumOfCases,
  strata,
} from "./strata.ts";
export { type Reach, reachOf } from "./wording.ts";
