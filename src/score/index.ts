/** Published scores, computed from what was observed. Scales are data; this room only reads them. */
export type { CaseScore, Confidence, ScoredCase } from "./case-score.ts";
export { classOf } from "./classify.ts";
export { rounded, withoutFloatError } from "./float-error.ts";
export { scalesInUse } from "./in-use.ts";
export { between, type MarkShare, markShare } from "./mark-share.ts";
export { preferredScales, type UsedScale } from "./preferred.ts";
export { decimalsInClass, printedBounds, printedScore, rangeDecimals } from "./printed.ts";
export {
  casesOf,
  checkScales,
  type ScoreOptions,
  scaleNamed,
  scalesOf,
  scoreCase,
  scoreCases,
} from "./score-cases.ts";
export { scoreOrgan } from "./score-organ.ts";
export { stateFor } from "./state-for.ts";
export { unknownScale } from "./unknown-scale.ts";
export { type ExampleFault, exampleFaults } from "./worked-examples.ts";
