/** Published scores, computed from what was observed. Scales are data; this room only reads them. */
export type { CaseScore, Confidence, ScoredCase } from "./case-score.ts";
export { classOf, lastReached } from "./classify.ts";
export { rounded, withoutFloatError } from "./float-error.ts";
export { casesOf, type ScoreOptions, scaleOf, scoreCase, scoreCases } from "./score-cases.ts";
export { scoreOrgan } from "./score-organ.ts";
