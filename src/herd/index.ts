/** From single pigs to the herd: honest denominators, exact intervals, and words that claim no more than they may. */
export type { Answer } from "./answer.ts";
export { checkHouseScales } from "./check-scales.ts";
export type { Estimate } from "./estimate.ts";
export { type GroupDimension, type GroupOptions, groupDimensions, groupScores } from "./group-scores.ts";
export { type HerdOptions, type HerdReport, herdEstimates } from "./herd-estimates.ts";
export { herdIndices, type IndexResult } from "./herd-index.ts";
export type { GradeShare, HerdScores } from "./herd-scores.ts";
export { indexValue } from "./index-value.ts";
export { indicatorAnswer } from "./indicator-answer.ts";
export { oneSidedLimit } from "./one-sided-limit.ts";
export { levelPercent, percent, percentRange } from "./percent.ts";
export { predictedIndex } from "./predicted-index.ts";
export { type Dimension, dimensions, type Stratum, type StratumOfCases, strata } from "./strata.ts";
export { type Reach, reachOf } from "./wording.ts";
