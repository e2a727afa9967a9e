/** Did it change, or does it differ? Two visits or groups or more, compared where they can be and refused where not. */
export { compareCases } from "./compare.ts";
export {
  type Adjustment,
  type Between,
  type Cluster,
  type Compared,
  type CompareOptions,
  type CompareReport,
  type Comparison,
  clusterNames,
  type Factor,
} from "./comparison.ts";
export { compareFarms, type FarmsOptions } from "./farms/compare-farms.ts";
export type { FarmsReport, RankedFarm, Ranking, UnrankedFarm } from "./farms/ranking.ts";
export { ageWords, cautionsOf } from "./farms/sentence.ts";
export type { ArmsCompared, Limited, Result } from "./judgement/results.ts";
export { allowedFor } from "./sentence/comparison-sentence.ts";
export {
  byPensText,
  couldShowText,
  differenceText,
  facetsText,
  meansText,
  meansValue,
  ofExamined,
  plain,
  pText,
  ratioText,
  shiftText,
  testText,
  unitWords,
  withinStrataText,
} from "./sentence/numbers.ts";
export { facetNames, type Where } from "./sides/facets.ts";
